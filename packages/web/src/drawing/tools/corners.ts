import { distance2, type Vec2 } from '@cloche/engine';
import { polarFields, polarPlace, polarShown } from '../polar.js';
import type { Scene } from '../scene.js';
import type { Aim, Shown, Tool } from '../tool.js';

/** Points that were set so far, in order. */
export interface Corners {
  readonly corners: readonly Vec2[];
}

export const noCorners: Corners = { corners: [] };
export const lastOf = ({ corners }: Corners): Vec2 | undefined => corners.at(-1);
export const withCorner = ({ corners }: Corners, at: Vec2): Corners => ({ corners: [...corners, at] });
export const withoutLast = ({ corners }: Corners): Corners | null =>
  corners.length === 0 ? null : { corners: corners.slice(0, -1) };

/** Nothing in a building is shorter; a click on the spot of the last is the end of a line. */
const shortest = 0.001;

export type Meets = 'first' | 'last' | 'other' | 'none';

/** Which of the points before a new one falls upon; nearer than `near` the screen cannot tell two points apart [m]. */
export function meets({ corners }: Corners, at: Vec2, near: number): Meets {
  const same = (p: Vec2 | undefined) => p !== undefined && distance2(p, at) <= Math.max(shortest, near);
  if (corners.length > 2 && same(corners[0])) return 'first';
  if (same(corners.at(-1))) return 'last';
  return corners.some((corner) => distance2(corner, at) <= shortest) ? 'other' : 'none';
}

/** What all tools share that draw a line corner by corner, each next one pointed at or typed by length and angle. */
export const byCorners = {
  start: noCorners,
  from: lastOf,
  fields: (state, aim) => polarFields(lastOf(state), polarPlace(lastOf(state), aim)),
  place: (state, aim) => polarPlace(lastOf(state), aim),
  show: (state, aim, { units }) => shownCorners(state, aim, units),
  back: withoutLast,
} satisfies Partial<Tool<Corners>>;

/** The corners that are set, and the leg to where the next one would be. */
export function shownCorners(state: Corners, aim: Aim, units: Scene['units']) {
  const to = polarPlace(lastOf(state), aim);
  return {
    lines: [[...state.corners, to]],
    dots: state.corners,
    dimensions: polarShown(lastOf(state), to, units),
  } satisfies Shown;
}
