import type { CheckContext } from '../check/context.js';
import type { DisciplineId, Finding } from '../floor/finding.js';
import type { Topic } from '../floor/topic.js';
import type { Overlay } from '../overlay/overlay.js';

/** What a discipline finds on a design. Changes nothing. */
export type Check = (context: CheckContext) => readonly Finding[];

/**
 * All that a discipline brings, in one object: findings, overlays and calculations. Check, overlay, calculation and report are
 * derived from the list of these objects, so that a discipline deepens, or a new one comes, without a word elsewhere.
 */
export interface Discipline {
  readonly id: DisciplineId;
  /** As tables and chapters name it. */
  readonly title: string;
  /** Checks that answer while a hand moves. */
  readonly light: readonly Check[];
  /** Checks that take longer than a picture on the screen; their findings are stale until they are there. */
  readonly heavy: readonly Check[];
  /** What it can lay over the plan. */
  readonly overlays: readonly Overlay[];
  /** Its calculations that stand without a project. */
  readonly topics: readonly Topic[];
}
