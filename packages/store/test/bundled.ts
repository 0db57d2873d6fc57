import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { build } from 'vite';

const root = fileURLToPath(new URL('../../../', import.meta.url));
const source = (name: string) => join(root, 'packages', name, 'src/index.ts');

/**
 * A script of this repository as one file that Node runs: processes and threads of a test cannot read the sources as they are.
 * @param entry path from the root of the repository
 * @param name  of the file that is made
 */
export async function bundled(entry: string, name: string): Promise<URL> {
  const outDir = join(root, 'node_modules/.cache/cloche-bundles', `${process.pid}-${name}`);
  process.once('exit', () => rmSync(outDir, { recursive: true, force: true }));
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
