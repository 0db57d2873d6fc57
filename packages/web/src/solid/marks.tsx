import { add3, at3, scale3 } from '@cloche/engine';
import { useMemo } from 'react';
import type { Plane } from 'three';
import type { Barrier, Vec2 } from '../engine/contract.js';
import { type Drawn, FineLines } from './bodies.js';
import { clothEdges, edgesOf, type Stretch } from './geometry.js';
import { hatchLines } from './hatch.js';
import type { Piece } from './pieces.js';
import { StrongLines } from './strong-lines.js';

/** Small parts between the large ones: many of them marked at once would be one blot. */
const small: ReadonlySet<string> = new Set(['joint', 'cap', 'connector', 'end stop']);
/** From here on marks are many: small parts are left out, cloth is framed instead of traced, lines are finer. */
const many = 12;

const frameOfCloth = (piece: Piece): readonly Stretch[] => {
  const shape = piece.part?.shape;
  if (shape?.shape !== 'cloth') return [];
  const [dx, dy, dz] = piece.by ?? [0, 0, 0];
  const at = ([x, y]: Vec2, z: number): Stretch[0] => [x + dx, y + dy, z + dz];
  const { line, top, bottom } = shape;
  const rails = [top, bottom].flatMap((z) => line.slice(1).map((b, i): Stretch => [at(line[i]!, z), at(b, z)]));
  const ends = [line[0]!, line.at(-1)!].map((p): Stretch => [at(p, bottom), at(p, top)]);
  return [...rails, ...ends];
};

function edgesOfPiece(piece: Piece, among: number): readonly Stretch[] {
  if (piece.kind === 'beam') return middleLine(piece);
  if (piece.kind === 'cloth') return among > many ? frameOfCloth(piece) : clothEdges(piece);
  if (among > many && piece.part && small.has(piece.part.role)) return [];
  return piece.boxes.flatMap(edgesOf);
}

/** Middle lines of a beam that is in hand. */
const middleLine = ({ boxes }: Piece): readonly Stretch[] =>
  boxes.map(({ middle, axes: [along], sizes: [length] }): Stretch => {
    const end = (sign: number) => add3(middle, scale3(along, (sign * length) / 2));
    return [end(-1), end(1)];
  });

interface MarksProps extends Drawn {
  /** In hand, pointed at, or the subject of a note. */
  readonly strong: readonly Piece[];
  /** Face that a note speaks of. */
  readonly barrier: Barrier | null;
}

/** What stands out, in the accent and through everything. */
export function Marks({ strong, barrier, ink, planes }: MarksProps) {
  const stretches = useMemo(
    () => [...strong.flatMap((piece) => edgesOfPiece(piece, strong.length)), ...(barrier ? frameOf(barrier) : [])],
    [strong, barrier],
  );
  return (
    <StrongLines
      stretches={stretches}
      color={ink.accent}
      width={strong.length > many ? 1.5 : 2.4}
      planes={planes}
      through
    />
  );
}

const corners = ({ from, to, bottom, top }: Barrier) =>
  [at3(from, bottom), at3(to, bottom), at3(to, top), at3(from, top)] as const;

const frameOf = (barrier: Barrier): readonly Stretch[] => {
  const ring = corners(barrier);
  return ring.map((a, i) => [a, ring[(i + 1) % ring.length]!]);
};

/** Distance of hatching lines on the faces of barriers [m]. */
const barrierHatch = 0.14;

function hatchOf(barrier: Barrier): readonly Stretch[] {
  const { from, to, bottom, top } = barrier;
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  if (length < 1e-6 || top <= bottom) return [];
  const along: Vec2 = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const face: readonly Vec2[] = [
    [0, bottom],
    [length, bottom],
    [length, top],
    [0, top],
  ];
  const back = ([s, z]: Vec2): Stretch[0] => [from[0] + along[0] * s, from[1] + along[1] * s, z];
  return hatchLines(face, barrierHatch).map(([a, b]) => [back(a), back(b)]);
}

/** The faces that may stop light, hatched; open sides are none. */
export function BarrierFaces({
  barriers,
  ink,
  planes,
}: { readonly barriers: readonly Barrier[]; readonly planes: readonly Plane[] } & Drawn) {
  const [hatching, frames] = useMemo(() => {
    const closed = barriers.filter((b) => b.item !== null);
    return [closed.flatMap(hatchOf), closed.flatMap(frameOf)];
  }, [barriers]);
  return (
    <>
      <FineLines stretches={hatching} color={ink.second} opacity={0.55} ink={ink} planes={planes} />
      <StrongLines stretches={frames} color={ink.second} width={1.4} planes={planes} />
    </>
  );
}
