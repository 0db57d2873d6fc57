import { lengthText } from '@cloche/engine';
import type { Design, ThingChange, Vec2 } from '../engine/contract.js';
import { boxOf } from '../plan/card-corner.js';
import { boxOfSpot, type Label, type PlacedLabel, placeLabels, type Segment, type Spot } from '../plan/place-labels.js';
import { extentOf } from '../plan/places.js';
import { planLines, type ToSheet, widthOf } from '../plan/plan-labels.js';
import type { Box, Size } from '../plan/view.js';
import type { OverlayArrow } from './overlay.js';

const height = 15;
/** Arrows are drawn at least this long, so that a move of millimetres can be seen, pixels. */
const leastLength = 30;

/** An arrow on the sheet, in pixels: its head stands where the thing stands now. */
export interface DrawnArrow {
  readonly id: string;
  readonly from: Vec2;
  readonly to: Vec2;
  readonly text: string;
}

export function drawnArrow({ id, from, to }: OverlayArrow, sheet: ToSheet): DrawnArrow {
  const [a, b] = [sheet(from), sheet(to)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const [dx, dy] = [(b[0] - a[0]) / (length || 1), (b[1] - a[1]) / (length || 1)];
  const drawn = Math.max(length, leastLength);
  return {
    id,
    from: [b[0] - dx * drawn, b[1] - dy * drawn],
    to: b,
    text: lengthText(Math.hypot(to[0] - from[0], to[1] - from[1])),
  };
}

interface Written {
  readonly before: Design;
  readonly after: Design;
  readonly changes: readonly ThingChange[];
  readonly arrows: readonly DrawnArrow[];
  readonly sheet: ToSheet;
  readonly size: Size;
}

/** Lengths of moves, names of what came, went or changed, and the tables, so that one knows where one is. */
export function overlayLabels({ before, after, changes, arrows, sheet, size }: Written): readonly PlacedLabel[] {
  const lines = [...planLines(after, sheet), ...arrows.map(({ from, to }): Segment => [from, to])];
  const named = changes
    .filter((c) => c.along === null && c.kind !== 'room')
    .map((c) => ({ id: c.id, points: extentOf(c.change === 'removed' ? before : after, c.id) }));
  const known = new Set(named.map((n) => n.id));
  const tables = after.tables
    .filter((t) => !known.has(t.id) && !changes.some((c) => c.id === t.id))
    .map((t) => ({ id: t.id, points: t.outline as readonly Vec2[] }));
  const labels = [
    ...arrows.map(arrowLabel),
    ...[...named, ...tables].flatMap(({ id, points }) => (points.length === 0 ? [] : nameLabel(id, points.map(sheet)))),
  ];
  return placeLabels(
    labels.map((label) => within(label, size)),
    [buttonsAt(size)],
    lines,
  );
}

/** The buttons in the lower right corner of the drawing. */
const buttonsAt = ({ width, height: most }: Size): Box => ({ min: [width - 170, most - 44], max: [width, most] });

/** A label without the spots that the edge of the drawing would cut. */
function within(label: Label, { width, height: most }: Size): Label {
  const whole = label.spots.filter((spot) => {
    const { min, max } = boxOfSpot(spot, label.width, label.height);
    return min[0] >= 0 && min[1] >= 0 && max[0] <= width && max[1] <= most;
  });
  return { ...label, spots: whole };
}

function arrowLabel({ id, from, to, text }: DrawnArrow): Label {
  const [x, y] = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  const w = widthOf(text) / 2 + 7;
  const spots: Spot[] = [
    { at: [x + w, y] },
    { at: [x - w, y] },
    { at: [x, y - 13] },
    { at: [x, y + 13] },
    { at: [from[0] + w, from[1] + 10] },
    { at: [from[0] - w, from[1] - 10] },
  ];
  return { key: `arrow ${id}`, text, width: widthOf(text), height, spots, kept: true };
}

function nameLabel(id: string, points: readonly Vec2[]): Label {
  const { min, max } = boxOf(points);
  const w = widthOf(id) / 2;
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const spots: Spot[] = [
    { at: [min[0] + w, min[1] - 10] },
    { at: [max[0] - w, max[1] + 10] },
    { at: [max[0] + w + 6, y] },
    { at: [min[0] - w - 6, y] },
    { at: [min[0] - w - 6, min[1] + 10] },
    { at: [min[0] - w - 6, max[1] - 10] },
    { at: [max[0] + w + 6, min[1] + 10] },
    { at: [max[0] + w + 6, max[1] - 10] },
    { at: [x, max[1] + 10] },
    { at: [x, min[1] - 10] },
    { at: [x, y] },
    { at: [x, max[1] + 26] },
    { at: [x, min[1] - 26] },
  ];
  return { key: id, text: id, width: widthOf(id), height, spots };
}
