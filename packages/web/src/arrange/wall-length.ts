import { cross2, distance2, dot2, type Ring, selfCrossings, sub2, unit2, type Vec2 } from '@cloche/engine';
import type { Change } from '../brief/document.js';
import { metresOf } from '../brief/lengths.js';
import { listAt, type Path, valueAt } from '../brief/path.js';
import { wallNames } from '../drawing/snap/wall-names.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import type { Arranged } from './arranged.js';
import { closely, lengthTo } from './exact.js';
import { lengthOfWall, outlineOf } from './walls.js';

/** Walls this close to the same direction run side by side (0.06 degrees) [rad]. */
const parallel = 1e-3;

/** The corners that move along when a wall gets another length, from its end to the start of the next wall that runs beside it. */
function followers(
  outline: Ring,
  wall: number,
): { readonly corners: readonly number[]; readonly beside: number | null } {
  const n = outline.length;
  const edge = (i: number) => unit2(sub2(outline[(i + 1) % n]!, outline[i % n]!));
  const along = edge(wall);
  for (let k = 1; k < n - 1; k++)
    if (Math.abs(cross2(along, edge(wall + k))) < parallel)
      return { corners: Array.from({ length: k }, (_, i) => (wall + 1 + i) % n), beside: (wall + k) % n };
  return { corners: [(wall + 1) % n], beside: null };
}

/**
 * A wall of another length: the corners after it move along it, up to the wall that runs beside it and takes up the
 * difference. What stands in that wall stays where it is in the room. Refused when walls would cross or vanish.
 * @param length [m]
 */
export function withWallLength(data: unknown, wall: number, length: number): Arranged {
  const outline = outlineOf(data);
  if (!outline[wall]) return { changes: [], told: [say.noWall] };
  const by = length - lengthOfWall(outline, wall);
  const along = unit2(sub2(outline[(wall + 1) % outline.length]!, outline[wall]!));
  const { corners, beside } = followers(outline, wall);
  const moving = new Set(corners);
  const after = outline.map((p, i): Vec2 => (moving.has(i) ? [p[0] + along[0] * by, p[1] + along[1] * by] : p));
  const refusal = refusalOf(outline, after, length);
  if (refusal) return { changes: [], told: [refusal] };
  const changes = corners.flatMap((i) =>
    [0, 1].flatMap((k): readonly Change[] => {
      const path: Path = ['room', 'outline', i, k];
      return Math.abs(after[i]![k]! - outline[i]![k]!) < 1e-9
        ? []
        : [[path, lengthTo(valueAt(data, path), after[i]![k]!, closely)]];
    }),
  );
  const moved = (wall + 1) % outline.length;
  const names = wallNames(outline);
  const told = beside === null ? say.wallTurns(names[moved]!) : say.wallMoves(names[moved]!, mm(by), names[beside]!);
  return { changes: [...changes, ...keptInWall(data, outline, after, beside)], told: [told] };
}

const mm = (metres: number): string => `${Number((Math.abs(metres) * 1000).toFixed(2))} mm`;

function refusalOf(before: Ring, after: Ring, length: number): string | null {
  if (!(length > 0)) return say.wallNeedsLength;
  const vanished = after.findIndex((_, i) => {
    const [was, now] = [before, after].map((ring) => sub2(ring[(i + 1) % ring.length]!, ring[i]!));
    return dot2(was!, now!) <= 0 || distance2(after[i]!, after[(i + 1) % after.length]!) < 0.01;
  });
  if (vanished >= 0) return say.wallVanishes(wallNames(before)[vanished]!);
  return selfCrossings(after).length > 0 ? say.wallsCross : null;
}

/** Doors, windows and boards are measured from the first corner of their wall; when that corner moves, they do not. */
function keptInWall(data: unknown, before: Ring, after: Ring, beside: number | null): readonly Change[] {
  if (beside === null) return [];
  const along = unit2(sub2(before[(beside + 1) % before.length]!, before[beside]!));
  const by = dot2(sub2(before[beside]!, after[beside]!), along);
  return ['doors', 'windows', 'boards'].flatMap((list) =>
    listAt(data, ['room', list]).flatMap((entry, i): readonly Change[] => {
      const at = metresOf(valueAt(entry, ['at']));
      if (valueAt(entry, ['wall']) !== beside || at === null || Math.abs(by) < 1e-9) return [];
      return [[['room', list, i, 'at'], lengthTo(valueAt(entry, ['at']), at + by, closely)]];
    }),
  );
}
