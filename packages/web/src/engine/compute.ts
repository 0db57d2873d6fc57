import { designFrom } from '@cloche/engine';
import type { Answer, Computed, TextFile } from './contract.js';

let catalogueFiles: readonly TextFile[] = [];
let ruleTexts: Readonly<Record<string, string>> = {};

export function prepare(catalogue: readonly TextFile[], rules: Readonly<Record<string, string>>): void {
  catalogueFiles = catalogue;
  ruleTexts = rules;
}

/** The whole chain from brief text to findings; what the page does not show stays here. */
export function compute(briefText: string): Answer {
  const made = designFrom({ briefText, catalogueFiles, ruleTexts });
  if (!made.ok) return made;
  const { design, findings, revision, catalogue } = made.value;
  const itemNames: Record<string, string> = {};
  for (const { item } of design.parts) itemNames[item] ??= catalogue.byId.get(item)?.name ?? item;
  return { ok: true, value: { design, findings, revision, itemNames } satisfies Computed };
}
