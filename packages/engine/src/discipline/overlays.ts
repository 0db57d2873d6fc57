import type { CheckContext } from '../check/context.js';
import type { Finding } from '../floor/finding.js';
import type { OverlayInfo, OverlayMark } from '../floor/overlay.js';
import { disciplines } from './list.js';

const all = disciplines.flatMap((discipline) => discipline.overlays);

/** What can be laid over the plan, in the order in which it is offered. */
export const overlays: readonly OverlayInfo[] = all.map(({ draw: _, ...info }) => info);

/** The marks of an overlay on a checked design; null when no overlay has this id. */
export function overlayMarks(
  id: string,
  context: CheckContext,
  findings: readonly Finding[],
): readonly OverlayMark[] | null {
  const overlay = all.find((each) => each.id === id);
  return overlay ? overlay.draw(context, new Map(findings.map((f) => [f.id, f]))) : null;
}
