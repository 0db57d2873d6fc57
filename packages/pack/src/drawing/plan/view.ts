import { type Bounds, bounds, type Design, type Vec2 } from '@cloche/engine';
import { drawingSpace, type PaperName } from '../paper.js';
import { fittingScale } from '../scale.js';
import type { PaperPoint } from '../types.js';
import { scaleBarRoom } from './notes.js';

/** How the room lies on the paper. */
export interface PlanView {
  readonly paper: PaperName;
  /** Denominator of the scale. */
  readonly scale: number;
  readonly room: Bounds;
  /** Room metres to paper millimetres. */
  readonly to: (p: Vec2) => PaperPoint;
  /** A length in metres as millimetres on paper. */
  readonly mm: (metres: number) => number;
}

/**
 * Room kept free around the outline for the wall, two chains of dimensions and their text [mm on paper]. Stamp and scale bar stand beside
 * a narrow plan, above and below a wide one.
 */
const margins = {
  narrow: { side: scaleBarRoom, top: 23, bottom: 28 },
  wide: { side: 34, top: 30, bottom: 36 },
} as const;
type Margin = (typeof margins)[keyof typeof margins];

function scaleWithin(paper: PaperName, room: Bounds, margin: Margin): number {
  const space = drawingSpace(paper);
  const width = (room.max[0] - room.min[0]) * 1000;
  const height = (room.max[1] - room.min[1]) * 1000;
  return fittingScale(width, height, space.width - 2 * margin.side, space.height - margin.top - margin.bottom);
}

/** The larger scale of both ways to lay the sheet out. */
function onPaper(paper: PaperName, room: Bounds) {
  const [narrow, wide] = [scaleWithin(paper, room, margins.narrow), scaleWithin(paper, room, margins.wide)];
  return narrow <= wide ? { scale: narrow, margin: margins.narrow } : { scale: wide, margin: margins.wide };
}

/**
 * A3 while it holds the room at 1:20 or larger, else A2 when that gives a larger scale: at 1:50 the piece marks of an enclosure and the
 * beams on its table crowd each other.
 */
export function planView(design: Design): PlanView {
  const room = bounds(design.room.outline);
  const a3 = onPaper('A3', room);
  const a2 = onPaper('A2', room);
  const paper: PaperName = a3.scale <= 20 || a2.scale >= a3.scale ? 'A3' : 'A2';
  const { scale, margin } = paper === 'A3' ? a3 : a2;
  const space = drawingSpace(paper);
  const mm = (metres: number) => (metres * 1000) / scale;
  const width = mm(room.max[0] - room.min[0]);
  const height = mm(room.max[1] - room.min[1]);
  const left = space.left + (space.width - width) / 2;
  const slack = space.height - margin.top - margin.bottom - height;
  const bottom = space.bottom - margin.bottom - slack / 2;
  const to = (p: Vec2): PaperPoint => [left + mm(p[0] - room.min[0]), bottom - mm(p[1] - room.min[1])];
  return { paper, scale, room, to, mm };
}
