#!/usr/bin/env node
import { statSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

/** When a file was last written [ms]; 0 for one that is not there. */
const written = (path) =>
  statSync(fileURLToPath(new URL(path, import.meta.url)), { throwIfNoEntry: false })?.mtimeMs ?? 0;

// The bundle starts quicker; compiled modules that are newer than it know better.
const compiled = Math.max(...['cli', 'engine', 'pack'].map((name) => written(`../../${name}/tsconfig.tsbuildinfo`)));
const bundle = '../dist/bundle/main.js';
const main = written(bundle) > compiled ? bundle : '../dist/main.js';
if (written(main) > 0) await import(new URL(main, import.meta.url).href);
else {
  console.error('Cloche is not built yet. Run "npm start" or "npm run build" in its folder first.');
  process.exitCode = 1;
}
