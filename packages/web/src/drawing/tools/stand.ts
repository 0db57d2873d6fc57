import { bounds, contains, type Ring, rectangle, type Vec2 } from '@cloche/engine';
import { pathOfThing } from '../../brief/find.js';
import { type Path, valueAt } from '../../brief/path.js';
import { type Addable, layoutLists, onTable as onTableList, type Site, surveyLists } from '../../brief/templates.js';
import { clearancesAbout, directions, type Side, toWall } from '../../plan/clearances.js';
import { drawingTexts } from '../../texts/drawing.js';
import { insideAt } from '../inside.js';
import { lengthText, writtenLength } from '../length-text.js';
import { placeWords } from '../place-words.js';
import { boxAt, onTable, type Scene, tableAt } from '../scene.js';
import type { Aim, Tool, ToolGroup } from '../tool.js';

const { stand: say } = drawingTexts.tools;

/** Something that stands, lies or hangs at a place of the room. */
interface Standing {
  readonly id: string;
  readonly what: Addable;
  /** Which of the ways to add. */
  readonly adding?: number;
  readonly group: ToolGroup;
  readonly keys?: string;
  /** Length east and width north [m]; nothing for a point. */
  readonly size?: Vec2;
  /** A quarter turn is written as an angle; without it the two sizes change places. */
  readonly turns?: true;
  /** Fields that hold the size, with what the template puts there. */
  readonly sized?: (size: readonly [string, string], entry: object) => object;
  /** What else depends on the place. */
  readonly placed?: (
    at: Vec2,
    scene: Scene,
  ) => { readonly list?: Path; readonly at?: Vec2; readonly quarters?: number; readonly fields?: object };
  /** It stands along what is under it: turned by this from east [rad]. */
  readonly along?: (at: Vec2, scene: Scene) => number;
  readonly once?: true;
  /** Its word, where that of the template says less. */
  readonly title?: string;
}

const sides = Object.keys(directions) as readonly Side[];
const axisOf = (side: Side): 0 | 1 => (side === 'west' || side === 'east' ? 0 : 1);

/** A place with typed distances from its outline to the walls; east and north are decided one by one. */
function placeAt(size: Vec2, { at, typed }: Aim, { design }: Scene): Vec2 {
  return sides.reduce((now: Vec2, side): Vec2 => {
    const wanted = typed[side];
    const to = wanted === undefined ? null : toWall(design.room.outline, now, directions[side]);
    if (wanted === undefined || to === null) return now;
    const k = axisOf(side);
    const by = directions[side][k]! * (to - wanted - size[k] / 2);
    return k === 0 ? [now[0] + by, now[1]] : [now[0], now[1] + by];
  }, at);
}

/** The nearer wall in each direction, or the one to which a distance was typed. */
function nearestWalls(ring: readonly Vec2[], { typed }: Aim, { design }: Scene) {
  const all = clearancesAbout(design.room.outline, ring);
  return ([0, 1] as const).flatMap((k) => {
    const along = all.filter(({ side }) => axisOf(side) === k);
    const named = along.find(({ side }) => typed[side] !== undefined);
    const nearest = along.reduce<(typeof along)[number] | undefined>(
      (best, c) => (best && best.distance <= c.distance ? best : c),
      undefined,
    );
    return named ?? nearest ?? [];
  });
}

/** Templates look for a free place of their own; the place is known here, so the search is kept to it. */
const siteAt = (at: Vec2, { data, design }: Scene): Site => ({
  data,
  design: {
    ...design,
    tables: [],
    enclosures: [],
    equipment: [],
    room: { ...design.room, outline: boxAt(at, [0.7, 0.7]), columns: [], obstructions: [] },
  },
});

/** Whether it is turned by a quarter. */
interface Quarter {
  readonly turned: boolean;
}

function standTool(thing: Standing): Tool<Quarter> {
  const { id, what, group, keys, size = [0, 0], sized, placed } = thing;
  const across: Vec2 = [size[1], size[0]];
  const sizeOf = ({ turned }: Quarter): Vec2 => (turned ? across : size);
  const adding = what.adds[thing.adding ?? 0]!;
  const { title = adding.one } = thing;
  const ringAt = (state: Quarter, at: Vec2, scene: Scene): Ring =>
    thing.size ? rectangle(at, ...sizeOf(state), thing.along?.(at, scene) ?? 0) : [at];
  const place = (state: Quarter, aim: Aim, scene: Scene) => {
    const { min, max } = bounds(ringAt(state, aim.at, scene));
    return placeAt([max[0] - min[0], max[1] - min[1]], aim, scene);
  };
  return {
    id,
    title,
    group,
    ...(keys ? { keys } : {}),
    ...(thing.once ? { once: true } : {}),
    start: { turned: false },
    hint: () => say.hint(title),
    ...(thing.size ? { outline: (state: Quarter) => boxAt([0, 0], sizeOf(state)) } : {}),
    ...(thing.size && size[0] !== size[1] ? { turned: ({ turned }: Quarter) => ({ turned: !turned }) } : {}),
    fields: (state, aim, scene) =>
      nearestWalls(ringAt(state, place(state, aim, scene), scene), aim, scene).map(({ side, distance }) => ({
        id: side,
        label: say.from(side),
        kind: 'length',
        value: distance,
      })),
    place,
    show: (state, aim, scene) => {
      const ring = ringAt(state, place(state, aim, scene), scene);
      const dimensions = nearestWalls(ring, aim, scene)
        .filter(({ distance }) => distance > 1e-3)
        .map(({ from, to, side, distance }) => ({ from, to, text: lengthText(distance, scene.units), field: side }));
      return ring.length > 1 ? { rings: [ring], dimensions } : { dots: ring, dimensions };
    },
    put: (state, aim, scene) => {
      const { outline } = scene.design.room;
      const at = insideAt(outline, place(state, aim, scene), (p) => ringAt(state, p, scene), scene.units);
      if (!at) return { kind: 'no', why: say.outside(title) };
      const own = placed?.(at, scene) ?? {};
      const text = (value: number) => writtenLength(value, scene.units);
      const quarters = (state.turned ? 1 : 0) + (own.quarters ?? 0);
      const written = thing.turns ? size : sizeOf(state);
      const template = adding.entry(siteAt(at, scene)) as object;
      const entry = {
        ...template,
        at: (own.at ?? at).map(text),
        ...sized?.([text(written[0]), text(written[1])], template),
        ...(thing.turns && quarters % 4 !== 0 ? { turn: `${(quarters % 4) * 90} deg` } : {}),
        ...own.fields,
      };
      const says = say.done(String(valueAt(entry, ['id'])), placeWords(at, [], scene.units));
      return { kind: 'done', edit: { kind: 'entry', list: own.list ?? what.list, entry }, says };
    },
  };
}

