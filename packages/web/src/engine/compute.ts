import {
  compareDesigns,
  type DesignResult,
  designFrom,
  type Item,
  knownRules,
  overlayMarks as marksOf,
  type Outcome,
  type OverlayMark,
  overlays,
  readCatalogue,
  readRules,
} from '@cloche/engine';
import type { Answer, ComparisonAnswer, Computed, Shelf, TextFile } from './contract.js';

let catalogueFiles: readonly TextFile[] = [];
let ruleTexts: Readonly<Record<string, string>> = {};
let last: DesignResult | null = null;

export function prepare(catalogue: readonly TextFile[], rules: Readonly<Record<string, string>>): Shelf {
  catalogueFiles = catalogue;
  ruleTexts = rules;
  held.clear();
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
  const made = designOf(briefText);
  if (!made.ok) return made;
  last = made.value;
  return { ok: true, value: shown(made.value) };
}

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

function shown({ design, findings, revision, catalogue }: DesignResult): Computed {
  const itemNames: Record<string, string> = {};
  for (const { item } of design.parts) itemNames[item] ??= catalogue.byId.get(item)?.name ?? item;
  return { design, findings, revision, itemNames };
}

export function overlayMarks(id: string): readonly OverlayMark[] {
  if (!last) return [];
  const { complete, design, catalogue, rules, findings } = last;
  return marksOf(id, { brief: complete, design, catalogue, rules }, findings) ?? [];
}
