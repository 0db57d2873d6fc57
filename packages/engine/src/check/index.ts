import type { Finding } from '../floor/finding.js';
import { inOrder } from '../floor/finding.js';
import { checkAir } from './air.js';
import type { CheckContext } from './context.js';
import { checkCover } from './cover.js';
import { checkCurtain } from './curtain.js';
import { checkCutting } from './cutting.js';
import { checkFrame } from './frame.js';
import { checkLaser } from './laser.js';
import { checkRoom } from './room.js';
import { wayFindings } from './room-ways.js';
import { unassessedFindings } from './unassessed.js';

type Check = (context: CheckContext) => Finding[];

/** Checks that answer while a hand moves. */
const light: readonly Check[] = [
  checkLaser,
  checkAir,
  checkFrame,
  checkCurtain,
  checkCover,
  checkCutting,
  checkRoom,
  ({ brief }) => unassessedFindings(brief),
];

/** Checks that take longer than a picture on the screen. */
const heavy: readonly Check[] = [wayFindings];

const by = (checks: readonly Check[]) => (context: CheckContext) => checks.flatMap((check) => check(context));

export const checkLight = by(light);
export const checkHeavy = by(heavy);

/** Every discipline's findings on a design, what needs a person first. Changes nothing. */
export const checkDesign = (context: CheckContext): Finding[] =>
  inOrder([...checkLight(context), ...checkHeavy(context)]);

/** True when nothing fails and nothing that is required stays open. */
export const isDone = (findings: readonly Finding[]): boolean =>
  !findings.some((f) => f.verdict === 'fails' || (f.required && f.verdict === 'not assessed'));
