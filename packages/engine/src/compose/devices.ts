import type { CompleteBrief } from '../brief/complete.js';
import type { Catalogue, InterlockPart, Item, Sensor, Sign } from '../catalogue/schema.js';
import type { DesignDevice, DesignRoom, PartGroup, PartRole, Placed } from '../design/types.js';
import { add2, at3, scale2, sub2, unit2, type Vec2, type Vec3 } from '../floor/geometry/vec.js';
import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import type { PartDraft } from './draft.js';
import { cheapest, chosenItem, findItem, itemsOf } from './items.js';

/** Middle of a sign beside a door: from the edge of the door, and above the floor [m] (common practice: 1.5 to 1.7 m). */
const signBeside = 0.3;
const signHeight = 1.6;
/** Stop button above the floor [m] (common practice). */
const stopHeight = 1.1;
const sensorHeight = 1.1;

export interface ComposedDevice {
  readonly device: DesignDevice;
  readonly draft: PartDraft;
}

interface Wish {
  readonly id: string;
  readonly kind: DesignDevice['kind'];
  readonly at: Vec3;
  readonly on: string;
  readonly item: Outcome<Sign | Sensor | InterlockPart>;
  readonly group: PartGroup;
  readonly role: PartRole;
  readonly placed: Placed;
}

const named = <T extends Item>(
  catalogue: Catalogue,
  given: string | undefined,
  kind: Item['kind'],
  fits: (item: T) => boolean,
  what: string,
  path: readonly (string | number)[],
): Outcome<T> =>
  given === undefined
    ? chosenItem(cheapest(itemsOf<T>(catalogue, kind).filter(fits)), what, path)
    : findItem<T>(catalogue, given, [kind], path);

const sizeOf = (item: Sign | Sensor | InterlockPart): readonly [number, number, number] =>
  item.kind === 'sign' ? [item.size[0], 0.02, item.size[1]] : item.box;

/** Signs beside doors, stop buttons, contacts and sensors, each as asked; where no item is named, the cheapest of its kind. */
export function composeDevices(
  brief: CompleteBrief,
  room: DesignRoom,
  catalogue: Catalogue,
  placeOf: (id: string) => Vec2 | undefined,
): Outcome<readonly ComposedDevice[]> {
  const { layout } = brief;
  const wishes: Wish[] = [
    ...layout.signs.map((s, i): Wish => {
      const door = room.doors.find((d) => d.id === s.door)!;
      const along = unit2(sub2(door.to, door.from));
      const at = add2(add2(door.to, scale2(along, signBeside)), scale2(door.inward, -0.05));
      const item = named<Sign>(
        catalogue,
        s.item,
        'sign',
        (x) => x.lit === (s.lit ?? false),
        `${s.lit ? 'lit' : 'unlit'} sign`,
        ['layout', 'signs', i, 'item'],
      );
      return {
        id: s.id,
        kind: 'sign',
        at: at3(at, s.height ?? signHeight),
        on: s.door,
        item,
        group: 'signs',
        role: 'sign',
        placed: { rule: 'compose.sign', because: 'A sign hangs outside, beside the door, at eye height.' },
      };
    }),
    ...layout.stops.map(
      (s, i): Wish => ({
        id: s.id,
        kind: 'stop',
        at: at3(s.at, s.height ?? stopHeight),
        on: 'room',
        item: named<InterlockPart>(
          catalogue,
          s.item,
          'interlock part',
          (x) => x.role === 'stop button',
          'stop button',
          ['layout', 'stops', i, 'item'],
        ),
        group: 'interlocks',
        role: 'interlock',
        placed: { rule: 'compose.stop', because: 'A stop button stands where the brief puts it, within reach.' },
      }),
    ),
    ...layout.interlocks.map((s, i): Wish => {
      const onDoor = room.doors.some((d) => d.id === s.on);
      return {
        id: s.id,
        kind: 'interlock',
        at: at3(placeOf(s.on) ?? [0, 0], 2),
        on: s.on,
        item: named<InterlockPart>(
          catalogue,
          s.item,
          'interlock part',
          (x) => x.role === (onDoor ? 'door contact' : 'curtain contact'),
          onDoor ? 'door contact' : 'curtain contact',
          ['layout', 'interlocks', i, 'item'],
        ),
        group: 'interlocks',
        role: 'interlock',
        placed: { rule: 'compose.interlock', because: 'A contact watches the entry that the brief names.' },
      };
    }),
    ...layout.sensors.map(
      (s, i): Wish => ({
        id: s.id,
        kind: 'sensor',
        at: at3(s.at, s.height ?? sensorHeight),
        on: s.where,
        item: named<Sensor>(catalogue, s.item, 'sensor', (x) => x.measures === 'particles', 'particle sensor', [
          'layout',
          'sensors',
          i,
          'item',
        ]),
        group: 'sensors',
        role: 'sensor',
        placed: { rule: 'compose.sensor', because: 'A sensor stands where the brief puts it.' },
      }),
    ),
  ];
  const problems: Problem[] = wishes.flatMap((w) => (w.item.ok ? [] : [...w.item.problems]));
  if (problems.length > 0) return refuse(problems);
  return ok(wishes.flatMap((w) => (w.item.ok ? [composed(w, w.item.value)] : [])));
}

function composed(wish: Wish, item: Sign | Sensor | InterlockPart): ComposedDevice {
  const [length, width, height] = sizeOf(item);
  return {
    device: { id: wish.id, kind: wish.kind, at: wish.at, item: item.id, on: wish.on, text: item.name },
    draft: {
      item: item.id,
      group: wish.group,
      role: wish.role,
      of: wish.id,
      shape: { shape: 'box', centre: wish.at, length, width, height, turn: 0 },
      count: 1,
      mass: item.mass,
      placed: wish.placed,
    },
  };
}
