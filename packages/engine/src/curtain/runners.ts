import { type Outcome, ok, positive, refuse } from '../floor/problem.js';
import { negative } from './messages.js';
import { samePlace } from './types.js';

export interface RunnerQuestion {
  /** Width of the panel, or of all panels of one stretch [m]. */
  readonly width: number;
  /** Largest distance between runners [m]. */
  readonly pitch: number;
  /** Length of a runner along the track [m]. */
  readonly runnerLength: number;
  /** Thickness of the cloth [m]. */
  readonly thickness: number;
  readonly endStop: number;
}

export interface Runners {
  readonly runners: number;
  readonly gaps: number;
  /** Distance between runners as they are spread [m]. */
  readonly pitch: number;
  /** Track length that the pushed-together curtain takes [m]. */
  readonly stackBack: number;
}

/** Runners of a panel: one at each edge and none farther apart than the pitch. Source: common practice (handbook of layout, 3.7). */
export const runnerCount = (width: number, pitch: number): number => Math.ceil((width - samePlace) / pitch) + 1;

/**
 * Runners of a panel and the room that it takes on the track when pushed together.
 *
 *     gaps = ceil(width / pitch), runners = gaps + 1
 *     stack = max(runners · runner length, 2 · thickness · gaps) + end stop
 * @param question sizes [m]
 * @returns counts [-] and lengths [m], or `curtain/width`, `curtain/pitch`, `curtain/negative`
 * Source: rule of the trade (common practice; handbook of layout, 3.7).
 */
export function runnersOf({ width, pitch, runnerLength, thickness, endStop }: RunnerQuestion): Outcome<Runners> {
  const problems = [
    ...positive('curtain/width', 'width', width, 'm'),
    ...positive('curtain/pitch', 'pitch', pitch, 'm'),
    ...Object.entries({ runnerLength, thickness, endStop })
      .filter(([, value]) => !(value >= 0))
      .map(([name, value]) => negative(name, value, 'm')),
  ];
  if (problems.length > 0) return refuse(problems);
  const runners = runnerCount(width, pitch);
  const gaps = runners - 1;
  const stackBack = Math.max(runners * runnerLength, 2 * thickness * gaps) + endStop;
  return ok({ runners, gaps, pitch: width / gaps, stackBack });
}
