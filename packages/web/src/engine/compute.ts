import {
  type Composed,
  type Cost,
  catalogueFrom,
  compareDesigns,
  composedFrom,
  costOfState,
  type DesignResult,
  designFrom,
  disciplines,
  heavyFindings,
  type Item,
  knownRules,
  lightFindings,
  overlayMarks as marksOf,
  type Outcome,
  type OverlayMark,
  overlays,
  readRules,
  revisionOf,
} from '@cloche/engine';
import type { ComparisonAnswer, Computed, LaterTold, Shelf, SoonTold, TextFile, Told } from './contract.js';
import { teller } from './patch.js';

let catalogueFiles: readonly TextFile[] = [];
let ruleTexts: Readonly<Record<string, string>> = {};

export function prepare(catalogue: readonly TextFile[], rules: Readonly<Record<string, string>>): Shelf {
  catalogueFiles = catalogue;
  ruleTexts = rules;
  held.clear();
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
    disciplines: disciplines.map(({ id, title }) => ({ id, title })),
    overlays,
  };
}

const useOf = (item: Item): { readonly use?: string } =>
  'purpose' in item ? { use: item.purpose } : 'role' in item ? { use: item.role } : {};

/** Both states from text to findings, and what differs between them. */
export function compare(beforeText: string, afterText: string): ComparisonAnswer {
  const [before, after] = [designOf(beforeText), designOf(afterText)];
  if (!before.ok || !after.ok)
    return {
      ok: false,
      problems: { before: before.ok ? [] : before.problems, after: after.ok ? [] : after.problems },
    };
  return {
    ok: true,
    value: {
      before: shown(before.value),
      after: shown(after.value),
      comparison: compareDesigns(before.value, after.value),
    },
  };
}

/** What everything to buy for a brief costs; lines without a price are counted, never guessed. */
export function cost(briefText: string): Told<Cost> {
  const made = designOf(briefText);
  return made.ok ? { ok: true, value: costOfState(made.value) } : made;
}

/** The states of the last few texts: one side of a comparison stays while the other is edited. */
const held = new Map<string, Outcome<DesignResult>>();
const mostHeld = 3;

function designOf(briefText: string): Outcome<DesignResult> {
  const made = held.get(briefText) ?? designFrom({ briefText, catalogueFiles, ruleTexts });
  held.delete(briefText);
  held.set(briefText, made);
  for (const oldest of held.keys()) if (held.size > mostHeld) held.delete(oldest);
  return made;
}

function shown(made: DesignResult): Computed {
  const { design, findings, revision } = made;
  return { design, findings, revision, itemNames: itemNamesIn(made), stale: new Set(), pending: false };
}

/** Names of the catalogue items in use. */
function itemNamesIn({ design, catalogue }: Composed): Readonly<Record<string, string>> {
  const names: Record<string, string> = {};
  for (const { item } of design.parts) names[item] ??= catalogue.byId.get(item)?.name ?? item;
  return names;
}

export function overlayMarks(briefText: string, id: string): readonly OverlayMark[] {
  const made = designOf(briefText);
  if (!made.ok) return [];
  const { complete, design, catalogue, rules, findings } = made.value;
  return marksOf(id, { brief: complete, design, catalogue, rules }, findings) ?? [];
}

const tell = teller();

/** What the page does not show stays here. */
function soonTold(made: Composed): SoonTold {
  return {
    design: tell.record('design', made.design),
    findings: tell.list('soon', lightFindings(made)),
    itemNames: tell.record('itemNames', itemNamesIn(made)),
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
