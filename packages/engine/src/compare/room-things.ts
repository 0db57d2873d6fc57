import type { DesignDoor, DesignRoom, Solid, WallOpening } from '../design/types.js';
import { type Ring, signedArea } from '../floor/geometry/polygon.js';
import { at3, distance2, dot2, sub2, type Vec2 } from '../floor/geometry/vec.js';
import { sameLength } from './quantities.js';
import { type Fact, fact, type Thing, type ThingKind } from './thing.js';

const words = (id: string, kind: ThingKind, name: string) => ({ id, kind, name, carrier: null, surface: 0 }) as const;

/** The room and everything of the building that stands, hangs or opens in it. */
export const roomThings = (room: DesignRoom): Thing[] => [
  {
    ...words('room', 'room', room.name),
    points: room.outline.map((p) => at3(p, 0)),
    corners: 'corner',
    sizes: [fact('height', room.height, 'length')],
    facts: [fact('name', room.name), fact('ceiling', room.ceiling)],
  },
  ...room.doors.map(doorThing),
  ...room.windows.map((window) => openingThing('window', window)),
  ...room.boards.map((board): Thing => {
    const thing = openingThing('board', board);
    return {
      ...thing,
      facts: [
        ...thing.facts,
        fact('voltage to ground', board.voltsToGround, 'voltage'),
        fact('opposite side', board.opposite),
      ],
    };
  }),
  ...room.columns.map((solid) => solidThing('column', solid)),
  ...room.beams.map((solid) => solidThing('beam', solid)),
  ...room.obstructions.map((solid) => solidThing('obstruction', solid)),
  ...room.sprinklers.map(({ id, at, deflector }) => pointThing('sprinkler', id, at, deflector)),
  ...room.detectors.map(({ id, at, kind }) => pointThing('detector', id, at, 0, [fact('kind', kind)])),
  ...room.exitSigns.map(({ id, at, height }) => pointThing('exit sign', id, at, height)),
  ...room.airTerminals.map(({ id, kind, at, size, flow }): Thing => {
    const thing = pointThing('air terminal', id, at, 0, [fact('kind', kind), fact('flow', flow, 'flow')]);
    return { ...thing, sizes: planSizes(size) };
  }),
  ...room.luminaires.map(
    ({ id, at, size }): Thing => ({
      ...pointThing('luminaire', id, at, 0),
      sizes: planSizes(size),
    }),
  ),
];

const planSizes = ([length, width]: Vec2): Fact[] => [fact('length', length, 'length'), fact('width', width, 'length')];

function pointThing(kind: ThingKind, id: string, at: Vec2, height: number, facts: readonly Fact[] = []): Thing {
  return { ...words(id, kind, id), points: [at3(at, height)], sizes: [], facts };
}

/** What is let into a wall: measured from its first end, as it is surveyed. */
function openingThing(kind: ThingKind, o: WallOpening): Thing {
  return {
    ...words(o.id, kind, o.name),
    points: [at3(o.from, o.bottom), at3(o.to, o.bottom)],
    pose: { at: at3(o.from, o.bottom), turn: Math.atan2(o.to[1] - o.from[1], o.to[0] - o.from[0]) },
    sizes: [fact('width', o.width, 'length'), fact('height', o.top - o.bottom, 'length')],
    facts: [fact('name', o.name)],
  };
}

function doorThing(door: DesignDoor): Thing {
  const thing = openingThing('door', door);
  const [leaf, second] = door.leaves;
  const hinge = leaf && !second ? hingeSide(door, leaf.hinge) : null;
  return {
    ...thing,
    facts: [
      ...thing.facts,
      fact('swing', door.swing),
      fact('hinge', hinge),
      fact('leaves', door.leaves.length),
      fact('exit', door.exit),
    ],
  };
}

/** Seen from inside, looking at the wall, left is the inward normal turned a quarter to the right. */
function hingeSide({ from, to, inward }: DesignDoor, hinge: Vec2): 'left' | 'right' {
  const other = distance2(hinge, from) < distance2(hinge, to) ? to : from;
  return dot2(sub2(hinge, other), [inward[1], -inward[0]]) > 0 ? 'left' : 'right';
}

/** True for four corners with square angles. */
function isRectangle(ring: Ring): boolean {
  const [a, b, c, d] = ring;
  if (!a || !b || !c || !d || ring.length !== 4) return false;
  return distance2(sub2(b, a), sub2(c, d)) <= sameLength && Math.abs(dot2(sub2(b, a), sub2(d, a))) <= sameLength;
}

/** A body in the plan with a height range; a round or many-cornered one tells its extent along the room's axes and its area. */
export function solidThing(kind: ThingKind, solid: Solid): Thing {
  const { outline, bottom, top } = solid;
  const height = fact('height', top - bottom, 'length');
  const base = { ...words(solid.id, kind, solid.name), points: outline.map((p) => at3(p, bottom)) };
  const facts = [fact('name', solid.name)];
  if (isRectangle(outline)) {
    const [a, b, c] = outline as unknown as readonly [Vec2, Vec2, Vec2];
    return {
      ...base,
      pose: {
        at: at3([(a[0] + c[0]) / 2, (a[1] + c[1]) / 2], bottom),
        turn: Math.atan2(b[1] - a[1], b[0] - a[0]),
      },
      sizes: [...planSizes([distance2(a, b), distance2(b, c)]), height],
      facts,
    };
  }
  const [xs, ys] = [outline.map((p) => p[0]), outline.map((p) => p[1])];
  const span = (all: readonly number[]): readonly [number, number] => [Math.min(...all), Math.max(...all)];
  const [[west, east], [south, north]] = [span(xs), span(ys)];
  return {
    ...base,
    pose: { at: at3([(west + east) / 2, (south + north) / 2], bottom), turn: 0 },
    sizes: [
      fact('extent west to east', east - west, 'length'),
      fact('extent south to north', north - south, 'length'),
      fact('plan area', Math.abs(signedArea(outline)), 'area'),
      height,
    ],
    facts,
  };
}
