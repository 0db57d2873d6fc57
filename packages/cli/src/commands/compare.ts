import { compareDesigns, type Problem } from '@cloche/engine';
import { comparisonText } from '../show/comparison.js';
import { failWith } from '../show/problems.js';
import { type BriefOptions, designOf } from './design-of.js';

/** `cloche compare`: what differs between two briefs. */
export function compare(before: string, after: string, options: BriefOptions): number {
  const json = options.json ?? false;
  const [was, is] = [designOf(before, options), designOf(after, options)];
  if (!was.ok || !is.ok) return failWith(distinct([was, is].flatMap((o) => (o.ok ? [] : o.problems))), json);
  const comparison = compareDesigns(was.value, is.value);
  const text = json
    ? JSON.stringify(comparison, null, 2)
    : comparisonText(comparison, { before, after }, process.stdout.columns ?? 100);
  process.stdout.write(`${text}\n`);
  return comparison.worse ? 2 : 0;
}

/** What is wrong with the catalogue or the rules is wrong for both briefs, and told once. */
const distinct = (problems: readonly Problem[]): Problem[] => [
  ...new Map(problems.map((p) => [JSON.stringify(p), p])).values(),
];
