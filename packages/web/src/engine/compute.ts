import {
  type Composed,
  catalogueFrom,
  composedFrom,
  heavyFindings,
  type Item,
  knownRules,
  lightFindings,
  readRules,
  revisionOf,
} from '@cloche/engine';
import type { LaterTold, Shelf, SoonTold, TextFile, Told } from './contract.js';
import { teller } from './patch.js';

let catalogueFiles: readonly TextFile[] = [];
let ruleTexts: Readonly<Record<string, string>> = {};

export function prepare(catalogue: readonly TextFile[], rules: Readonly<Record<string, string>>): Shelf {
  catalogueFiles = catalogue;
  ruleTexts = rules;
  const read = catalogueFrom(catalogue);
  return {
    items: read.ok
      ? read.value.items.map((item) => ({ id: item.id, name: item.name, kind: item.kind, ...useOf(item) }))
      : [],
    profiles: Object.entries(rules).map(([id, text]) => {
      const profile = readRules(text);
      return { id, name: profile.ok ? profile.value.title : id };
    }),
    rules: Object.entries(knownRules).map(([id, { meaning }]) => ({ id, name: meaning })),
  };
}

const useOf = (item: Item): { readonly use?: string } =>
  'purpose' in item ? { use: item.purpose } : 'role' in item ? { use: item.role } : {};

const tell = teller();

/** What the page does not show stays here. */
function soonTold(made: Composed): SoonTold {
  const { design, catalogue } = made;
  const itemNames: Record<string, string> = {};
  for (const { item } of design.parts) itemNames[item] ??= catalogue.byId.get(item)?.name ?? item;
  return {
    design: tell.record('design', design),
    findings: tell.list('soon', lightFindings(made)),
    itemNames: tell.record('itemNames', itemNames),
  };
}

const laterTold = (made: Composed): LaterTold => ({
  findings: tell.list('later', heavyFindings(made)),
  revision: revisionOf(made),
});

const computed = <T>(briefText: string, told: (made: Composed) => T): Told<T> => {
  const made = composedFrom({ briefText, catalogueFiles, ruleTexts });
  return made.ok ? { ok: true, value: told(made.value) } : made;
};

export const whole = (briefText: string) =>
  computed(briefText, (made) => ({ soon: soonTold(made), later: laterTold(made) }));
export const soon = (briefText: string) => computed(briefText, soonTold);
export const later = (briefText: string) => computed(briefText, laterTold);
