import { spawnSync } from 'node:child_process';
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { designFrom } from '@cloche/engine';
import { manyTables } from './many-tables.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const rounds = 5;

const median = (values: readonly number[]): number => [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Median wall time of a whole process [ms], and its largest resident memory [MB]. */
function processCost(args: readonly string[]): { readonly ms: number; readonly megabytes: number } {
  const report =
    "data:text/javascript,process.on('exit',()=>process.stderr.write('\\nRSS '+process.resourceUsage().maxRSS))";
  const runs = Array.from({ length: rounds }, () => {
    const start = performance.now();
    const { stderr } = spawnSync(process.execPath, ['--import', report, ...args], { encoding: 'utf8' });
    return { ms: performance.now() - start, megabytes: Number(/RSS (\d+)/.exec(stderr)?.[1] ?? 0) / 1024 };
  });
  return { ms: median(runs.map((r) => r.ms)), megabytes: Math.max(...runs.map((r) => r.megabytes)) };
}

const texts = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((f) => f.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(root, folder, name), 'utf8') }));

const base = processCost(['-e', '0']);
console.log(
  `node -e 0: ${base.ms.toFixed(0)} ms, ${base.megabytes.toFixed(0)} MB (everything below is a ratio to this time)\n`,
);
console.log('example                        check   design without report   with report   memory MB');
for (const { name } of texts('examples')) {
  const out = mkdtempSync(join(tmpdir(), 'cloche-bench-'));
  const cli = join(root, 'packages/cli/bin/cloche.js');
  const brief = join(root, 'examples', name);
  const check = processCost([cli, 'check', brief]);
  const lean = processCost([cli, 'design', brief, '--out', out, '--no-pdf', '--force']);
  const full = processCost([cli, 'design', brief, '--out', out, '--force']);
  rmSync(out, { recursive: true });
  const ratio = (ms: number) => (ms / base.ms).toFixed(1);
  console.log(
    `${name.padEnd(28)} ${ratio(check.ms).padStart(7)} ${ratio(lean.ms).padStart(23)} ${ratio(full.ms).padStart(13)} ${full.megabytes.toFixed(0).padStart(11)}`,
  );
}

console.log(
  '\nGrowth with the number of tables, each with a laser and a close enclosure (engine only, one warm process):',
);
const catalogueFiles = texts('catalogue');
const ruleTexts = Object.fromEntries(texts('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));
// Once unmeasured, so that compiling and reading the catalogue do not count as the first table.
designFrom({ briefText: manyTables(1), catalogueFiles, ruleTexts });
let first = 0;
for (const tables of [1, 2, 4, 8, 16, 32]) {
  const briefText = manyTables(tables);
  const times = Array.from({ length: rounds }, () => {
    const start = performance.now();
    const result = designFrom({ briefText, catalogueFiles, ruleTexts });
    if (!result.ok) throw new Error(result.problems.map((p) => p.message).join('\n'));
    return performance.now() - start;
  });
  const ms = median(times);
  first = first || ms;
  console.log(
    `  ${String(tables).padStart(3)} tables: ${(ms / first).toFixed(2).padStart(6)} x one table, ${(ms / first / tables).toFixed(2)} per table`,
  );
}
