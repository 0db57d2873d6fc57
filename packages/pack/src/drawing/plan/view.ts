import { type Bounds, bounds, type Design, leafTips, type Vec2 } from '@cloche/engine';
import { drawingSpace, type PaperName } from '../paper.js';
import { reductionScales } from '../scale.js';
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

/** How far the leaves of doors that swing out reach beyond the outline on each side [m]. */
interface Reach {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Between the reach of a leaf and the edge of the drawing [mm on paper]. */
const besideLeaf = 4;

function leafReach(design: Design, room: Bounds): Reach {
  const all = bounds([room.min, room.max, ...leafTips(design.room)]);
  return {
    left: room.min[0] - all.min[0],
    right: all.max[0] - room.max[0],
    top: all.max[1] - room.max[1],
    bottom: room.min[1] - all.min[1],
  };
}

/** Room round the outline at a scale: for dimensions, and for leaves that reach farther than those [mm on paper]. */
function around(reach: Reach, margin: Margin, scale: number) {
  const room = (least: number, metres: number) =>
    Math.max(least, metres > 0 ? (metres * 1000) / scale + besideLeaf : 0);
  return {
    // The plan stands in the middle of the width.
    side: Math.max(room(margin.side, reach.left), room(margin.side, reach.right)),
    top: room(margin.top, reach.top),
    bottom: room(margin.bottom, reach.bottom),
  };
}

function fitsOn(paper: PaperName, room: Bounds, reach: Reach, margin: Margin, scale: number): boolean {
  const space = drawingSpace(paper);
  const free = around(reach, margin, scale);
  const [width, height] = [0, 1].map((k) => ((room.max[k]! - room.min[k]!) * 1000) / scale) as [number, number];
  return width + 2 * free.side <= space.width && height + free.top + free.bottom <= space.height;
}

/** The largest scale of both ways to lay the sheet out. */
function onPaper(paper: PaperName, scales: readonly number[], room: Bounds, reach: Reach) {
  const ways = [margins.narrow, margins.wide];
  for (const scale of scales) {
    const margin = ways.find((way) => fitsOn(paper, room, reach, way, scale));
    if (margin) return { paper, scale, margin };
  }
  return { paper, scale: scales.at(-1)!, margin: margins.wide };
}

/**
 * Between 1:20 and 1:50, on an A2 sheet only, where it saves a plan from the crowd at 1:50; scale rules have it.
 * Source: ISO 5455 allows intermediate scales where the recommended ones do not serve (from memory).
 */
const intermediate = 25;
const withIntermediate = [...reductionScales, intermediate].sort((a, b) => a - b);

/**
 * A3 while it holds the room at 1:20 or larger, else A2 when that gives a larger scale: at 1:50 the piece marks of an enclosure and the
 * beams on its table crowd each other. Leaves that swing out stay clear of the strip below and of the frame.
 */
export function planView(design: Design): PlanView {
  const room = bounds(design.room.outline);
  const reach = leafReach(design, room);
  const a3 = onPaper('A3', reductionScales, room, reach);
  const a2 = onPaper('A2', withIntermediate, room, reach);
  const { paper, scale, margin } = a3.scale <= 20 || a2.scale >= a3.scale ? a3 : a2;
  const free = around(reach, margin, scale);
  const space = drawingSpace(paper);
  const mm = (metres: number) => (metres * 1000) / scale;
  const width = mm(room.max[0] - room.min[0]);
  const height = mm(room.max[1] - room.min[1]);
  const left = space.left + (space.width - width) / 2;
  const slack = space.height - free.top - free.bottom - height;
  const bottom = space.bottom - free.bottom - slack / 2;
  const to = (p: Vec2): PaperPoint => [left + mm(p[0] - room.min[0]), bottom - mm(p[1] - room.min[1])];
  return { paper, scale, room, to, mm };
}
