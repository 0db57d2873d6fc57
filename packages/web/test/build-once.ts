import { fileURLToPath } from 'node:url';
import { build } from 'vite';

/** The workbench is built once for all browser tests. */
export default async function buildOnce(): Promise<void> {
  await build({ configFile: fileURLToPath(new URL('../vite.config.ts', import.meta.url)), logLevel: 'error' });
}
