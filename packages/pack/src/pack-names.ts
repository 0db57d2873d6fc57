import type { Design } from '@cloche/engine';

/** What a file is for: to be looked at, to be ordered or cut from, to be read and signed, or for other programs. */
export type PackFileUse = 'drawing' | 'list' | 'report' | 'model';

export interface PackName {
  readonly name: string;
  readonly use: PackFileUse;
  /** Thing that the file is about, where it is not about the whole. */
  readonly of?: string;
}

export const elevationName = (enclosure: { readonly id: string }): string => `elevation-${enclosure.id}.svg`;

/** All files of a design's pack, in their order. */
export const packNames = (design: Pick<Design, 'enclosures'>): readonly PackName[] => [
  { name: 'design.json', use: 'model' },
  { name: 'findings.json', use: 'model' },
  { name: 'plan.svg', use: 'drawing' },
  ...design.enclosures.map((e): PackName => ({ name: elevationName(e), use: 'drawing', of: e.id })),
  { name: 'plan.dxf', use: 'model' },
  { name: 'parts.csv', use: 'list' },
  { name: 'parts.xlsx', use: 'list' },
  { name: 'cuts.csv', use: 'list' },
  { name: 'cuts.xlsx', use: 'list' },
  { name: 'report.pdf', use: 'report' },
  { name: 'manifest.json', use: 'model' },
];
