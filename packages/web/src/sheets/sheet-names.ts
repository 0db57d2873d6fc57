import { type PackFileUse, type PackName, packNames } from '@cloche/pack';
import type { Design } from '../engine/contract.js';
import { sheetTexts as say } from '../texts/sheets.js';

export interface SheetName extends PackName {
  readonly title: string;
}

/** The files of the pack with their titles, by what they are for. */
export function sheetsByUse(design: Design): readonly (readonly [PackFileUse, readonly SheetName[]])[] {
  const named = packNames(design).map((each): SheetName => ({ ...each, title: titleOf(design, each) }));
  const uses: readonly PackFileUse[] = ['drawing', 'list', 'report', 'model'];
  return uses.map((use) => [use, named.filter((each) => each.use === use)]);
}

export function titleOf(design: Design, { name, of }: PackName): string {
  if (of !== undefined) return say.elevations(design.enclosures.find((e) => e.id === of)?.name ?? of);
  return say.titles[name] ?? name;
}
