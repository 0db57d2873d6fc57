import { readdirSync, readFileSync, statSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type CatalogueFile, type Outcome, ok, type Problem, problem, refuse } from '@cloche/engine';

/** Folder of the installation: where catalogue, rules and examples lie. */
export const home = join(dirname(fileURLToPath(import.meta.url)), '..', '..', '..', '..');

/** Larger than any sensible brief; read from the file's size, before its content. */
const mostBytes = 4 * 1024 * 1024;

const reason = (error: unknown): string =>
  error instanceof Error ? error.message.replace(/, \w+ '.*'$/, '') : String(error);

/** Text of a file, or the problem that it cannot be read. */
export function readText(path: string, what: string): Outcome<string> {
  try {
    const { size } = statSync(path);
    if (size > mostBytes)
      return refuse([
        {
          ...problem(
            'cli/too-large',
            [],
            `${path} has ${size} bytes; a ${what} has at most ${mostBytes}.`,
            `Check that this is the ${what} you mean.`,
          ),
          file: path,
        },
      ]);
    return ok(readFileSync(path, 'utf8'));
  } catch (error) {
    return refuse([
      {
        ...problem('cli/cannot-read', [], `${path} cannot be read: ${reason(error)}.`, `Give the path of a ${what}.`),
        file: path,
      },
    ]);
  }
}

const yamlIn = (folder: string): string[] =>
  readdirSync(folder)
    .filter((f) => /\.(ya?ml|json)$/.test(f))
    .sort();

/** The files of a catalogue folder. */
export function readCatalogueFolder(folder = join(home, 'catalogue')): Outcome<readonly CatalogueFile[]> {
  let names: string[];
  try {
    names = yamlIn(folder);
  } catch (error) {
    return refuse([
      problem(
        'cli/cannot-read',
        [],
        `The catalogue folder ${folder} cannot be read: ${reason(error)}.`,
        'Give a folder with catalogue files.',
      ),
    ]);
  }
  const files = names.map((name) => ({ name, text: readText(join(folder, name), 'catalogue file') }));
  const problems: Problem[] = files.flatMap((f) => (f.text.ok ? [] : [...f.text.problems]));
  if (problems.length > 0) return refuse(problems);
  return ok(files.flatMap((f) => (f.text.ok ? [{ name: f.name, text: f.text.value }] : [])));
}

export interface RuleFiles {
  readonly texts: Readonly<Record<string, string>>;
  /** The profile that a given file holds; undefined when the brief chooses. */
  readonly profile?: string;
}

/** The installed rule profiles, and the one given by file, which then is used whatever the brief names. */
export function readRuleFiles(file?: string): Outcome<RuleFiles> {
  const folder = join(home, 'rules');
  const texts: Record<string, string> = {};
  for (const name of yamlIn(folder)) {
    const text = readText(join(folder, name), 'rule profile');
    if (!text.ok) return text;
    texts[name.replace(/\.\w+$/, '')] = text.value;
  }
  if (file === undefined) return ok({ texts });
  const given = readText(file, 'rule profile');
  if (!given.ok) return given;
  const profile = basename(file).replace(/\.\w+$/, '');
  return ok({ texts: { ...texts, [profile]: given.value }, profile });
}

/** Font files of sheets and report. */
export function readFonts(): { readonly regular: Uint8Array; readonly medium: Uint8Array } {
  const font = (weight: string) =>
    new Uint8Array(
      readFileSync(fileURLToPath(import.meta.resolve(`@expo-google-fonts/fira-sans/${weight}/FiraSans_${weight}.ttf`))),
    );
  return { regular: font('400Regular'), medium: font('500Medium') };
}
