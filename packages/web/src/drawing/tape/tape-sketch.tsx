import { bounds, type Vec2 } from '@cloche/engine';
import { drawingTexts } from '../../texts/drawing.js';
import type { Traverse } from './traverse.js';

const { tape: say } = drawingTexts;
const [width, height, margin] = [300, 220, 26];

/** The list as it would be drawn, its corners numbered; a gap where it does not close. */
export function TapeSketch({ drawn }: { readonly drawn: Traverse }) {
  const { corners, error, legs } = drawn;
  if (corners.length < 2) return <div className="tape-sketch" />;
  const ends = [...corners, error];
  const { min, max } = bounds(ends);
  const scale = Math.min(
    (width - 2 * margin) / Math.max(0.1, max[0] - min[0]),
    (height - 2 * margin) / Math.max(0.1, max[1] - min[1]),
  );
  const screen = ([x, y]: Vec2): Vec2 => [
    width / 2 + (x - (min[0] + max[0]) / 2) * scale,
    height / 2 - (y - (min[1] + max[1]) / 2) * scale,
  ];
  const line = ends.map(screen);
  const [first, last] = [line[0]!, line.at(-1)!];
  return (
    <svg className="tape-sketch" width={width} height={height} role="img" aria-label={say.sketch(legs.length)}>
      <path className="walls" d={`M${line.map(([x, y]) => `${x} ${y}`).join('L')}`} />
      <path className="gap" d={`M${last[0]} ${last[1]}L${first[0]} ${first[1]}`} />
      {/* Too small to be seen at this scale, an error still has its place. */}
      {Math.hypot(...error) > 1e-4 && <circle className="gap" cx={first[0]} cy={first[1]} r={6} />}
      {corners.map((corner, i) => {
        const [x, y] = screen(corner);
        const [dx, dy] = [x - width / 2, y - height / 2];
        const away = Math.hypot(dx, dy) || 1;
        return (
          <text key={`${corner}`} x={x + (dx / away) * 13} y={y + (dy / away) * 13 + 4} textAnchor="middle">
            {i + 1}
          </text>
        );
      })}
    </svg>
  );
}
