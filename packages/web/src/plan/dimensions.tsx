import { groupDigits } from '@cloche/engine';
import { wallDimensions } from '../arrange/wall-dimensions.js';
import type { Design, Vec2 } from '../engine/contract.js';
import { unspoken } from './unspoken.js';
import { type PlanView, type Size, toScreen } from './view.js';
import { wallThickness } from './wall-band.js';

interface LineProps {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Pixels from the measured points to the dimension line, along `away`. */
  readonly distance: number;
  readonly away: Vec2;
}

/** Shorter lines have no room for their number, pixels. */
export const shortestLine = 24;

/** A dimension with extension lines, oblique strokes; its number stands above the line (ISO 129-1, from memory). */
export function DimensionLine({ from, to, distance, away }: LineProps) {
  const shift = ([x, y]: Vec2, by: number): Vec2 => [x + away[0] * by, y + away[1] * by];
  const [a, b] = [shift(from, distance), shift(to, distance)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length < shortestLine) return null;
  const line = (p: Vec2, q: Vec2) => `M${p[0]} ${p[1]}L${q[0]} ${q[1]}`;
  const stroke = (p: Vec2) => line([p[0] - 4, p[1] + 4], [p[0] + 4, p[1] - 4]);
  return (
    <g className="dimension">
      <path
        d={
          line(shift(from, Math.min(4, distance)), shift(a, 4)) +
          line(shift(to, Math.min(4, distance)), shift(b, 4)) +
          line(a, b)
        }
      />
      <path className="stroke" d={stroke(a) + stroke(b)} />
    </g>
  );
}

/** Lengths of the walls; their numbers are typed and stand over the drawing. */
export function RoomDimensions({
  design,
  view,
  size,
}: {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}) {
  return (
    <g className="dimensions" {...unspoken}>
      {wallDimensions(design).map(({ wall, from, to, out }) => (
        <DimensionLine
          key={wall}
          from={toScreen(view, size, from)}
          to={toScreen(view, size, to)}
          away={[out[0], -out[1]]}
          distance={wallDistance(view)}
        />
      ))}
    </g>
  );
}

/** Pixels from a wall to its dimension line. */
export const wallDistance = (view: PlanView): number => wallThickness * view.scale + 22;

export const millimetres = (metres: number): string => groupDigits(Math.round(metres * 1000));
