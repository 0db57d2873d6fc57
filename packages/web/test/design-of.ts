import { readdirSync, readFileSync } from 'node:fs';
import { type Design, designFrom } from '@cloche/engine';

const root = new URL('../../../', import.meta.url);
const texts = (folder: string) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(new URL(`${folder}${name}`, root), 'utf8') }));
const catalogueFiles = texts('catalogue/');
const ruleTexts = Object.fromEntries(texts('rules/').map(({ name, text }) => [name.replace('.yaml', ''), text]));

export const exampleText = (name: string): string => readFileSync(new URL(`examples/${name}`, root), 'utf8');

/** The design of a text, or its problems as a failed test. */
export function designOf(briefText: string): Design {
  const made = designFrom({ briefText, catalogueFiles, ruleTexts });
  if (!made.ok)
    throw new Error(`${made.problems.map((p) => `${p.path.join('.')}: ${p.message}`).join('\n')}\n${briefText}`);
  return made.value.design;
}
