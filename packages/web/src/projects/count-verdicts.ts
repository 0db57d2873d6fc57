import type { Finding, Verdict } from '../engine/contract.js';
import type { VerdictCount } from './api.js';

/** How many findings of each verdict there are. */
export function countVerdicts(findings: readonly Finding[]): VerdictCount {
  const count = (verdict: Verdict) => findings.filter((f) => f.verdict === verdict).length;
  return {
    meets: count('meets'),
    attention: count('attention'),
    fails: count('fails'),
    notAssessed: count('not assessed'),
  };
}

/** The count of one verdict. */
export const countOf = (counts: VerdictCount, verdict: Verdict): number =>
  verdict === 'not assessed' ? counts.notAssessed : counts[verdict];
