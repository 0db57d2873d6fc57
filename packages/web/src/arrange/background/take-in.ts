import { bounds, type Vec2 } from '@cloche/engine';
import { withObject } from '../../brief/document.js';
import { edited } from '../../drawing/edit.js';
import { rewalled } from '../../drawing/rewall.js';
import { usePlanView } from '../../plan/view-store.js';
import { editText, endEdit, useWorkbench } from '../../state/store.js';
import { arrangeTexts } from '../../texts/arrange.js';
import { closely, lengthTo } from '../exact.js';
import { tellAll } from '../state.js';
import { outlineOf } from '../walls.js';
import { keepFile } from './keep.js';
import { type Content, contentOf, setContent } from './loaded.js';
import { outlineFrom } from './outline-from.js';
import { placementIn } from './placement.js';

const say = arrangeTexts.background;
const metres = (value: number): string => lengthTo('m', value, closely);

/** A new background covers the room; a drawing that tells its unit lies in true size. */
function firstPlace(
  content: Content,
  outline: readonly Vec2[],
  middle: Vec2,
): { readonly at: Vec2; readonly width: number } {
  const room = outline.length > 2 ? bounds(outline) : { min: middle, max: [middle[0] + 5, middle[1] + 5] as Vec2 };
  const [w, h] = [room.max[0] - room.min[0], room.max[1] - room.min[1]];
  if (content.kind === 'lines' && content.drawing.metres !== null) {
    const width = (content.drawing.max[0] - content.drawing.min[0]) * content.drawing.metres;
    return { at: room.min, width };
  }
  const width = Math.max(w, h / Math.max(1e-6, content.aspect));
  return { at: [room.min[0] + (w - width) / 2, room.min[1] + (h - width * content.aspect) / 2], width };
}

/** Keeps a file and lays it under the drawing: one step of undo. */
export async function takeInBackground(file: File): Promise<void> {
  const content = await contentOf(file);
  if (typeof content === 'string') {
    tellAll([content]);
    return;
  }
  const name = file.name.slice(0, 200) || say.unnamed;
  const { project } = useWorkbench.getState();
  if (project === null) return;
  let hash: string;
  try {
    hash = await keepFile(project, file, name);
  } catch (error) {
    tellAll([say.notKept, error instanceof Error ? error.message : String(error)]);
    return;
  }
  const { text, data } = useWorkbench.getState();
  const { at, width } = firstPlace(content, outlineOf(data), usePlanView.getState().view?.middle ?? [0, 0]);
  setContent(hash, content);
  endEdit();
  editText(
    withObject(text, ['background'], {
      file: hash,
      name,
      at: at.map(metres),
      width: metres(width),
      turn: '0 deg',
      shown: true,
    }),
    null,
  );
  const left = content.kind === 'lines' ? Object.values(content.drawing.leftOut).reduce((a, b) => a + b, 0) : 0;
  tellAll([say.loaded, ...(left > 0 ? [say.leftOut(left)] : [])]);
}

/** Takes a closed line of the drawing as the outline of the room, its south-west corner as the origin. */
export function takeOutline(closed: readonly Vec2[], drawingMin: Vec2, drawingWidth: number): void {
  const { text, data } = useWorkbench.getState();
  const placement = placementIn(data);
  if (!placement) return;
  const made = outlineFrom(closed, placement, drawingMin, drawingWidth);
  if (typeof made === 'string') {
    tellAll([made]);
    return;
  }
  const { put, told } = rewalled(data, made.outline);
  const outline = made.outline.map((corner) => corner.map(metres));
  const at = made.at.map(metres);
  endEdit();
  editText(
    edited(text, { kind: 'values', put: [[['room', 'outline'], outline], [['background', 'at'], at], ...put] }),
    null,
  );
  tellAll([say.outlineTaken(made.outline.length), ...told]);
}
