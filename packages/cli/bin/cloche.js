#!/usr/bin/env node
import { existsSync } from 'node:fs';
import { fileURLToPath } from 'node:url';

const main = new URL('../dist/main.js', import.meta.url);
if (existsSync(fileURLToPath(main))) await import(main.href);
else {
  console.error('Cloche is not built yet. Run "npm start" or "npm run build" in its folder first.');
  process.exitCode = 1;
}