const twoSizes = (size: readonly [string, string]) => ({ size });
/** Height stays as the template has it. */
const threeSizes = (size: readonly [string, string], entry: object) => ({
  size: [...size, (valueAt(entry, ['size', 2]) as string | undefined) ?? '0.2 m'],
});

const quarter = Math.PI / 2;
/** The angle of a table to the nearest straight east or north, and how many quarters that is. */
const leaning = (turn: number) => {
  const quarters = Math.round(turn / quarter);
  return { quarters: ((quarters % 4) + 4) % 4, rest: turn - quarters * quarter };
};

/** Equipment stands on the table under it and along it, else on the floor. */
function equipmentPlace(at: Vec2, scene: Scene): ReturnType<NonNullable<Standing['placed']>> {
  const table = tableAt(scene, at);
  const path = table ? pathOfThing(scene.data, table.id) : undefined;
  if (!table || !path) return {};
  const own = onTableList(path);
  const entry = own.adds[0]!.entry(scene) as object;
  // On the table it is turned back by the quarters that the table is turned.
  const quarters = 4 - leaning(table.turn).quarters;
  return { list: own.list, at: onTable(table, at), quarters, fields: { id: valueAt(entry, ['id']) } };
}

const alongTable = (at: Vec2, scene: Scene): number => leaning(tableAt(scene, at)?.turn ?? 0).rest;

/** A sensor belongs to the enclosure or bay that it hangs in. */
function sensorPlace(at: Vec2, { design }: Scene) {
  const around = [...design.enclosures.map(({ id, inside }) => ({ id, ring: inside })), ...bays(design)];
  return { fields: { where: around.find(({ ring }) => contains(ring, at))?.id ?? 'room' } };
}

const bays = ({ runs }: Scene['design']) =>
  runs.filter(({ closed }) => closed).map(({ id, corners }) => ({ id, ring: corners }));

const { columns, obstructions, equipment, sprinklers, detectors, exitSigns, airTerminals, luminaires, tables } =
  surveyLists;

export const tableTool = standTool({
  id: 'put-table',
  what: tables,
  group: 'survey',
  keys: 'T',
  size: [2.4, 1.2],
  sized: ([length, width]) => ({ length, width }),
  turns: true,
  once: true,
});

export const surveyStandTools = [
  standTool({
    id: 'put-equipment',
    title: say.equipment,
    what: equipment,
    group: 'survey',
    keys: 'Q',
    size: [0.4, 0.3],
    sized: threeSizes,
    placed: equipmentPlace,
    along: alongTable,
    turns: true,
  }),
  standTool({ id: 'put-column', what: columns, group: 'survey', size: [0.3, 0.3], sized: twoSizes }),
  standTool({
    id: 'put-obstruction',
    what: obstructions,
    group: 'survey',
    size: [0.8, 0.5],
    sized: twoSizes,
    turns: true,
  }),
  standTool({ id: 'put-sprinkler', what: sprinklers, group: 'survey' }),
  standTool({ id: 'put-detector', what: detectors, group: 'survey' }),
  standTool({ id: 'put-exit-sign', what: exitSigns, group: 'survey' }),
  standTool({ id: 'put-supply', what: airTerminals, group: 'survey', size: [0.6, 0.6], sized: twoSizes }),
  standTool({ id: 'put-return', what: airTerminals, adding: 1, group: 'survey', size: [0.6, 0.6], sized: twoSizes }),
  standTool({ id: 'put-luminaire', what: luminaires, group: 'survey', size: [1.2, 0.3], sized: twoSizes }),
] as const;

export const layoutStandTools = [
  standTool({ id: 'put-stop', what: layoutLists.stops, group: 'layout' }),
  standTool({ id: 'put-sensor', what: layoutLists.sensors, group: 'layout', placed: sensorPlace }),
] as const;
