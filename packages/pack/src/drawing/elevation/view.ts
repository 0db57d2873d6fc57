import { bounds, type DesignEnclosure, type Part, type Shape, type Vec2, type Vec3 } from '@cloche/engine';

/** Looking at an enclosure from its own south (front) or east (side). */
export type ElevationName = 'front' | 'side';

/** An outline in the plane of the view [m]: across to the right, up from the floor. */
export interface Face {
  readonly outline: readonly Vec2[];
  /** Distance toward the person who looks, from the middle of the enclosure [m]. */
  readonly nearness: number;
  readonly part: Part;
}

/** A room point as [across, up, nearness] in a view of the enclosure. */
export function inElevation(enclosure: DesignEnclosure, name: ElevationName, p: Vec3): Vec3 {
  const [dx, dy] = [p[0] - enclosure.centre[0], p[1] - enclosure.centre[1]];
  const [cos, sin] = [Math.cos(enclosure.turn), Math.sin(enclosure.turn)];
  const along = dx * cos + dy * sin;
  const aside = -dx * sin + dy * cos;
  return name === 'front' ? [along, p[2], -aside] : [aside, p[2], along];
}

const boxOf = (points: readonly Vec3[]): Vec2[] => {
  const { min, max } = bounds(points.map((p): Vec2 => [p[0], p[1]]));
  return [min, [max[0], min[1]], max, [min[0], max[1]]];
};

function barCorners(bar: Extract<Shape, { shape: 'bar' }>): Vec3[] {
  const d: Vec3 = [bar.to[0] - bar.from[0], bar.to[1] - bar.from[1], bar.to[2] - bar.from[2]];
  const flat = Math.hypot(d[0], d[1]);
  const length = Math.hypot(flat, d[2]);
  const upright = flat < 1e-6;
  const across: Vec3 = upright ? [bar.across?.[0] ?? 1, bar.across?.[1] ?? 0, 0] : [-d[1] / flat, d[0] / flat, 0];
  const other: Vec3 = upright
    ? [-across[1], across[0], 0]
    : [(-d[0] / length) * (d[2] / flat), (-d[1] / length) * (d[2] / flat), flat / length];
  const corner = (end: Vec3, a: number, b: number): Vec3 => [
    end[0] + across[0] * a + other[0] * b,
    end[1] + across[1] * a + other[1] * b,
    end[2] + across[2] * a + other[2] * b,
  ];
  const [w, h] = [bar.width / 2, bar.height / 2];
  return [bar.from, bar.to].flatMap((end) => [
    corner(end, -w, -h),
    corner(end, w, -h),
    corner(end, w, h),
    corner(end, -w, h),
  ]);
}

/** Corner points of a part, or none for parts that are only counted. */
function cornersOf(shape: Shape): readonly Vec3[] {
  if (shape.shape === 'bar') return barCorners(shape);
  if (shape.shape === 'plate') return shape.corners;
  if (shape.shape === 'cloth')
    return shape.line.flatMap((p): Vec3[] => [
      [p[0], p[1], shape.bottom],
      [p[0], p[1], shape.top],
    ]);
  if (shape.shape !== 'box') return [];
  const [cos, sin] = [Math.cos(shape.turn), Math.sin(shape.turn)];
  const corners: Vec3[] = [];
  for (const a of [-shape.length / 2, shape.length / 2])
    for (const b of [-shape.width / 2, shape.width / 2])
      for (const c of [-shape.height / 2, shape.height / 2])
        corners.push([shape.centre[0] + a * cos - b * sin, shape.centre[1] + a * sin + b * cos, shape.centre[2] + c]);
  return corners;
}

/** What the view shows of a part: its envelope, seen square on. Slanting bars are shown by their envelope too. */
export function faceOf(enclosure: DesignEnclosure, name: ElevationName, part: Part): Face | null {
  const corners = cornersOf(part.shape).map((p) => inElevation(enclosure, name, p));
  if (corners.length === 0) return null;
  const nearness = corners.reduce((sum, p) => sum + p[2], 0) / corners.length;
  return { outline: boxOf(corners), nearness, part };
}
