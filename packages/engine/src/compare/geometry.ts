import type { Design } from '../design/types.js';
import { length3, type Vec3 } from '../floor/geometry/vec.js';
import { compareText } from '../floor/text-order.js';
import { type FieldChange, fieldChanges } from './fields.js';
import { layoutThings } from './layout-things.js';
import {
  carried,
  difference,
  isStill,
  type Motion,
  middleOf,
  rigidMotion,
  samePlaces,
  still,
  wholeTurn,
} from './motion.js';
import { sameAngle, sameLength } from './quantities.js';
import { roomThings } from './room-things.js';
import { type Fact, fact, type Thing, type ThingKind, thingKinds } from './thing.js';

/** What became of one thing. A thing is known by its id alone: one with another id is another thing, however alike. */
export interface ThingChange {
  readonly id: string;
  readonly kind: ThingKind;
  /** As it is called now; what is gone, as it was called. */
  readonly name: string;
  readonly change: 'added' | 'removed' | 'changed';
  /** How far and which way it went, east, north and up [m]; null when it stayed. */
  readonly moved: Vec3 | null;
  /** How far it was turned, counter-clockwise seen from above [rad]; null when it was not. */
  readonly turned: number | null;
  /** The thing that it stands on or belongs to, when it did nothing but go along with it. */
  readonly along: string | null;
  readonly resized: readonly FieldChange[];
  readonly changed: readonly FieldChange[];
}

/**
 * What was added, removed, moved, turned, resized and changed between two designs, in the order of kinds and ids.
 *
 * Motions are told of the thing as a whole where all its points keep their distances, of its own place and turn where its size changed
 * too, and corner by corner where neither holds.
 * @param before the earlier design
 * @param after  the later design
 * @returns      one entry for each thing that differs by more than the noise of arithmetic; lengths [m], angles [rad]
 * Source: geometry (derived).
 */
export function compareGeometry(before: Design, after: Design): ThingChange[] {
  const [was, is] = [thingsOf(before), thingsOf(after)];
  const motions = new Map<string, Motion>();
  for (const [key, thing] of is) {
    const old = was.get(key);
    if (old) motions.set(thing.id, motionBetween(old, thing));
  }
  const both = [...is].flatMap(([key, thing]) => {
    const old = was.get(key);
    return old ? changeOf(old, thing, goesAlong(old, thing, was, is, motions)) : [];
  });
  const only = (here: Things, there: Things, change: 'added' | 'removed') =>
    [...here].filter(([key]) => !there.has(key)).map(([, thing]): ThingChange => ({ ...unchanged(thing), change }));
  return [...both, ...only(is, was, 'added'), ...only(was, is, 'removed')].sort(
    (a, b) =>
      thingKinds.indexOf(a.kind) - thingKinds.indexOf(b.kind) ||
      compareText(a.id, b.id) ||
      compareText(a.change, b.change),
  );
}

/** Things by kind and id: what keeps its id but becomes another kind of thing is removed and added. */
type Things = ReadonlyMap<string, Thing>;

const keyOf = (thing: Pick<Thing, 'kind' | 'id'>): string => `${thing.kind} ${thing.id}`;
const thingsOf = (design: Design): Things =>
  new Map([...roomThings(design.room), ...layoutThings(design)].map((thing) => [keyOf(thing), thing]));

const unchanged = ({ id, kind, name }: Thing) => ({
  id,
  kind,
  name,
  moved: null,
  turned: null,
  along: null,
  resized: [],
  changed: [],
});

function motionBetween(old: Thing, thing: Thing): Motion {
  const rigid = rigidMotion(old.points, thing.points);
  if (rigid) return rigid;
  if (!old.pose || !thing.pose) return still;
  return { shift: difference(thing.pose.at, old.pose.at), turn: wholeTurn(thing.pose.turn - old.pose.turn) };
}

/**
 * A frame that is fitted anew may come out with length and width exchanged and a quarter turn instead: then both states are told as they lie
 * nearest to the axes of the room.
 */
function facingAlike(old: Thing, thing: Thing): readonly [Thing, Thing] {
  if (thing.kind !== 'enclosure' || rigidMotion(old.points, thing.points)) return [old, thing];
  const quarter = quarters(wholeTurn((thing.pose?.turn ?? 0) - (old.pose?.turn ?? 0)));
  return quarter === 0 ? [old, thing] : [nearAxes(old), nearAxes(thing)];
}

/** Whole quarter turns nearest to an angle. */
const quarters = (angle: number): number => Math.round(angle / (Math.PI / 2));

function nearAxes(thing: Thing): Thing {
  if (!thing.pose) return thing;
  const turned = quarters(thing.pose.turn);
  const swapped: Readonly<Record<string, string>> = turned % 2 === 0 ? {} : { length: 'width', width: 'length' };
  return {
    ...thing,
    pose: { at: thing.pose.at, turn: thing.pose.turn - (turned * Math.PI) / 2 },
    points: thing.points.map((_, i) => thing.points.at((i - turned) % thing.points.length)!),
    sizes: thing.sizes.map((size) => ({ ...size, field: swapped[size.field] ?? size.field })),
  };
}

/** The carrier of a thing when the thing now lies just where the motion of the carrier takes it. */
function goesAlong(
  old: Thing,
  thing: Thing,
  was: Things,
  is: Things,
  motions: ReadonlyMap<string, Motion>,
): string | null {
  const id = thing.carrier;
  if (id === null || id !== old.carrier || thing.points.length === 0) return null;
  const find = (things: Things) => [...things.values()].find((t) => t.id === id);
  const [from, to, motion] = [find(was), find(is), motions.get(id)];
  if (!from || !to || !motion || from.points.length === 0) return null;
  const lift = to.surface - from.surface;
  const [east, north, up] = motion.shift;
  const lifted: Motion = { shift: [east, north, up + lift], turn: motion.turn };
  const about = from.pose && !rigidMotion(from.points, to.points) ? from.pose.at : middleOf(from.points);
  // What is measured from the floor stays at its height when the face under it is raised.
  const follows = (by: Motion) => !isStill(by) && samePlaces(carried(old.points, about, by), thing.points);
  return follows(lifted) || follows(motion) ? id : null;
}

function changeOf(was: Thing, is: Thing, along: string | null): ThingChange[] {
  const [old, thing] = facingAlike(was, is);
  const { shift, turn } = motionBetween(old, thing);
  const corners = cornerFacts(old, thing);
  const change: ThingChange = {
    ...unchanged(thing),
    change: 'changed',
    moved: length3(shift) > sameLength ? shift : null,
    turned: Math.abs(turn) > sameAngle ? turn : null,
    along,
    resized: fieldChanges([...old.sizes, ...corners.before], [...thing.sizes, ...corners.after]),
    changed: fieldChanges(old.facts, thing.facts),
  };
  const differs = change.moved || change.turned !== null || change.resized.length > 0 || change.changed.length > 0;
  return differs ? [change] : [];
}

/** Places of the corners, where they did not move together. */
function cornerFacts(old: Thing, thing: Thing): { readonly before: Fact[]; readonly after: Fact[] } {
  const name = thing.corners;
  if (!name || rigidMotion(old.points, thing.points)) return { before: [], after: [] };
  const told = ({ points }: Thing) => [
    fact(`${name}s`, points.length),
    ...points.map(([x, y, z], i) => fact(`${name} ${i + 1}`, name === 'point' ? [x, y, z] : [x, y])),
  ];
  return { before: told(old), after: told(thing) };
}
