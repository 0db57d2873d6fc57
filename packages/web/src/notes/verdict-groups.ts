import type { Finding, Verdict } from '../engine/contract.js';

/** What a person can do something about stands before what nobody has looked at. */
export const verdictsInOrder: readonly Verdict[] = ['fails', 'attention', 'not assessed', 'meets'];

/** What is met, and what is not assessed beside anything that fails or wants attention, is folded to its count. */
export function foldedAtFirst(verdict: Verdict, findings: readonly Finding[]): boolean {
  if (verdict === 'meets') return true;
  return verdict === 'not assessed' && findings.some((f) => f.verdict === 'fails' || f.verdict === 'attention');
}
