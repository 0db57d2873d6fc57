import { at3 } from '@cloche/engine';
import { BufferGeometry, Float32BufferAttribute, Matrix4, Shape, ShapeGeometry, Vector2, Vector3 } from 'three';
import type { Shape as PartShape, Vec2, Vec3 } from '../engine/contract.js';
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

const geometryOf = (positions: readonly number[] | Float32Array): BufferGeometry =>
  new BufferGeometry().setAttribute('position', new Float32BufferAttribute(positions, 3));

/** Points one after the other, as the picture takes them; made in one go, because a slider makes them anew at every step. */
export function flatPoints(points: readonly Vec3[]): Float32Array {
  const flat = new Float32Array(points.length * 3);
  points.forEach((point, i) => {
    flat.set(point, i * 3);
  });
  return flat;
}

export const edgesOf = (box: SolidBox): readonly Stretch[] => {
  const corners = cornersOf(box);
  return boxEdges.map(([a, b]) => [corners[a]!, corners[b]!]);
};

export const lineGeometry = (stretches: readonly Stretch[]): BufferGeometry => geometryOf(flatPoints(stretches.flat()));

function withNormals(positions: Float32Array): BufferGeometry {
  const geometry = geometryOf(positions);
  geometry.computeVertexNormals();
  return geometry;
}

interface Hanging {
  readonly line: readonly Vec2[];
  readonly bottom: number;
  readonly top: number;
}

const noCloth: Hanging = { line: [], bottom: 0, top: 0 };
/** Waves in their place, kept with their part. */
const known = new WeakMap<object, Hanging>();

function waveInPlace(shape: Extract<PartShape, { shape: 'cloth' }>): Hanging {
  const before = known.get(shape);
  if (before) return before;
  const { fullness, bottom, top } = shape;
  const hanging = { line: wave(shape.line, fullness), bottom, top };
  known.set(shape, hanging);
  return hanging;
}

/** The waves of hanging cloth, drawn from its place as far as its piece is; empty for what is no cloth. */
export function waveOf({ part, by }: Piece): Hanging {
  if (part?.shape.shape !== 'cloth') return noCloth;
  const hanging = waveInPlace(part.shape);
  if (!by) return hanging;
  const { line, bottom, top } = hanging;
  return { line: line.map(([x, y]) => [x + by[0], y + by[1]]), bottom: bottom + by[2], top: top + by[2] };
}

/** All cloth, hanging in its waves: two triangles for each stretch. */
export function clothGeometry(pieces: readonly Piece[]): BufferGeometry {
  const hung = pieces.map(waveOf);
  const stretches = hung.reduce((sum, { line }) => sum + Math.max(0, line.length - 1), 0);
  const flat = new Float32Array(stretches * 18);
  let at = 0;
  for (const { line, bottom, top } of hung)
    for (let i = 0; i + 1 < line.length; i++) {
      const [[ax, ay], [bx, by]] = [line[i]!, line[i + 1]!];
      flat.set([ax, ay, bottom, bx, by, bottom, bx, by, top, ax, ay, bottom, bx, by, top, ax, ay, top], at);
      at += 18;
    }
  return withNormals(flat);
}

/** Upper and lower edges of cloth, and its ends. */
export const clothEdges = (piece: Piece): readonly Stretch[] => {
  const { line, bottom, top } = waveOf(piece);
  const along = [bottom, top].flatMap((z) => line.slice(1).map((b, i): Stretch => [at3(line[i]!, z), at3(b, z)]));
  const ends = [line[0], line.at(-1)].flatMap((p): Stretch[] => (p ? [[at3(p, bottom), at3(p, top)]] : []));
  return [...along, ...ends];
};

/** Convex faces as fans of triangles from their first corner. */
export const faceGeometry = (faces: readonly (readonly Vec3[])[]): BufferGeometry =>
  withNormals(
    flatPoints(faces.flatMap(([first, ...rest]) => rest.slice(1).flatMap((corner, i) => [first!, rest[i]!, corner]))),
  );

export const floorGeometry = (ring: readonly Vec2[]): BufferGeometry =>
  new ShapeGeometry(new Shape(ring.map(([x, y]) => new Vector2(x, y))));
