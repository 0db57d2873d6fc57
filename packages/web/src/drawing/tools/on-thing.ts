import { contains, distanceToSegment, edges, type Vec2 } from '@cloche/engine';
import { valueAt } from '../../brief/path.js';
import { type Addable, canAdd, layoutLists } from '../../brief/templates.js';
import type { Design } from '../../engine/contract.js';
import { drawingTexts } from '../../texts/drawing.js';
import type { Scene } from '../scene.js';
import type { Tool } from '../tool.js';

const { onThing: say } = drawingTexts.tools;

interface Target {
  readonly id: string;
  /** An outline, or the two ends of an opening. */
  readonly points: readonly Vec2[];
}

interface OnThing {
  readonly id: string;
  readonly what: Addable;
  readonly adding?: number;
  readonly keys?: string;
  readonly targets: (design: Design) => readonly Target[];
  /** What may be pointed at, in words: `a table`. */
  readonly wanted: string;
  readonly field: string;
  readonly value: (id: string) => unknown;
}

/** How far beside a thing still points at it [m]. */
const beside = 0.4;

/** The thing under the pointer, else the nearest one close by. */
function targetAt(targets: readonly Target[], at: Vec2): Target | null {
  const inside = targets.filter(({ points }) => points.length > 2 && contains(points, at)).at(-1);
  if (inside) return inside;
  let best: { readonly target: Target; readonly distance: number } | null = null;
  for (const target of targets) {
    const sides =
      target.points.length > 2 ? edges(target.points) : [{ from: target.points[0]!, to: target.points[1]! }];
    const distance = Math.min(...sides.map(({ from, to }) => distanceToSegment(at, from, to)));
    if (distance <= beside && (!best || distance < best.distance)) best = { target, distance };
  }
  return best?.target ?? null;
}

/** Something that belongs to a thing: it is put there by pointing at the thing. */
function onThingTool({ id, what, adding = 0, keys, targets, wanted, field, value }: OnThing): Tool<null> {
  const way = what.adds[adding]!;
  return {
    id,
    title: way.one,
    group: 'layout',
    ...(keys ? { keys } : {}),
    once: true,
    pointsAtThings: true,
    missing: ({ data }: Scene) => (canAdd(data, what) ? null : (what.needs?.[1] ?? null)),
    start: null,
    hint: () => say.hint(way.one, wanted),
    fields: () => [],
    place: (_, { at }) => at,
    show: (_, { at }, { design }) => {
      const target = targetAt(targets(design), at);
      return target ? { target: target.points } : {};
    },
    put: (_, { at }, scene) => {
      const target = targetAt(targets(scene.design), at);
      if (!target) return { kind: 'no', why: say.nothing(wanted) };
      const entry = { ...(way.entry(scene) as object), [field]: value(target.id) };
      const says = say.done(String(valueAt(entry, ['id'])), target.id);
      return { kind: 'done', edit: { kind: 'entry', list: what.list, entry }, says };
    },
  };
}

const tables = ({ tables: all }: Design) => all.map(({ id, outline }) => ({ id, points: outline }));
const opening = ({ id, from, to }: { readonly id: string; readonly from: Vec2; readonly to: Vec2 }) => ({
  id,
  points: [from, to],
});
const doors = ({ room }: Design) => room.doors.map(opening);
const openings = ({ room }: Design) => [...room.doors, ...room.windows].map(opening);
const watched = (design: Design) => [
  ...doors(design),
  ...design.enclosures.map(({ id, outline }) => ({ id, points: outline })),
  ...design.runs.filter(({ closed }) => closed).map(({ id, corners }) => ({ id, points: corners })),
];

const { enclosures, covers, signs, interlocks } = layoutLists;
const list = (id: string) => [id];
const one = (id: string) => id;

export const enclosureTools = [
  onThingTool({
    id: 'put-close-enclosure',
    what: enclosures,
    keys: 'E',
    targets: tables,
    wanted: say.table,
    field: 'around',
    value: list,
  }),
  onThingTool({
    id: 'put-walk-in-enclosure',
    what: enclosures,
    adding: 1,
    targets: tables,
    wanted: say.table,
    field: 'around',
    value: list,
  }),
] as const;

export const onThingTools = [
  onThingTool({ id: 'put-cover', what: covers, targets: openings, wanted: say.opening, field: 'over', value: one }),
  onThingTool({ id: 'put-sign', what: signs, targets: doors, wanted: say.door, field: 'door', value: one }),
  onThingTool({ id: 'put-contact', what: interlocks, targets: watched, wanted: say.watched, field: 'on', value: one }),
] as const;
