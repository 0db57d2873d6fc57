import type { CheckContext } from '../check/context.js';
import type { Finding } from '../floor/finding.js';
import type { OverlayInfo, OverlayMark } from '../floor/overlay.js';
import { airSupply } from './air.js';
import { curtainSupports } from './curtain.js';
import { frameLoads } from './frame.js';
import { laserBarriers, laserReach, laserScatter } from './laser.js';
import type { Overlay } from './overlay.js';
import { roomHeights, roomKeepClear, roomWays } from './room.js';

const all: readonly Overlay[] = [
  laserReach,
  laserScatter,
  laserBarriers,
  airSupply,
  frameLoads,
  curtainSupports,
  roomWays,
  roomKeepClear,
  roomHeights,
];

/** What can be laid over the plan, in the order in which it is offered. */
export const overlays: readonly OverlayInfo[] = all;

/** The marks of an overlay on a checked design; null when no overlay has this id. */
export function overlayMarks(
  id: string,
  context: CheckContext,
  findings: readonly Finding[],
): readonly OverlayMark[] | null {
  const overlay = all.find((each) => each.id === id);
  return overlay ? overlay.draw(context, new Map(findings.map((f) => [f.id, f]))) : null;
}
