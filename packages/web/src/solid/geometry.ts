import { BufferGeometry, Float32BufferAttribute, Matrix4, Shape, ShapeGeometry, Vector2, Vector3 } from 'three';
import type { Vec2, Vec3 } from '../engine/contract.js';
import { wave } from '../plan/wave.js';
import { boxEdges, cornersOf, type SolidBox } from './boxes.js';
import type { Piece } from './pieces.js';

export type Stretch = readonly [Vec3, Vec3];

const vector = (v: Vec3): Vector3 => new Vector3(...v);

/** Takes the unit cube to the box. */
export function matrixOf({ middle, axes, sizes }: SolidBox): Matrix4 {
  const scaled = axes.map((axis, i) => vector(axis).multiplyScalar(sizes[i]!));
  return new Matrix4().makeBasis(scaled[0]!, scaled[1]!, scaled[2]!).setPosition(vector(middle));
}

const geometryOf = (positions: readonly number[]): BufferGeometry =>
  new BufferGeometry().setAttribute('position', new Float32BufferAttribute(positions, 3));

export const edgesOf = (box: SolidBox): readonly Stretch[] => {
  const corners = cornersOf(box);
  return boxEdges.map(([a, b]) => [corners[a]!, corners[b]!]);
};

export const lineGeometry = (stretches: readonly Stretch[]): BufferGeometry =>
  geometryOf(stretches.flatMap(([a, b]) => [...a, ...b]));

function withNormals(positions: readonly number[]): BufferGeometry {
  const geometry = geometryOf(positions);
  geometry.computeVertexNormals();
  return geometry;
}

/** The waves of hanging cloth, drawn from its place as far as its piece is; empty for what is no cloth. */
export function waveOf({ part, by = [0, 0, 0] }: Piece): {
  readonly line: readonly Vec2[];
  readonly bottom: number;
  readonly top: number;
} {
  const shape = part?.shape;
  if (shape?.shape !== 'cloth') return { line: [], bottom: 0, top: 0 };
  return {
    line: wave(shape.line, shape.fullness).map(([x, y]) => [x + by[0], y + by[1]]),
    bottom: shape.bottom + by[2],
    top: shape.top + by[2],
  };
}

/** All cloth, hanging in its waves: two triangles for each stretch. */
export const clothGeometry = (pieces: readonly Piece[]): BufferGeometry =>
  withNormals(
    pieces.flatMap((piece) => {
      const { line, bottom, top } = waveOf(piece);
      return line.slice(1).flatMap((b, i) => {
        const a = line[i]!;
        return [...a, bottom, ...b, bottom, ...b, top, ...a, bottom, ...b, top, ...a, top];
      });
    }),
  );

/** Upper and lower edges of cloth, and its ends. */
export const clothEdges = (piece: Piece): readonly Stretch[] => {
  const { line, bottom, top } = waveOf(piece);
  const at = (p: Vec2, z: number): Vec3 => [p[0], p[1], z];
  const along = [bottom, top].flatMap((z) => line.slice(1).map((b, i): Stretch => [at(line[i]!, z), at(b, z)]));
  const ends = [line[0], line.at(-1)].flatMap((p): Stretch[] => (p ? [[at(p, bottom), at(p, top)]] : []));
  return [...along, ...ends];
};

/** Convex faces as fans of triangles from their first corner. */
export const faceGeometry = (faces: readonly (readonly Vec3[])[]): BufferGeometry =>
  withNormals(
    faces.flatMap(([first, ...rest]) => rest.slice(1).flatMap((corner, i) => [...first!, ...rest[i]!, ...corner])),
  );

export const floorGeometry = (ring: readonly Vec2[]): BufferGeometry =>
  new ShapeGeometry(new Shape(ring.map(([x, y]) => new Vector2(x, y))));
