import { bounds, type Design, type Ring } from '@cloche/engine';
import { dimensionChain, distinctStops } from '../dimension.js';
import type { Mark } from '../types.js';
import type { PlanView } from './view.js';

/** Turned outlines have no edge along the axes; only the middle of such a thing can be dimensioned in a chain. */
function stopsOf(outline: Ring, axis: 0 | 1): number[] {
  const box = bounds(outline);
  const square = outline.every(
    (p) => Math.abs(p[axis] - box.min[axis]) < 1e-4 || Math.abs(p[axis] - box.max[axis]) < 1e-4,
  );
  return square ? [box.min[axis], box.max[axis]] : [(box.min[axis] + box.max[axis]) / 2];
}

/**
 * Chains from wall to wall: above and right the tables, below and left what is built (enclosures, curtain runs), with the whole
 * room outside them.
 */
export function planDimensions(design: Design, view: PlanView): Mark[] {
  const { min, max } = view.room;
  const [left, bottom] = view.to(min);
  const [right, top] = view.to(max);
  const tables = design.tables.map((t) => t.outline);
  const built = [...design.enclosures.map((e) => e.outline), ...design.runs.map((r) => r.corners as Ring)];
  const stops = (outlines: readonly Ring[], axis: 0 | 1) =>
    distinctStops([min[axis], max[axis], ...outlines.flatMap((o) => stopsOf(o, axis))]);
  const x = (stop: number) => view.to([stop, 0])[0];
  const y = (stop: number) => view.to([0, stop])[1];
  const marks: Mark[] = [];
  if (tables.length > 0) {
    marks.push(
      ...dimensionChain({ stops: stops(tables, 0), along: x, across: top - 15, from: top - 9, upright: false }),
    );
    marks.push(
      ...dimensionChain({ stops: stops(tables, 1), along: y, across: right + 19, from: right + 10, upright: true }),
    );
  }
  if (built.length > 0) {
    marks.push(
      ...dimensionChain({ stops: stops(built, 0), along: x, across: bottom + 16, from: bottom + 9, upright: false }),
    );
    marks.push(
      ...dimensionChain({ stops: stops(built, 1), along: y, across: left - 13, from: left - 9, upright: true }),
    );
  }
  marks.push(
    ...dimensionChain({ stops: [min[0], max[0]], along: x, across: bottom + 25, from: bottom + 18, upright: false }),
  );
  marks.push(
    ...dimensionChain({ stops: [min[1], max[1]], along: y, across: left - 23, from: left - 15, upright: true }),
  );
  return marks;
}
