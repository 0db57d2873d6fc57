import type { CompleteBrief } from '../brief/complete.js';
import type { Catalogue, Cover } from '../catalogue/schema.js';
import type { Barrier, DesignCover, DesignRoom, WallOpening } from '../design/types.js';
import { add2, scale2, sub2, unit2, type Vec3 } from '../floor/geometry/vec.js';
import { type Outcome, ok } from '../floor/problem.js';
import type { PartDraft } from './draft.js';
import { cheapest, chosenItem, findItem, itemsOf } from './items.js';

type BriefCover = CompleteBrief['layout']['covers'][number];

/** How far a cover stands off the wall [m] (common practice: it hangs on the reveal). */
const standOff = 0.02;

export interface ComposedCover {
  readonly cover: DesignCover;
  readonly draft: PartDraft;
  readonly barrier: Barrier;
}

/** A cover over a window or door, lapped over its edges all round; where nothing is named, the cheapest that fits the purpose. */
export function composeCover(
  brief: BriefCover,
  index: number,
  room: DesignRoom,
  catalogue: Catalogue,
  againstLaser: boolean,
): Outcome<ComposedCover> {
  const path = ['layout', 'covers', index, 'item'];
  const opening = [...room.windows, ...room.doors].find((o) => o.id === brief.over)!;
  const purpose = againstLaser ? 'laser barrier' : 'blackout';
  const found = brief.item
    ? findItem<Cover>(catalogue, brief.item, ['cover'], path)
    : chosenItem(
        coverFor(
          opening,
          itemsOf<Cover>(catalogue, 'cover').filter((c) => c.purpose === purpose),
        ),
        `cover ${againstLaser ? 'against laser light' : 'against light'}`,
        path,
      );
  if (!found.ok) return found;
  const item = found.value;
  const shape = coverShape(opening, item.overlap);
  const width = shape.width;
  const height = shape.top - shape.bottom;
  return ok({
    cover: {
      id: brief.id,
      over: brief.over,
      item: item.id,
      part: `${brief.id}.cover-1`,
      width,
      height,
      fits: coverFits(opening, item),
    },
    draft: {
      item: item.id,
      group: 'covers',
      role: 'cover',
      of: brief.id,
      shape: { shape: 'plate', corners: shape.corners, thickness: 0.01 },
      count: 1,
      length: height,
      width,
      mass: item.mass,
      placed: { rule: 'compose.cover', because: 'A cover laps over the edges of the window or door that it closes.' },
      note: item.fixing,
    },
    barrier: {
      id: `${brief.id}/face`,
      name: `Cover of ${opening.name}`,
      of: brief.id,
      item: item.id,
      from: shape.from,
      to: shape.to,
      bottom: shape.bottom,
      top: shape.top,
    },
  });
}

/** Whether a cover reaches over the opening with its laps, upright or on its side. */
function coverFits(opening: WallOpening, item: Cover): boolean {
  const { width, bottom, top } = coverShape(opening, item.overlap);
  const height = top - bottom;
  return (
    Math.max(width, height) <= Math.max(...item.largest) + 1e-9 &&
    Math.min(width, height) <= Math.min(...item.largest) + 1e-9
  );
}

/** The cheapest cover that fits; where none does, the largest, so that the check says what is missing. */
const coverFor = (opening: WallOpening, covers: readonly Cover[]): Cover | undefined =>
  cheapest(covers.filter((c) => coverFits(opening, c))) ??
  [...covers].sort((a, b) => b.largest[0] * b.largest[1] - a.largest[0] * a.largest[1])[0];

function coverShape(opening: WallOpening, overlap: number) {
  const along = unit2(sub2(opening.to, opening.from));
  const off = scale2(opening.inward, standOff);
  const from = add2(add2(opening.from, scale2(along, -overlap)), off);
  const to = add2(add2(opening.to, scale2(along, overlap)), off);
  const bottom = Math.max(0, opening.bottom - overlap);
  const top = opening.top + overlap;
  const at = (p: readonly [number, number], z: number): Vec3 => [p[0], p[1], z];
  return {
    from,
    to,
    bottom,
    top,
    width: opening.width + 2 * overlap,
    corners: [at(from, bottom), at(to, bottom), at(to, top), at(from, top)],
  };
}
