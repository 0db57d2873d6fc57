import type { Vec2 } from '../engine/contract.js';

/** How the plan lies on the screen: the plan point in the middle and pixels per metre. */
export interface PlanView {
  readonly middle: Vec2;
  readonly scale: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

export interface Box {
  readonly min: Vec2;
  readonly max: Vec2;
}

/** A plan point on the screen; y runs down there. */
export const toScreen = (view: PlanView, size: Size, [x, y]: Vec2): Vec2 => [
  size.width / 2 + (x - view.middle[0]) * view.scale,
  size.height / 2 - (y - view.middle[1]) * view.scale,
];

export const toPlan = (view: PlanView, size: Size, [x, y]: Vec2): Vec2 => [
  view.middle[0] + (x - size.width / 2) / view.scale,
  view.middle[1] - (y - size.height / 2) / view.scale,
];

const closest = 2000;
const farthest = 4;

/** The view scaled by a factor while the plan point under `fixed` stays where it is on the screen. */
export function scaled(view: PlanView, size: Size, fixed: Vec2, factor: number): PlanView {
  const scale = Math.min(closest, Math.max(farthest, view.scale * factor));
  const under = toPlan(view, size, fixed);
  const middle: Vec2 = [
    under[0] - (fixed[0] - size.width / 2) / scale,
    under[1] + (fixed[1] - size.height / 2) / scale,
  ];
  return { middle, scale };
}

/** The view moved by screen pixels. */
export const moved = (view: PlanView, dx: number, dy: number): PlanView => ({
  ...view,
  middle: [view.middle[0] - dx / view.scale, view.middle[1] + dy / view.scale],
});

/** What stays free at the edges of the sheet, pixels. */
export interface Edges {
  readonly side: number;
  readonly top: number;
  readonly bottom: number;
}

/** Shows the whole box with room for dimensions round it. */
export const fitted = (box: Box, size: Size, margin: number): PlanView =>
  fittedBetween(box, size, { side: margin, top: margin, bottom: margin });

/** Shows the whole box in the middle of what the edges leave. */
export function fittedBetween(box: Box, size: Size, { side, top, bottom }: Edges): PlanView {
  const width = Math.max(0.1, box.max[0] - box.min[0]);
  const height = Math.max(0.1, box.max[1] - box.min[1]);
  const wanted = Math.min((size.width - 2 * side) / width, (size.height - top - bottom) / height);
  const scale = Math.min(closest, Math.max(farthest, wanted));
  const [x, y] = [(box.min[0] + box.max[0]) / 2, (box.min[1] + box.max[1]) / 2];
  return { middle: [x, y - (bottom - top) / 2 / scale], scale };
}

/** 96 CSS pixels to the inch (CSS Values, from memory). */
const pixelsPerMetreOfPaper = 96 / 0.0254;

/** n of the scale 1:n, two figures. */
export const scaleNumber = (view: PlanView): number => Number((pixelsPerMetreOfPaper / view.scale).toPrecision(2));
