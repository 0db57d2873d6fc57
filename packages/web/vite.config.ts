import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig, type Plugin } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The list of all files of the page, by which it is kept for times without a network. */
const listOfFiles: Plugin = {
  name: 'list-of-files',
  generateBundle(_options, bundle) {
    const files = Object.keys(bundle).filter((file) => file.startsWith('assets/') && !file.endsWith('.map'));
    this.emitFile({ type: 'asset', fileName: 'files.json', source: JSON.stringify(files.sort()) });
  },
};

export default defineConfig({
  root: here('.'),
  base: './',
  plugins: [react(), listOfFiles],
  // Built from the sources, so that no stale build can answer for them.
  resolve: {
    alias: { '@cloche/engine': here('../engine/src/index.ts'), '@cloche/pack': here('../pack/src/index.ts') },
  },
  worker: { format: 'es' },
  build: {
    outDir: here('./dist'),
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 1200,
    // The page takes only the reader of quantities from the engine, and the names of files from the pack; the rest of them lives
    // in the worker and on the server.
    rollupOptions: { treeshake: { moduleSideEffects: (id: string) => !/\/(engine|pack)\/src\//.test(id) } },
  },
});
