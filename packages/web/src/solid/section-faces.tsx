import { useMemo } from 'react';
import { DoubleSide, Plane, Vector3 } from 'three';
import type { Design } from '../engine/contract.js';
import { FineLines, useGeometry } from './bodies.js';
import { capsOf } from './caps.js';
import { faceGeometry } from './geometry.js';
import type { Ink } from './ink.js';
import type { Piece } from './pieces.js';
import type { Cut } from './section.js';
import { StrongLines } from './strong-lines.js';
import type { WallBlock } from './walls.js';

interface SectionProps {
  readonly room: Design['room'];
  readonly walls: readonly WallBlock[];
  readonly pieces: readonly Piece[];
  readonly cuts: readonly Cut[];
  readonly ceiling: boolean;
  readonly ink: Ink;
}

/** The planes that hide what is cut away. */
export const planesOf = (cuts: readonly Cut[]): readonly Plane[] =>
  cuts.map(({ axis, at, keeps }) => {
    const sign = keeps === 'lesser' ? -1 : 1;
    const normal = new Vector3().setComponent(axis, sign);
    return new Plane(normal, -sign * at);
  });

/** The faces that the cuts show: closed, hatched, with a strong line round them. */
export function SectionFaces({ room, walls, pieces, cuts, ceiling, ink }: SectionProps) {
  const caps = useMemo(() => capsOf({ room, walls, pieces, ceiling }, cuts), [room, walls, pieces, ceiling, cuts]);
  const wide = useGeometry(() => faceGeometry(caps.wide), [caps]);
  const narrow = useGeometry(() => faceGeometry(caps.narrow), [caps]);
  if (cuts.length === 0) return null;
  return (
    <>
      <mesh geometry={wide}>
        <meshBasicMaterial
          color={ink.paper}
          side={DoubleSide}
          polygonOffset
          polygonOffsetFactor={1}
          polygonOffsetUnits={1}
        />
      </mesh>
      <mesh geometry={narrow}>
        <meshBasicMaterial color={ink.ink} side={DoubleSide} />
      </mesh>
      <FineLines stretches={caps.hatching} color={ink.ink} opacity={0.55} ink={ink} planes={none} />
      <StrongLines stretches={caps.lines} color={ink.ink} width={2} />
    </>
  );
}

const none: readonly Plane[] = [];
