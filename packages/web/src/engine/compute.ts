import {
  type DesignResult,
  designFrom,
  type Item,
  knownRules,
  overlayMarks as marksOf,
  type OverlayMark,
  overlays,
  readCatalogue,
  readRules,
} from '@cloche/engine';
import type { Answer, Computed, Shelf, TextFile } from './contract.js';

let catalogueFiles: readonly TextFile[] = [];
let ruleTexts: Readonly<Record<string, string>> = {};
let last: DesignResult | null = null;

export function prepare(catalogue: readonly TextFile[], rules: Readonly<Record<string, string>>): Shelf {
  catalogueFiles = catalogue;
  ruleTexts = rules;
  const read = readCatalogue(catalogue);
  return {
    items: read.ok
      ? read.value.items.map((item) => ({ id: item.id, name: item.name, kind: item.kind, ...useOf(item) }))
      : [],
    profiles: Object.entries(rules).map(([id, text]) => {
      const profile = readRules(text);
      return { id, name: profile.ok ? profile.value.title : id };
    }),
    rules: Object.entries(knownRules).map(([id, { meaning }]) => ({ id, name: meaning })),
    overlays: overlays.map(({ id, discipline, title, legend, limits }) => ({ id, discipline, title, legend, limits })),
  };
}

const useOf = (item: Item): { readonly use?: string } =>
  'purpose' in item ? { use: item.purpose } : 'role' in item ? { use: item.role } : {};

/** The whole chain from brief text to findings; what the page does not show stays here. */
export function compute(briefText: string): Answer {
  const made = designFrom({ briefText, catalogueFiles, ruleTexts });
  if (!made.ok) return made;
  last = made.value;
  const { design, findings, revision, catalogue } = made.value;
  const itemNames: Record<string, string> = {};
  for (const { item } of design.parts) itemNames[item] ??= catalogue.byId.get(item)?.name ?? item;
  return { ok: true, value: { design, findings, revision, itemNames } satisfies Computed };
}

export function overlayMarks(id: string): readonly OverlayMark[] {
  if (!last) return [];
  const { complete, design, catalogue, rules, findings } = last;
  return marksOf(id, { brief: complete, design, catalogue, rules }, findings) ?? [];
}
