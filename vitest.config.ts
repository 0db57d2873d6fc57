import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vitest/config';

const source = (name: string) => fileURLToPath(new URL(`./packages/${name}/src/index.ts`, import.meta.url));

/** Packages are tested from their sources, so that no stale build can answer for them. */
const alias = {
  '@cloche/engine': source('engine'),
  '@cloche/pack': source('pack'),
  '@cloche/server': source('server'),
  '@cloche/store': source('store'),
};

export default defineConfig({
  resolve: { alias },
  test: {
    projects: [
      {
        resolve: { alias },
        test: {
          name: 'node',
          include: ['packages/**/*.test.ts', 'cases/**/*.test.ts', 'tools/**/*.test.ts'],
          exclude: ['**/node_modules/**', '**/dist/**', '**/*.browser.test.ts'],
          testTimeout: 60_000,
          setupFiles: ['./tools/seed.ts'],
        },
      },
      {
        resolve: { alias },
        test: {
          name: 'browser',
          include: ['packages/**/*.browser.test.ts'],
          globalSetup: './packages/web/test/build-once.ts',
          testTimeout: 120_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
