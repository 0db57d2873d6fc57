import { edges, type Ring, signedArea, sub2, type Vec2 } from '@cloche/engine';
import { drawingTexts } from '../../texts/drawing.js';

const { snap: say } = drawingTexts;
const sides = ['east', 'north-east', 'north', 'north-west', 'west', 'south-west', 'south', 'south-east'] as const;
export type WallSide = (typeof sides)[number];

/** Unit normals of the walls into the room, in the order of the walls. */
export function inwardNormals(outline: Ring): readonly Vec2[] {
  const turn = signedArea(outline) < 0 ? -1 : 1;
  return edges(outline).map(({ from, to }): Vec2 => {
    const [dx, dy] = sub2(to, from);
    const length = Math.hypot(dx, dy) || 1;
    return [(-dy / length) * turn, (dx / length) * turn];
  });
}

/** The side of the room on which a wall with this inward normal lies. */
export function sideOf([nx, ny]: Vec2): WallSide {
  const eighth = Math.round(Math.atan2(-ny, -nx) / (Math.PI / 4));
  return sides[(eighth + 8) % 8]!;
}

/** `the south wall`, in the order of the walls. */
export const wallNames = (outline: Ring): readonly string[] =>
  inwardNormals(outline).map((normal) => say.wall(say.sides[sideOf(normal)]));
