import { existsSync, readdirSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const source = (name: string) => join(root, 'packages', name, 'src/index.ts');

const bundles = join(root, 'node_modules/.cache/cloche-bundles');

/** Removes what processes that have ended left: a test process is stopped without a word. */
function sweep(): void {
  if (!existsSync(bundles)) return;
  for (const folder of readdirSync(bundles)) {
    try {
      process.kill(Number.parseInt(folder, 10), 0);
    } catch {
      rmSync(join(bundles, folder), { recursive: true, force: true });
    }
  }
}

/**
 * A script of this repository as one file that Node runs: processes and threads of a test cannot read the sources as they are.
 * @param entry path from the root of the repository
 * @param name  of the file that is made
 */
export async function bundled(entry: string, name: string): Promise<URL> {
  const outDir = join(bundles, `${process.pid}-${name}`);
  sweep();
  await build({
    root,
    configFile: false,
    logLevel: 'error',
    resolve: {
      alias: {
        '@cloche/engine': source('engine'),
        '@cloche/pack': source('pack'),
        '@cloche/store': source('store'),
      },
    },
    build: {
      outDir,
      emptyOutDir: true,
      ssr: join(root, entry),
      target: 'node20',
      rollupOptions: { output: { entryFileNames: `${name}.mjs`, codeSplitting: false } },
    },
  });
  return pathToFileURL(join(outDir, `${name}.mjs`));
}
