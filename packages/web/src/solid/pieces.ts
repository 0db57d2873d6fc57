import type { Design, DesignDoor, Part, Solid, Vec3 } from '../engine/contract.js';
import { boxesOf, boxOver, clothBoxes, moved, plateBox, type SolidBox, uprightBox } from './boxes.js';

/** One thing that is drawn in space and can be touched: a part, or a thing that is not made of parts. */
export interface Piece {
  /** Id of the part, or of the thing itself. */
  readonly id: string;
  /** The thing that is taken in hand with it. */
  readonly thing: string;
  /** Beams are drawn as lines; their boxes are only touched. */
  readonly kind: 'body' | 'plate' | 'cloth' | 'beam';
  readonly boxes: readonly SolidBox[];
  readonly part?: Part;
  /** Belongs to the ceiling of the room, which is drawn only when asked for. */
  readonly ceiling?: true;
  /** How far it is drawn from its place [m]. */
  readonly by?: Vec3;
}

/** Thickness that a table top is drawn with; tables are measured by their upper face only. */
const topThickness = 0.2;
/** What is known by its place only is drawn as a small box of this size [m]. */
const pointSize = 0.1;

const solidPiece = (solid: Solid): Piece => ({
  id: solid.id,
  thing: solid.id,
  kind: 'body',
  boxes: [boxOver(solid.outline, solid.bottom, solid.top)],
});

const furniture = (design: Design): readonly Piece[] => [
  ...design.tables.map(
    ({ id, outline, height }): Piece => ({
      id,
      thing: id,
      kind: 'body',
      boxes: [boxOver(outline, height - topThickness, height)],
    }),
  ),
  ...design.tables.flatMap((table) => table.equipment.map(solidPiece)),
  ...[...design.equipment, ...design.room.columns, ...design.room.obstructions]
    .filter((s) => s.outline.length >= 4)
    .map(solidPiece),
];

/** Depth that leaves, panes, boards and signs are drawn with; they are measured by their face only [m]. */
const faceDepth = 0.04;

const inWall = (opening: Design['room']['windows'][number], kind: Piece['kind']): Piece => {
  const { id, from, to, bottom, top } = opening;
  const middle: Vec3 = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2, (bottom + top) / 2];
  const turn = Math.atan2(to[1] - from[1], to[0] - from[0]);
  return { id, thing: id, kind, boxes: [uprightBox(middle, opening.width, faceDepth, top - bottom, turn)] };
};

/** Leaves of a door, opened as the plan draws them. */
const leavesOf = ({ leaves, bottom, top }: DesignDoor): readonly SolidBox[] =>
  leaves.map(({ hinge, leaf, open }) => {
    const [c, s] = [Math.cos(open), Math.sin(open)];
    const middle: Vec3 = [hinge[0] + (c * leaf) / 2, hinge[1] + (s * leaf) / 2, (bottom + top) / 2];
    return uprightBox(middle, leaf, faceDepth, top - bottom, open);
  });

/** Doors, windows, boards and exit signs. */
const onWalls = ({ room }: Design): readonly Piece[] => [
  ...room.doors.flatMap((door): Piece[] => {
    const boxes = leavesOf(door);
    if (boxes.length > 0) return [{ id: door.id, thing: door.id, kind: 'body', boxes }];
    return door.swing === 'sliding' ? [inWall(door, 'body')] : [];
  }),
  ...room.windows.map((w) => inWall(w, 'plate')),
  ...room.boards.map((b) => inWall(b, 'body')),
  ...room.exitSigns.map(
    ({ id, at, height }): Piece => ({
      id,
      thing: id,
      kind: 'body',
      boxes: [uprightBox([at[0], at[1], height], 2 * pointSize, faceDepth, pointSize, 0)],
    }),
  ),
];

/** How near to a beam one must point to touch it [m]. */
const beamReach = 0.05;

const beamPieces = (design: Design): readonly Piece[] =>
  design.lasers.map(({ id, legs }) => ({
    id,
    thing: id,
    kind: 'beam',
    boxes: legs.flatMap(({ from, to }) => boxesOf({ shape: 'bar', from, to, width: beamReach, height: beamReach })),
  }));

const ceilingBox = (id: string, at: Vec3, size: Vec3): Piece => ({
  id,
  thing: id,
  kind: 'body',
  boxes: [uprightBox(at, ...size, 0)],
  ceiling: true,
});

/** What the building put under the ceiling. */
function overhead({ room }: Design): readonly Piece[] {
  const flat = 0.02;
  return [
    ...room.beams.filter((b) => b.outline.length >= 4).map((b): Piece => ({ ...solidPiece(b), ceiling: true })),
    ...[...room.luminaires, ...room.airTerminals].map(({ id, at, size }) =>
      ceilingBox(id, [at[0], at[1], room.height - flat / 2], [size[0], size[1], flat]),
    ),
    ...room.sprinklers.map(({ id, at, deflector }) =>
      ceilingBox(
        id,
        [at[0], at[1], (deflector + room.height) / 2],
        [pointSize / 2, pointSize / 2, room.height - deflector],
      ),
    ),
    ...room.detectors.map(({ id, at }) =>
      ceilingBox(id, [at[0], at[1], room.height - pointSize / 4], [pointSize, pointSize, pointSize / 2]),
    ),
  ];
}

function partPiece(part: Part): Piece | null {
  const { shape } = part;
  const known = { id: part.id, thing: part.of, part };
  if (shape.shape === 'loose') return null;
  if (shape.shape === 'plate') return { ...known, kind: 'plate', boxes: [plateBox(shape)] };
  if (shape.shape === 'cloth') return { ...known, kind: 'cloth', boxes: clothBoxes(shape) };
  return { ...known, kind: 'body', boxes: boxesOf(shape) };
}

/** Everything of a design that is drawn as bodies, plates and cloth; loose fasteners are only counted. */
export const piecesOf = (design: Design): readonly Piece[] => [
  ...furniture(design),
  ...onWalls(design),
  ...overhead(design),
  ...beamPieces(design),
  ...design.parts.flatMap((part) => partPiece(part) ?? []),
];

/** A piece drawn away from its place. */
export const movedPiece = (piece: Piece, by: Vec3): Piece => ({
  ...piece,
  boxes: piece.boxes.map((box) => moved(box, by)),
  by,
});
