import { distance2, segmentsMeet, selfCrossings, type Vec2 } from '@cloche/engine';
import { valueAt } from '../../brief/path.js';
import { layoutLists } from '../../brief/templates.js';
import { drawingTexts } from '../../texts/drawing.js';
import { insideAt } from '../inside.js';
import { lengthText, writtenLength } from '../length-text.js';
import { polarPlace } from '../polar.js';
import type { Scene } from '../scene.js';
import type { Next, Tool } from '../tool.js';
import { byCorners, type Corners, lastOf, meets, withCorner } from './corners.js';

const { run: say, closeBy } = drawingTexts.tools;
const { list, adds } = layoutLists.runs;
const [bay, partition] = adds;

/** A line of curtain track by its corners: closed by the first it is a bay, ended at the last a partition. */
export const runTool: Tool<Corners> = {
  id: 'put-run',
  title: say.title,
  group: 'layout',
  keys: 'C',
  once: true,
  square: true,
  ...byCorners,
  hint: ({ corners }) => (corners.length === 0 ? say.first : corners.length < 3 ? say.next : closeBy(say.next)),
  set: ({ corners }) => corners,
  put: (state, aim, scene) => {
    const at = polarPlace(lastOf(state), aim);
    const met = meets(state, at, aim.near);
    if (met === 'first') return closed(state, scene);
    if (met === 'last') return state.corners.length < 2 ? { kind: 'no', why: say.again } : open(state, scene);
    if (met === 'other') return { kind: 'no', why: say.again };
    const inside = insideAt(scene.design.room.outline, at, (p) => [p], scene.units);
    return inside ? { kind: 'on', state: withCorner(state, inside) } : { kind: 'no', why: say.outside };
  },
};

const written = (corners: readonly Vec2[], { units }: Scene) =>
  corners.map((corner) => corner.map((value) => writtenLength(value, units)));

/** Free width of the way into a bay [m]. */
const openingWidth = 0.9;

/** The middle of the longest leg takes the way in, where it is long enough. */
function openingOf(corners: readonly Vec2[]): { readonly at: number; readonly width: number } | null {
  const lengths = corners.map((from, i) => distance2(from, corners[(i + 1) % corners.length]!));
  const longest = lengths.indexOf(Math.max(...lengths));
  if (lengths[longest]! < openingWidth + 0.2) return null;
  const before = lengths.slice(0, longest).reduce((sum, length) => sum + length, 0);
  return { at: before + lengths[longest]! / 2, width: openingWidth };
}

function closed({ corners }: Corners, scene: Scene): Next<Corners> {
  if (selfCrossings(corners).length > 0) return { kind: 'no', why: say.crosses };
  const opening = openingOf(corners);
  const text = (value: number) => writtenLength(value, scene.units);
  const { openings: _, ...template } = bay!.entry(scene) as { readonly openings?: unknown };
  const entry = {
    ...template,
    path: written(corners, scene),
    ...(opening ? { openings: [{ at: text(opening.at), width: text(opening.width) }] } : {}),
  };
  const id = String(valueAt(entry, ['id']));
  const way = opening ? say.wayIn(lengthText(opening.width, scene.units)) : say.noWayIn;
  return { kind: 'done', edit: { kind: 'entry', list, entry }, says: say.closed(id, corners.length), told: [way] };
}

function open({ corners }: Corners, scene: Scene): Next<Corners> {
  const legs = corners.slice(1).map((to, i) => [corners[i]!, to] as const);
  const crossed = legs.some(([a, b], i) => legs.slice(i + 2).some(([c, d]) => segmentsMeet(a, b, c, d)));
  if (crossed) return { kind: 'no', why: say.crosses };
  const entry = { ...(partition!.entry(scene) as object), path: written(corners, scene) };
  const length = legs.reduce((sum, [a, b]) => sum + distance2(a, b), 0);
  const says = say.open(String(valueAt(entry, ['id'])), lengthText(length, scene.units));
  return { kind: 'done', edit: { kind: 'entry', list, entry }, says };
}
