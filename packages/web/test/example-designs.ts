import { readdirSync, readFileSync } from 'node:fs';
import { type Design, type DesignResult, designFrom } from '@cloche/engine';

const root = new URL('../../../', import.meta.url);
const filesIn = (folder: string) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ name, text: readFileSync(new URL(folder + name, root), 'utf8') }));

/** The worked examples as they are computed, by file name. */
export function exampleResults(): ReadonlyMap<string, DesignResult> {
  const catalogueFiles = filesIn('catalogue/');
  const ruleTexts = Object.fromEntries(filesIn('rules/').map(({ name, text }) => [name.replace('.yaml', ''), text]));
  return new Map(
    filesIn('examples/').map(({ name, text }) => {
      const made = designFrom({ briefText: text, catalogueFiles, ruleTexts });
      if (!made.ok) throw new Error(`${name} cannot be computed`);
      return [name, made.value];
    }),
  );
}

export const exampleDesigns = (): readonly (readonly [string, Design])[] =>
  [...exampleResults()].map(([name, { design }]) => [name, design]);
