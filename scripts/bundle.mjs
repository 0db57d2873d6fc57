// The command line as a few files, so that a command loads only what it needs: reading hundreds of modules takes longer than
// checking a room. Server and store stay outside, with the programs that they start.
import { fileURLToPath } from 'node:url';
import { build } from 'vite';

const at = (path) => fileURLToPath(new URL(`../packages/${path}`, import.meta.url));

await build({
  configFile: false,
  root: at('cli'),
  logLevel: 'warn',
  resolve: { alias: { '@cloche/engine': at('engine/src/index.ts'), '@cloche/pack': at('pack/src/index.ts') } },
  ssr: {
    noExternal: true,
    external: ['@cloche/server', '@cloche/store', '@tarikjabiri/dxf', 'fontkit', 'pdfkit', 'write-excel-file'],
  },
  build: {
    ssr: at('cli/src/main.ts'),
    // As deep as the compiled modules, which look for their data from where they stand.
    outDir: at('cli/dist/bundle'),
    emptyOutDir: true,
    target: 'node20',
    minify: true,
    rollupOptions: {
      output: { entryFileNames: 'main.js', chunkFileNames: '[name].js' },
      treeshake: { moduleSideEffects: (id) => !/\/(engine|pack)\/src\//.test(id) },
    },
  },
});
