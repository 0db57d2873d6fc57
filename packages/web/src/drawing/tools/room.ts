import { bounds, selfCrossings, signedArea, type Vec2 } from '@cloche/engine';
import { drawingTexts } from '../../texts/drawing.js';
import type { Edit } from '../edit.js';
import { lengthText, writtenLength } from '../length-text.js';
import { polarPlace } from '../polar.js';
import { rewalled } from '../rewall.js';
import type { Scene } from '../scene.js';
import type { Next, Tool } from '../tool.js';
import { byCorners, type Corners, lastOf, meets, shownCorners, withCorner } from './corners.js';

const { room: say, closeBy } = drawingTexts.tools;

/** The edit that gives the room another outline, with what hangs on its walls. */
export function outlineEdit(
  outline: readonly Vec2[],
  { data, units }: Scene,
): { readonly edit: Edit; readonly told: readonly string[] } {
  const { put, told } = rewalled(data, outline);
  const written = outline.map((corner) => corner.map((value) => writtenLength(value, units)));
  return { edit: { kind: 'values', put: [[['room', 'outline'], written], ...put] }, told };
}

/** The room by its corners, clicked or typed, closed by the first. */
export const roomTool: Tool<Corners> = {
  id: 'draw-room',
  title: say.title,
  group: 'survey',
  keys: 'O',
  once: true,
  ...byCorners,
  hint: ({ corners }) => (corners.length === 0 ? say.first : corners.length < 3 ? say.next : closeBy(say.next)),
  set: ({ corners }) => corners,
  show: (state, aim, { units }) => {
    const shown = shownCorners(state, aim, units);
    return { ...shown, dimensions: [...legDimensions(state.corners, units), ...shown.dimensions] };
  },
  put: (state, aim, scene) => {
    const at = polarPlace(lastOf(state), aim);
    const met = meets(state, at, aim.near);
    if (met === 'first') return closed(state, scene);
    if (met === 'last' || met === 'other') return { kind: 'no', why: say.again };
    return { kind: 'on', state: withCorner(state, at) };
  },
};

function closed({ corners }: Corners, scene: Scene): Next<Corners> {
  const [crossed] = selfCrossings(corners);
  if (crossed) return { kind: 'no', why: say.crosses(crossed[0] + 1, crossed[1] + 1) };
  if (Math.abs(signedArea(corners)) < 1e-6) return { kind: 'no', why: say.flat };
  const { edit, told } = outlineEdit(corners, scene);
  const { min, max } = bounds(corners);
  const [across, deep] = [max[0] - min[0], max[1] - min[1]].map((size) => lengthText(size, scene.units));
  return { kind: 'done', edit, says: say.done(corners.length, across!, deep!), told };
}

/** Lengths of the walls that are set. */
const legDimensions = (corners: readonly Vec2[], units: Scene['units']) =>
  corners.slice(1).map((to, i) => {
    const from = corners[i]!;
    return { from, to, text: lengthText(Math.hypot(to[0] - from[0], to[1] - from[1]), units) };
  });
