import { distance2 } from '@cloche/engine';
import type { Design, DesignDoor, Ring, ThingChange, Vec2 } from '../engine/contract.js';
import { openingRing } from '../plan/opening-path.js';
import { arcPath, linePath, rectangleRing, ringPath } from '../plan/path-text.js';
import { extentOf, middleOf } from '../plan/places.js';

/** How one outline of the overlay is drawn. */
export type OverlayState = 'same' | 'was' | 'removed' | 'now' | 'added';

export interface OverlayShape {
  readonly id: string;
  readonly state: OverlayState;
  /** Path data in metres. */
  readonly d: string;
}

/** From where a thing stood to where it stands. */
export interface OverlayArrow {
  readonly id: string;
  readonly from: Vec2;
  readonly to: Vec2;
}

export interface Overlay {
  readonly shapes: readonly OverlayShape[];
  readonly arrows: readonly OverlayArrow[];
}

/** Moves shorter than this in the plan have no arrow: what went only up or down [m]. */
const leastArrow = 1e-6;

/** The outlines of both states in one drawing, what is unchanged once; and arrows of what was moved by itself. */
export function overlayOf(before: Design, after: Design, changes: readonly ThingChange[]): Overlay {
  const changed = new Map(changes.map((c) => [c.id, c]));
  const shape = (state: OverlayState, design: Design, id: string): OverlayShape[] => {
    const d = outlinePath(design, id);
    return d === '' ? [] : [{ id, state, d }];
  };
  const still = idsOf(after).flatMap((id) => (changed.has(id) ? [] : shape('same', after, id)));
  const gone = changes.flatMap((c) =>
    c.change === 'added' ? [] : shape(c.change === 'removed' ? 'removed' : 'was', before, c.id),
  );
  const here = changes.flatMap((c) =>
    c.change === 'removed' ? [] : shape(c.change === 'added' ? 'added' : 'now', after, c.id),
  );
  return { shapes: [...still, ...gone, ...here], arrows: changes.flatMap((c) => arrowOf(after, c)) };
}

/** Everything with an outline of its own, what carries before what stands on it; walls are drawn apart. */
const idsOf = ({ room, ...design }: Design): string[] =>
  [
    ...room.doors,
    ...room.windows,
    ...room.boards,
    ...room.columns,
    ...room.beams,
    ...room.obstructions,
    ...room.sprinklers,
    ...room.detectors,
    ...room.exitSigns,
    ...room.airTerminals,
    ...room.luminaires,
    ...design.equipment,
    ...design.tables.flatMap((table) => [table, ...table.equipment]),
    ...design.enclosures,
    ...design.runs,
    ...design.covers,
    ...design.lasers,
    ...design.devices,
  ].map(({ id }) => id);

/** Half of the diagonal of the sign for a thing that is only a place [m]. */
const pointReach = 0.1;

/** The outline of a thing as path data; empty for what has none. */
export function outlinePath(design: Design, id: string): string {
  const { room } = design;
  if (id === 'room') return ringPath(room.outline);
  const door = room.doors.find((d) => d.id === id);
  if (door) return openingRing(door) + doorLeaves(door);
  const opening = [...room.windows, ...room.boards].find((o) => o.id === id);
  if (opening) return openingRing(opening);
  const flat = [...room.airTerminals, ...room.luminaires].find((t) => t.id === id);
  if (flat) return ringPath(rectangleRing(flat.at, flat.size[0], flat.size[1], 0));
  const enclosure = design.enclosures.find((e) => e.id === id);
  if (enclosure) return ringPath(enclosure.outline) + ringPath(enclosure.inside);
  const run = design.runs.find((r) => r.id === id);
  if (run) return run.closed ? ringPath(run.line) : linePath(run.line);
  const cover = design.covers.find((c) => c.id === id);
  const points = extentOf(design, cover?.over ?? id);
  if (points.length === 1)
    return ringPath(rectangleRing(points[0]!, pointReach * Math.SQRT2, pointReach * Math.SQRT2, Math.PI / 4));
  return points.length === 2 || design.lasers.some((l) => l.id === id) ? linePath(points) : closedPath(points);
}

const closedPath = (ring: Ring): string => (ring.length === 0 ? '' : ringPath(ring));

const doorLeaves = ({ leaves }: DesignDoor): string =>
  leaves
    .map(({ hinge, leaf, closed, open }) => {
      const end: Vec2 = [hinge[0] + leaf * Math.cos(open), hinge[1] + leaf * Math.sin(open)];
      return linePath([hinge, end]) + arcPath(hinge, leaf, closed, open);
    })
    .join('');

/** What only goes along with its carrier has no arrow: the carrier's tells it. */
function arrowOf(after: Design, { id, change, moved, along }: ThingChange): OverlayArrow[] {
  if (change !== 'changed' || !moved || along !== null) return [];
  const to = middleOf(extentOf(after, id));
  if (!to) return [];
  const from: Vec2 = [to[0] - moved[0], to[1] - moved[1]];
  return distance2(from, to) <= leastArrow ? [] : [{ id, from, to }];
}
