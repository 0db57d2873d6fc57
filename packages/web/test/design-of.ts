import { readdirSync, readFileSync } from 'node:fs';
import { type Design, designFrom } from '@cloche/engine';

const root = new URL('../../../', import.meta.url);
const texts = (folder: string) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(new URL(`${folder}${name}`, root), 'utf8') }));
export const catalogueFiles = texts('catalogue/');
export const ruleTexts = Object.fromEntries(texts('rules/').map(({ name, text }) => [name.replace('.yaml', ''), text]));

export const exampleText = (name: string): string => readFileSync(new URL(`examples/${name}`, root), 'utf8');

const made = new Map<string, Design>();

/** The design of a text, or its problems as a failed test; each text is composed once. */
export function designOf(briefText: string): Design {
  const known = made.get(briefText) ?? composed(briefText);
  made.set(briefText, known);
  return known;
}

function composed(briefText: string): Design {
  const found = designFrom({ briefText, catalogueFiles, ruleTexts });
  if (!found.ok)
    throw new Error(`${found.problems.map((p) => `${p.path.join('.')}: ${p.message}`).join('\n')}\n${briefText}`);
  return found.value.design;
}
