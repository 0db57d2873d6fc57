import { BufferGeometry, Float32BufferAttribute, Matrix4, Shape, ShapeGeometry, Vector2, Vector3 } from 'three';
import type { Part, Vec2, Vec3 } from '../engine/contract.js';
import { wave } from '../plan/wave.js';
import { boxEdges, cornersOf, type SolidBox } from './boxes.js';

const vector = (v: Vec3): Vector3 => new Vector3(...v);

/** Takes the unit cube to the box. */
export function matrixOf({ middle, axes, sizes }: SolidBox): Matrix4 {
  const scaled = axes.map((axis, i) => vector(axis).multiplyScalar(sizes[i]!));
  return new Matrix4().makeBasis(scaled[0]!, scaled[1]!, scaled[2]!).setPosition(vector(middle));
}

const geometryOf = (positions: readonly number[]): BufferGeometry =>
  new BufferGeometry().setAttribute('position', new Float32BufferAttribute(positions, 3));

export function edgeGeometry(boxes: readonly SolidBox[]): BufferGeometry {
  return geometryOf(
    boxes.flatMap((box) => {
      const corners = cornersOf(box);
      return boxEdges.flatMap(([a, b]) => [...corners[a]!, ...corners[b]!]);
    }),
  );
}

export const lineGeometry = (pairs: readonly (readonly [Vec3, Vec3])[]): BufferGeometry =>
  geometryOf(pairs.flatMap(([a, b]) => [...a, ...b]));

/** Two triangles for each stretch of an upright band. */
function bandTriangles(line: readonly Vec2[], bottom: number, top: number): number[] {
  return line.slice(1).flatMap((b, i) => {
    const a = line[i]!;
    return [...a, bottom, ...b, bottom, ...b, top, ...a, bottom, ...b, top, ...a, top];
  });
}

function withNormals(positions: readonly number[]): BufferGeometry {
  const geometry = geometryOf(positions);
  geometry.computeVertexNormals();
  return geometry;
}

/** All cloth, hanging in its waves. */
export const clothGeometry = (parts: readonly Part[]): BufferGeometry =>
  withNormals(
    parts.flatMap(({ shape }) =>
      shape.shape === 'cloth' ? bandTriangles(wave(shape.line, shape.fullness), shape.bottom, shape.top) : [],
    ),
  );

/** All plates, as fans of triangles from their first corner. */
export const plateGeometry = (parts: readonly Part[]): BufferGeometry =>
  withNormals(
    parts.flatMap(({ shape }) => {
      if (shape.shape !== 'plate') return [];
      const [first, ...rest] = shape.corners;
      return rest.slice(1).flatMap((corner, i) => [...first!, ...rest[i]!, ...corner]);
    }),
  );

export const plateEdges = (parts: readonly Part[]): BufferGeometry =>
  lineGeometry(
    parts.flatMap(({ shape }) =>
      shape.shape === 'plate'
        ? shape.corners.map((a, i) => [a, shape.corners[(i + 1) % shape.corners.length]!] as const)
        : [],
    ),
  );

export const wallGeometry = (ring: readonly Vec2[], height: number): BufferGeometry =>
  withNormals(bandTriangles([...ring, ring[0]!], 0, height));

export const floorGeometry = (ring: readonly Vec2[]): BufferGeometry =>
  new ShapeGeometry(new Shape(ring.map(([x, y]) => new Vector2(x, y))));
