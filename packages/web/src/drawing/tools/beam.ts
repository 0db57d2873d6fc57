import { distance2 } from '@cloche/engine';
import { valueAt } from '../../brief/path.js';
import { surveyLists } from '../../brief/templates.js';
import { drawingTexts } from '../../texts/drawing.js';
import { lengthText, writtenLength } from '../length-text.js';
import { polarPlace } from '../polar.js';
import type { Tool } from '../tool.js';
import { byCorners, type Corners, lastOf, withCorner } from './corners.js';

const { beam: say } = drawingTexts.tools;
const { list, adds } = surveyLists.beams;

/** A beam or duct under the ceiling, by the two ends of its middle line. */
export const beamTool: Tool<Corners> = {
  id: 'put-beam',
  title: adds[0]!.one,
  group: 'survey',
  ...byCorners,
  hint: ({ corners }) => (corners.length === 0 ? say.first : say.next),
  put: (state, aim, scene) => {
    const [from, to] = [lastOf(state), polarPlace(lastOf(state), aim)];
    if (!from) return { kind: 'on', state: withCorner(state, to) };
    if (distance2(from, to) < 1e-3) return { kind: 'no', why: say.again };
    const [a, b] = [from, to].map((end) => end.map((value) => writtenLength(value, scene.units)));
    const entry = { ...(adds[0]!.entry(scene) as object), from: a, to: b };
    const says = say.done(String(valueAt(entry, ['id'])), lengthText(distance2(from, to), scene.units));
    return { kind: 'done', edit: { kind: 'entry', list, entry }, says };
  },
};
