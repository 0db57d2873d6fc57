import { groupDigits } from '@cloche/engine';
import type { Design, Vec2 } from '../engine/contract.js';
import { unspoken } from './unspoken.js';
import { type PlanView, type Size, toScreen } from './view.js';
import { counterClockwise, outward, wallThickness } from './wall-band.js';

interface LineProps {
  readonly from: Vec2;
  readonly to: Vec2;
  /** Pixels from the measured points to the dimension line, along `away`. */
  readonly distance: number;
  readonly away: Vec2;
  readonly text: string;
}

/** A dimension with extension lines, oblique strokes and its number above the line (ISO 129-1, from memory). */
export function DimensionLine({ from, to, distance, away, text }: LineProps) {
  const shift = ([x, y]: Vec2, by: number): Vec2 => [x + away[0] * by, y + away[1] * by];
  const [a, b] = [shift(from, distance), shift(to, distance)];
  const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
  if (length < 24) return null;
  const raw = (Math.atan2(b[1] - a[1], b[0] - a[0]) * 180) / Math.PI;
  const angle = raw >= 90 || raw < -90 ? raw + 180 : raw;
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
      <text
        textAnchor="middle"
        transform={`translate(${(a[0] + b[0]) / 2} ${(a[1] + b[1]) / 2}) rotate(${angle}) translate(0 -4)`}
      >
        {text}
      </text>
    </g>
  );
}

export const millimetres = (metres: number): string => groupDigits(Math.round(metres * 1000));

/** Lengths of the walls in millimetres, each length once: first those that face south and west. */
export function RoomDimensions({
  design,
  view,
  size,
}: {
  readonly design: Design;
  readonly view: PlanView;
  readonly size: Size;
}) {
  const ring = counterClockwise(design.room.outline);
  const seen = new Set<string>();
  const walls = ring
    .map((from, i) => ({ from, to: ring[(i + 1) % ring.length]!, i }))
    .map((wall) => ({ ...wall, out: outward(wall.from, wall.to) }))
    .sort((a, b) => a.out[0] + a.out[1] - (b.out[0] + b.out[1]) || a.i - b.i);
  return (
    <g className="dimensions" {...unspoken}>
      {walls.map(({ from, to, out, i }) => {
        const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
        const key = `${Math.abs(out[0]).toFixed(3)} ${Math.abs(out[1]).toFixed(3)} ${length.toFixed(4)}`;
        if (length < 0.3 || seen.has(key)) return null;
        seen.add(key);
        return (
          <DimensionLine
            key={i}
            from={toScreen(view, size, from)}
            to={toScreen(view, size, to)}
            away={[out[0], -out[1]]}
            distance={wallThickness * view.scale + 22}
            text={millimetres(length)}
          />
        );
      })}
    </g>
  );
}
