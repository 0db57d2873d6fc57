import type { CompleteBrief } from '../brief/complete.js';
import type { DesignBoard, DesignDoor, DesignRoom, Solid, WallOpening } from '../design/types.js';
import { counterClockwise, type Ring, rectangle, signedArea } from '../floor/geometry/polygon.js';
import { add2, distance2, left2, scale2, sub2, unit2, type Vec2 } from '../floor/geometry/vec.js';

type BriefDoor = CompleteBrief['room']['doors'][number];

/** The stretch of wall that an opening takes; the wall is the edge of the outline as the brief numbers it. */
function onWall(
  outline: Ring,
  o: {
    readonly id: string;
    readonly name?: string | undefined;
    readonly wall: number;
    readonly at: number;
    readonly width: number;
  },
  bottom: number,
  top: number,
): WallOpening {
  const a = outline[o.wall]!;
  const along = unit2(sub2(outline[(o.wall + 1) % outline.length]!, a));
  const inward = signedArea(outline) > 0 ? left2(along) : scale2(left2(along), -1);
  return {
    id: o.id,
    name: o.name ?? o.id,
    wall: o.wall,
    from: add2(a, scale2(along, o.at)),
    to: add2(a, scale2(along, o.at + o.width)),
    inward,
    width: o.width,
    bottom,
    top,
  };
}

const direction = (from: Vec2, to: Vec2): number => Math.atan2(to[1] - from[1], to[0] - from[0]);

/** The angle of `to` seen from angle `from`, in (-pi, pi]. */
const turnTo = (from: number, to: number): number => Math.atan2(Math.sin(to - from), Math.cos(to - from));

function doorOf(outline: Ring, door: BriefDoor): DesignDoor {
  const opening = onWall(outline, door, 0, door.height);
  const leafAngle = door.angle ?? Math.PI / 2;
  const outOf = door.swing === 'in' ? opening.inward : scale2(opening.inward, -1);
  const leafFrom = (hinge: Vec2, other: Vec2, leaf: number) => {
    const closed = direction(hinge, other);
    return { hinge, leaf, closed, open: closed + Math.sign(turnTo(closed, direction([0, 0], outOf))) * leafAngle };
  };
  // Seen from inside, looking at the wall, left is the inward normal turned a quarter to the right.
  const leftwards: Vec2 = [opening.inward[1], -opening.inward[0]];
  const leftEnd =
    Math.sign(sub2(opening.to, opening.from)[0] * leftwards[0] + sub2(opening.to, opening.from)[1] * leftwards[1]) > 0
      ? 'to'
      : 'from';
  const other = { from: opening.to, to: opening.from } as const;
  const hinged = door.swing === 'in' || door.swing === 'out';
  const hingeEnd = (door.hinge ?? 'left') === 'left' ? leftEnd : leftEnd === 'to' ? 'from' : 'to';
  const single = () => [leafFrom(opening[hingeEnd], other[hingeEnd], door.width)];
  const pair = () => [
    leafFrom(opening.from, opening.to, door.width / 2),
    leafFrom(opening.to, opening.from, door.width / 2),
  ];
  return {
    ...opening,
    swing: door.swing,
    exit: door.exit ?? false,
    leaves: hinged ? (door.leaves === 2 ? pair() : single()) : [],
  };
}

/** A circle as a ring that circumscribes it, so that no obstacle comes out too small. */
function circle(centre: Vec2, diameter: number, sides = 24): Ring {
  const r = diameter / 2 / Math.cos(Math.PI / sides);
  return Array.from({ length: sides }, (_, i): Vec2 => {
    const a = (2 * Math.PI * (i + 0.5)) / sides;
    return [centre[0] + r * Math.cos(a), centre[1] + r * Math.sin(a)];
  });
}

/** The room of the brief with every opening, column and head in room coordinates. */
export function composeRoom({ room }: CompleteBrief): DesignRoom {
  const { outline } = room;
  const columns: Solid[] = room.columns.map((c) => ({
    id: c.id,
    name: `Column ${c.id}`,
    outline: c.size ? rectangle(c.at, c.size[0], c.size[1], c.turn ?? 0) : circle(c.at, c.diameter ?? 0),
    bottom: 0,
    top: room.height,
  }));
  const beams: Solid[] = room.beams.map((b) => {
    const middle: Vec2 = [(b.from[0] + b.to[0]) / 2, (b.from[1] + b.to[1]) / 2];
    return {
      id: b.id,
      name: `Beam ${b.id}`,
      outline: rectangle(middle, distance2(b.from, b.to), b.width, direction(b.from, b.to)),
      bottom: b.underside,
      top: room.height,
    };
  });
  const boards: DesignBoard[] = room.boards.map((b) => ({
    ...onWall(outline, b, 0, room.height),
    voltsToGround: b.voltsToGround,
    opposite: b.opposite ?? 'grounded',
  }));
  return {
    name: room.name,
    outline: counterClockwise(outline),
    height: room.height,
    ceiling: room.ceiling?.kind ?? 'unknown',
    doors: room.doors.map((d) => doorOf(outline, d)),
    windows: room.windows.map((w) => onWall(outline, w, w.sill, w.sill + w.height)),
    boards,
    columns,
    beams,
    obstructions: room.obstructions.map((o) => ({
      id: o.id,
      name: o.name ?? o.id,
      outline: rectangle(o.at, o.size[0], o.size[1], o.turn ?? 0),
      bottom: o.from ?? 0,
      top: o.to,
    })),
    sprinklers: room.sprinklers,
    detectors: room.detectors,
    exitSigns: room.exitSigns,
    airTerminals: room.airTerminals.map((t) => ({ ...t, flow: t.flow ?? null })),
    luminaires: room.luminaires.map(({ id, at, size }) => ({ id, at, size })),
  };
}
