import type { Finding } from '../engine/contract.js';

/** Findings of one requirement together, in the order in which the first of each stands. */
export function bundles(findings: readonly Finding[]): readonly (readonly [string, readonly Finding[]])[] {
  const byRequirement = new Map<string, Finding[]>();
  for (const finding of findings) {
    const list = byRequirement.get(finding.requirement);
    if (list) list.push(finding);
    else byRequirement.set(finding.requirement, [finding]);
  }
  return [...byRequirement];
}
