import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bundled } from '../../store/test/bundled.js';
import type { ServerOptions } from '../src/index.js';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const read = (...path: string[]) => readFileSync(join(root, ...path), 'utf8');
const yamlFiles = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: read(folder, name) }));

const font = (name: string) => readFileSync(join(root, 'node_modules/@expo-google-fonts/fira-sans', name));

/** The options of a server over the data files of this repository. */
export function repositoryOptions(over: Partial<ServerOptions> = {}): ServerOptions {
  return {
    port: 0,
    webRoot: emptyWebRoot(),
    examples: yamlFiles('examples').map((file) => ({ ...file, title: file.name.replace('.yaml', '') })),
    catalogueFiles: yamlFiles('catalogue'),
    rulesFiles: Object.fromEntries(yamlFiles('rules').map(({ name, text }) => [name.replace('.yaml', ''), text])),
    fonts: {
      regular: font('400Regular/FiraSans_400Regular.ttf'),
      medium: font('500Medium/FiraSans_500Medium.ttf'),
    },
    today: () => '2026-10-01',
    ...over,
  };
}

/** The thread that makes packs, bundled from the sources. */
export const bundledPackWorker = (): Promise<URL> => bundled('packages/server/src/pack-worker.ts', 'pack-worker');

/** The thread that reads and writes archives, bundled from the sources. */
export const bundledArchiveWorker = (): Promise<URL> =>
  bundled('packages/server/src/archive-worker.ts', 'archive-worker');

/** A folder with one page, for tests that do not need the built workbench. */
function emptyWebRoot(): string {
  const folder = join(root, 'node_modules/.cache/cloche-empty-web');
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, 'index.html'), '<!doctype html><title>Cloche</title>');
  return folder;
}
