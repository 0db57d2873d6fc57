import { readFileSync } from 'node:fs';
import type { CheckCase } from './adapter.js';
import { adapters } from './adapters/index.js';
import { runCase } from './compare.js';

const args = process.argv.slice(2);
const json = args.includes('--json');
const files = args.filter((a) => !a.startsWith('--'));
if (files.length === 0) {
  console.error('Usage: npm run cases -- FILE [FILE ...] [--json]');
  process.exit(1);
}

const results = files.flatMap((file) => {
  const read = JSON.parse(readFileSync(file, 'utf8')) as
    | readonly CheckCase[]
    | { readonly cases: readonly CheckCase[] };
  return ('cases' in read ? read.cases : (read as readonly CheckCase[])).map((c) => runCase(c, adapters));
});
const count = (outcome: string) => results.filter((r) => r.outcome === outcome).length;
if (json) console.log(JSON.stringify(results, null, 2));
else
  for (const r of results) {
    const detail = r.outcome === 'differs' ? r.differences.join('; ') : r.outcome === 'unsupported' ? r.reason : '';
    console.log(`${r.id.padEnd(28)} ${r.outcome.padEnd(12)} ${r.topic}${detail ? `: ${detail}` : ''}`);
  }
console.log(`${count('agrees')} agree, ${count('differs')} differ, ${count('unsupported')} unsupported`);
process.exitCode = count('differs') > 0 ? 2 : 0;
