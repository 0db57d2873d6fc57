import type { CheckContext } from '../check/context.js';
import type { Finding } from '../floor/finding.js';
import type { OverlayInfo, OverlayMark } from '../floor/overlay.js';

/** An overlay with what draws it: from a checked design and its findings, nothing else. */
export interface Overlay extends OverlayInfo {
  readonly draw: (context: CheckContext, findings: FindingsById) => readonly OverlayMark[];
}

/** Findings by their id. */
export type FindingsById = ReadonlyMap<string, Finding>;

/** The finding's number as a writing at its place; nothing where it has no place. */
export function valueOf(finding: Finding, text: string, at = finding.at): readonly OverlayMark[] {
  return at ? [{ mark: 'value', at, text, verdict: finding.verdict, finding: finding.id }] : [];
}

/** The gravest of some findings: the highest utilisation, else one that was not assessed. */
export function gravest(findings: readonly Finding[]): Finding | undefined {
  return [...findings].sort((a, b) => (b.utilisation ?? -1) - (a.utilisation ?? -1) || (a.id < b.id ? -1 : 1))[0];
}

/** Findings whose id begins so. */
export const findingsUnder = (findings: FindingsById, start: string): readonly Finding[] =>
  [...findings.values()].filter((f) => f.id.startsWith(start));
