import { segmentsMeet, type Vec2 } from '@cloche/engine';
import type { Box } from './view.js';

/** One way to write a label: its middle, its angle, and the point that a thin line leads to when it stands away from its thing. */
export interface Spot {
  readonly at: Vec2;
  /** Degrees, clockwise on the screen. */
  readonly angle?: number;
  readonly leadsTo?: Vec2;
  /** How far down the list it counts, when not by its place in it. */
  readonly rank?: number;
  /** Written otherwise here: in two lines, or by a shorter name. */
  readonly written?: Written;
}

export interface Written {
  /** Lines one under the other. */
  readonly text: string;
  readonly width: number;
  readonly height: number;
}

export interface Label {
  readonly key: string;
  readonly text: string;
  /** Height of the box; letters in a ring have a square one. */
  readonly width: number;
  readonly height: number;
  /** The spot that is best first. */
  readonly spots: readonly Spot[];
  /** Drawn at its first spot when there is no free one: a sign that must not be lost. */
  readonly kept?: boolean;
}

export interface PlacedLabel extends Spot {
  readonly key: string;
  readonly text: string;
  readonly box: Box;
}

export type Segment = readonly [Vec2, Vec2];

/** Upright box round a rectangle that is turned about its middle. */
export function boxOfSpot({ at, angle = 0 }: Spot, width: number, height: number): Box {
  const [c, s] = [Math.abs(Math.cos((angle * Math.PI) / 180)), Math.abs(Math.sin((angle * Math.PI) / 180))];
  const [w, h] = [(width * c + height * s) / 2, (width * s + height * c) / 2];
  return { min: [at[0] - w, at[1] - h], max: [at[0] + w, at[1] + h] };
}

export const overlaps = (a: Box, b: Box): boolean =>
  [0, 1].every((k) => a.min[k]! < b.max[k]! - 1e-6 && b.min[k]! < a.max[k]! - 1e-6);

const isWithin = (inner: Box, outer: Box): boolean =>
  [0, 1].every((k) => inner.min[k]! >= outer.min[k]! && inner.max[k]! <= outer.max[k]!);

function crosses(box: Box, [a, b]: Segment): boolean {
  const { min, max } = box;
  if (Math.max(a[0], b[0]) < min[0] || Math.min(a[0], b[0]) > max[0]) return false;
  if (Math.max(a[1], b[1]) < min[1] || Math.min(a[1], b[1]) > max[1]) return false;
  const inside = (p: Vec2) => p[0] > min[0] && p[0] < max[0] && p[1] > min[1] && p[1] < max[1];
  if (inside(a) || inside(b)) return true;
  const corners: readonly Vec2[] = [min, [max[0], min[1]], max, [min[0], max[1]]];
  return corners.some((corner, i) => segmentsMeet(a, b, corner, corners[(i + 1) % 4]!));
}

/** A line through a name costs as much as this many places down the list of spots; a letter in its ring hides a line anyway. */
const crossing = 9;
/** A line that leads away is clutter of its own. */
const leading = 4;
/** From here on a label clutters more than it says: three lines crossed. The thing tells its name under the pointer. */
const tooMuch = 30;

const crossedBy = (box: Box, lines: readonly Segment[]): number => lines.filter((line) => crosses(box, line)).length;

/** How many other writings the line of a spot runs through. */
const passed = ({ at, leadsTo }: Spot, taken: readonly Box[]): number =>
  leadsTo ? taken.filter((box) => crosses(box, [at, leadsTo])).length : 0;

/**
 * Places labels one after the other so that none lies on another or on an obstacle; lines are crossed as little as possible.
 * A label without any free spot, or with one that crosses too much, is left out, unless it must be kept. Earlier labels take their place first.
 */
export function placeLabels(
  labels: readonly Label[],
  obstacles: readonly Box[],
  lines: readonly Segment[],
  within?: Box,
): readonly PlacedLabel[] {
  const taken = [...obstacles];
  const drawn = [...lines];
  return labels.flatMap(({ key, text, width, height, spots, kept }): PlacedLabel[] => {
    let best: { readonly spot: Spot; readonly box: Box; readonly cost: number } | null = null;
    for (const [i, spot] of spots.entries()) {
      const least = (spot.rank ?? i) + (spot.leadsTo ? leading : 0);
      if (least >= (best?.cost ?? (kept ? Number.POSITIVE_INFINITY : tooMuch))) continue;
      const box = boxOfSpot(spot, spot.written?.width ?? width, spot.written?.height ?? height);
      if (within && !isWithin(box, within)) continue;
      if (taken.some((other) => overlaps(box, other))) continue;
      const cost = kept ? least : least + crossing * (crossedBy(box, drawn) + passed(spot, taken));
      if (cost < (best?.cost ?? (kept ? Number.POSITIVE_INFINITY : tooMuch))) best = { spot, box, cost };
    }
    const [first] = spots;
    const chosen = best ?? (kept && first ? { spot: first, box: boxOfSpot(first, width, height) } : null);
    if (!chosen) return [];
    taken.push(chosen.box);
    if (chosen.spot.leadsTo) drawn.push([chosen.spot.at, chosen.spot.leadsTo]);
    return [{ key, text: chosen.spot.written?.text ?? text, ...chosen.spot, box: chosen.box }];
  });
}
