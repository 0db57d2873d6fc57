import { fileURLToPath } from 'node:url';
import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig({
  root: here('.'),
  base: './',
  plugins: [react()],
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
