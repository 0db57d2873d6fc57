import { at3 } from '@cloche/engine';
import { useMemo } from 'react';
import type { Plane } from 'three';
import type { Barrier, Vec2 } from '../engine/contract.js';
import { type Drawn, FineLines } from './bodies.js';
import { clothEdges, edgesOf, type Stretch } from './geometry.js';
import { hatchLines } from './hatch.js';
import type { Piece } from './pieces.js';
import { StrongLines } from './strong-lines.js';

const edgesOfPiece = (piece: Piece): readonly Stretch[] =>
  piece.kind === 'cloth' ? clothEdges(piece) : piece.kind === 'beam' ? [] : piece.boxes.flatMap(edgesOf);

/** Middle lines of a beam that is in hand. */
const middleLine = ({ kind, boxes }: Piece): readonly Stretch[] =>
  kind !== 'beam'
    ? []
    : boxes.map(({ middle, axes: [along], sizes: [length] }): Stretch => {
        const end = (sign: number) =>
          [0, 1, 2].map((k) => middle[k as 0] + (along[k as 0] * length * sign) / 2) as unknown as Stretch[0];
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
    () => [
      ...strong.flatMap((piece) => [...edgesOfPiece(piece), ...middleLine(piece)]),
      ...(barrier ? frameOf(barrier) : []),
    ],
    [strong, barrier],
  );
  return <StrongLines stretches={stretches} color={ink.accent} width={2.4} planes={planes} through />;
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
