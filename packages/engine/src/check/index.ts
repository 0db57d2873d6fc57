import { type Finding, verdictOrder } from '../floor/finding.js';
import { checkAir } from './air.js';
import type { CheckContext } from './context.js';
import { checkCover } from './cover.js';
import { checkCurtain } from './curtain.js';
import { checkCutting } from './cutting.js';
import { checkFrame } from './frame.js';
import { checkLaser } from './laser.js';
import { checkRoom } from './room.js';
import { unassessedFindings } from './unassessed.js';

const checks = [checkLaser, checkAir, checkFrame, checkCurtain, checkCover, checkCutting, checkRoom] as const;

const byVerdict = (a: Finding, b: Finding): number =>
  verdictOrder.indexOf(a.verdict) - verdictOrder.indexOf(b.verdict) || (a.id < b.id ? -1 : 1);

/** Every discipline's findings on a design, what needs a person first. Changes nothing. */
export function checkDesign(context: CheckContext): Finding[] {
  const findings = [...checks.flatMap((check) => check(context)), ...unassessedFindings(context.brief)];
  const seen = new Set<string>();
  for (const { id } of findings) {
    if (seen.has(id)) throw new Error(`two findings are named ${id}`);
    seen.add(id);
  }
  return findings.sort(byVerdict);
}

/** True when nothing fails and nothing that is required stays open. */
export const isDone = (findings: readonly Finding[]): boolean =>
  !findings.some((f) => f.verdict === 'fails' || (f.required && f.verdict === 'not assessed'));
