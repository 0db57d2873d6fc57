import { distance2, type Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { counterClockwise, outward } from '../plan/wall-band.js';

/** A wall whose length stands on the sheet. */
export interface WallDimension {
  /** Its number in the outline of the brief. */
  readonly wall: number;
  readonly from: Vec2;
  readonly to: Vec2;
  /** Unit normal out of the room. */
  readonly out: Vec2;
  readonly metres: number;
}

/** Shorter walls show no dimension [m]. */
const shortest = 0.3;

/** The length of every wall, equal ones that face each other once: first those that face south and west. */
export function wallDimensions({ room }: Design): readonly WallDimension[] {
  const { outline } = room;
  const ring = counterClockwise(outline);
  const turned = ring !== outline && ring[0] !== outline[0];
  const seen = new Set<string>();
  return ring
    .map((from, i): WallDimension => {
      const to = ring[(i + 1) % ring.length]!;
      // Turned round, the i-th wall is the one before the corner that it now ends in.
      const wall = turned ? (2 * ring.length - 2 - i) % ring.length : i;
      return { wall, from, to, out: outward(from, to), metres: distance2(from, to) };
    })
    .filter(({ metres }) => metres >= shortest)
    .sort((a, b) => a.out[0] + a.out[1] - (b.out[0] + b.out[1]) || a.wall - b.wall)
    .filter(({ out, metres }) => {
      const key = `${Math.abs(out[0]).toFixed(3)} ${Math.abs(out[1]).toFixed(3)} ${metres.toFixed(4)}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    });
}
