import { dot2, type Vec2 } from '@cloche/engine';
import type { Change } from '../brief/document.js';
import { gripOf } from '../plan/grips.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { type Arranged, tell } from './arranged.js';
import { closely, lengthTo } from './exact.js';
import { groupOf } from './members.js';

/** Below this a length stays as it is written [m]. */
const nothing = 1e-12;

/** Changes that move one thing by a distance in the room; in a wall only the part along the wall counts. */
export const shiftOf = (data: unknown, id: string, by: Vec2, finest = closely): readonly Change[] =>
  gripOf(data, id).flatMap((spot) =>
    spot.flatMap(({ path, written, metres, along }): readonly Change[] => {
      const part = dot2(by, along);
      return Math.abs(part) < nothing ? [] : [[path, lengthTo(written, metres + part, finest)]];
    }),
  );

/** Everything in hand moved by one distance in the room [m]. */
export function shifted(data: unknown, ids: readonly string[], by: Vec2): Arranged {
  const group = groupOf(data, ids);
  const moves = group.members.map(({ id }) => ({ id, changes: shiftOf(data, id, by) }));
  return {
    changes: moves.flatMap(({ changes }) => changes),
    told: [...tell(group.placedByOthers, say.placedByOthers), ...tell(stuck(moves), say.onlyAlongWall)],
  };
}

/** Each thing by a distance of its own; ids as `unitsOf` gives them. */
export function shiftedEach(data: unknown, moves: readonly (readonly [string, Vec2])[]): Arranged {
  const wanted = moves.filter(([, by]) => Math.hypot(...by) >= nothing);
  const done = wanted.map(([id, by]) => ({ id, changes: shiftOf(data, id, by) }));
  return { changes: done.flatMap(({ changes }) => changes), told: tell(stuck(done), say.onlyAlongWall) };
}

const stuck = (moves: readonly { readonly id: string; readonly changes: readonly Change[] }[]): readonly string[] =>
  moves.filter(({ changes }) => changes.length === 0).map(({ id }) => id);
