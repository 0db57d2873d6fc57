import { contains, distanceToSegment } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { suspendedObstructionTable } from './tables.js';
import { isLine, type Obstacle, sidesOfObstacle } from './types.js';

/**
 * Where something stands as seen from a sprinkler head: horizontal distance to its outline, 0 under the head, and how far its
 * top lies below the deflector; below zero when it is higher.
 * @param head    place of the head [m] and height of its deflector [m]
 * @param thing   ring or line in plan [m]
 * @param top     its top [m]
 * Source: plan geometry (derived).
 */
export function fromSprinkler(
  head: { readonly at: Vec2; readonly deflector: number },
  thing: Obstacle,
  top: number,
): { readonly horizontal: number; readonly below: number } {
  const inside = !isLine(thing) && contains(thing.outline, head.at);
  const away = sidesOfObstacle(thing).map((e) => distanceToSegment(head.at, e.from, e.to));
  const horizontal = inside ? 0 : Math.min(...away);
  return { horizontal, below: head.deflector - top };
}

/**
 * Least distance below the deflector for a curtain or partition at a horizontal distance from the head; null beyond the table,
 * where the free plane holds. Light hazard only; only the fire authority can accept it.
 * @param horizontal distance in plan [m]
 * Source: NFPA 13 (2016), Table 8.6.5.2.2 (from memory).
 */
export const suspendedObstructionDepth = (horizontal: number): number | null =>
  suspendedObstructionTable.find((row) => horizontal <= row.upTo + 1e-9)?.below ?? null;
