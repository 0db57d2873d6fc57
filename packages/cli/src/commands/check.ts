import { isDone } from '@cloche/engine';
import { findingsText } from '../show/findings.js';
import { failWith } from '../show/problems.js';
import { type BriefOptions, designOf } from './design-of.js';

/** `cloche check`: findings only. */
export function check(file: string, options: BriefOptions): number {
  const result = designOf(file, options);
  if (!result.ok) return failWith(result.problems, options.json ?? false);
  const { findings, revision } = result.value;
  const text = options.json
    ? JSON.stringify({ revision, findings }, null, 2)
    : findingsText(findings, process.stdout.columns ?? 100);
  process.stdout.write(`${text}\n`);
  return isDone(findings) ? 0 : 2;
}
