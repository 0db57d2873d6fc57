import type { Vec2 } from '@cloche/engine';
import { valueAt } from '../../brief/path.js';
import { needsLists } from '../../brief/templates.js';
import { drawingTexts } from '../../texts/drawing.js';
import { insideAt } from '../inside.js';
import { writtenLength } from '../length-text.js';
import { angleText, polarFields, polarPlace, polarShown } from '../polar.js';
import { onTable, type Scene, tableAt } from '../scene.js';
import type { Next, Tool } from '../tool.js';
import { type Corners, lastOf, meets, noCorners, withCorner, withoutLast } from './corners.js';

const { source: say } = drawingTexts.tools;
const { list, adds } = needsLists.lasers;

/** A source with its beam: where it stands, then corner by corner; the point of the last is clicked again when the beam ends there. */
function sourceTool(id: string, adding: number, keys?: string): Tool<Corners> {
  return {
    id,
    title: adds[adding]!.one,
    group: 'needs',
    ...(keys ? { keys } : {}),
    once: true,
    start: noCorners,
    hint: ({ corners }) => (corners.length === 0 ? say.first : corners.length === 1 ? say.second : say.next),
    from: lastOf,
    set: ({ corners }) => corners,
    fields: (state, aim) => polarFields(lastOf(state), polarPlace(lastOf(state), aim)),
    place: (state, aim) => polarPlace(lastOf(state), aim),
    show: (state, aim, scene) => {
      const to = polarPlace(lastOf(state), aim);
      const table = tableAt(scene, state.corners[0] ?? to);
      return {
        lines: [[...state.corners, to]],
        arrow: true,
        dots: state.corners,
        dimensions: polarShown(lastOf(state), to, scene.units),
        ...(table ? { target: table.outline } : {}),
      };
    },
    put: (state, aim, scene) => {
      const at = polarPlace(lastOf(state), aim);
      if (meets(state, at, aim.near) !== 'last') {
        const inside = insideAt(scene.design.room.outline, at, (p) => [p], scene.units);
        return inside ? { kind: 'on', state: withCorner(state, inside) } : { kind: 'no', why: say.outside };
      }
      return state.corners.length < 2 ? { kind: 'no', why: say.again } : done(state, adding, scene);
    },
    back: withoutLast,
  };
}

function done({ corners }: Corners, adding: number, scene: Scene): Next<Corners> {
  const table = tableAt(scene, corners[0]!);
  const local = corners.map((corner) => (table ? onTable(table, corner) : corner));
  const written = (p: Vec2) => p.map((value) => writtenLength(value, scene.units));
  const [start, first] = [local[0]!, local[1]!];
  const direction = angleText(Math.atan2(first[1] - start[1], first[0] - start[0])).replace('\u00b0', ' deg');
  const legs = local.slice(1).map((to, i) => ({
    to: written(to),
    carried: 'open',
    endsOn: i === local.length - 2 ? 'beam stop' : 'mirror',
  }));
  const { table: _, ...template } = adds[adding]!.entry(scene) as { readonly table?: string };
  const entry = { ...template, ...(table ? { table: table.id } : {}), at: written(start), direction, legs };
  const height = table ? {} : { beamHeight: '1 m' };
  const whole = { ...entry, ...height };
  const says = say.done(String(valueAt(whole, ['id'])), table?.id ?? null, legs.length);
  return { kind: 'done', edit: { kind: 'entry', list, entry: whole }, says };
}

export const sourceTools = [sourceTool('put-continuous', 0, 'B'), sourceTool('put-pulsed', 1)] as const;
