import { useThree } from '@react-three/fiber';
import { useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { BoxGeometry, type BufferGeometry, DoubleSide, type InstancedMesh, type Plane } from 'three';
import { clothEdges, clothGeometry, edgesOf, lineGeometry, matrixOf, type Stretch } from './geometry.js';
import type { Ink } from './ink.js';
import type { Piece } from './pieces.js';

export interface Drawn {
  readonly ink: Ink;
  /** Planes of the cuts. */
  readonly planes: readonly Plane[];
}

const cube = new BoxGeometry(1, 1, 1);

/** A geometry that is given back when another takes its place. */
export function useGeometry(make: () => BufferGeometry, needs: readonly unknown[]): BufferGeometry {
  // biome-ignore lint/correctness/useExhaustiveDependencies: the caller names what the geometry is made from
  const geometry = useMemo(make, needs);
  const invalidate = useThree((s) => s.invalidate);
  useEffect(() => {
    invalidate();
    return () => geometry.dispose();
  }, [geometry, invalidate]);
  return geometry;
}

interface BoxesProps extends Drawn {
  readonly pieces: readonly Piece[];
  /** Panes and panels, seen through. */
  readonly clear?: boolean;
}

/** Many boxes in one draw, their edges in another. */
export function Boxes({ pieces, ink, planes, clear = false }: BoxesProps) {
  const mesh = useRef<InstancedMesh>(null);
  const invalidate = useThree((s) => s.invalidate);
  const boxes = useMemo(() => pieces.flatMap((p) => p.boxes), [pieces]);
  const edges = useGeometry(() => lineGeometry(boxes.flatMap(edgesOf)), [boxes]);
  useLayoutEffect(() => {
    boxes.forEach((box, i) => {
      mesh.current?.setMatrixAt(i, matrixOf(box));
    });
    if (mesh.current) {
      mesh.current.instanceMatrix.needsUpdate = true;
      mesh.current.computeBoundingSphere();
    }
    invalidate();
  }, [boxes, invalidate]);
  if (boxes.length === 0) return null;
  const clipped = [...planes];
  return (
    <>
      <instancedMesh key={boxes.length} ref={mesh} args={[cube, undefined, boxes.length]}>
        {clear ? (
          <meshLambertMaterial
            color={ink.plate}
            transparent
            opacity={0.25}
            depthWrite={false}
            clippingPlanes={clipped}
          />
        ) : (
          <meshLambertMaterial
            color={ink.body}
            polygonOffset
            polygonOffsetFactor={1}
            polygonOffsetUnits={1}
            clippingPlanes={clipped}
          />
        )}
      </instancedMesh>
      <lineSegments geometry={edges}>
        <lineBasicMaterial
          color={ink.ink}
          transparent
          opacity={(clear ? 0.55 : 0.75) * (ink.dark ? 0.8 : 1)}
          clippingPlanes={clipped}
        />
      </lineSegments>
    </>
  );
}

interface ClothProps extends Drawn {
  readonly pieces: readonly Piece[];
  /** Seen through from outside, so that the drawing tells what hangs behind it; on foot it hides what it hides. */
  readonly opacity: number;
}

export function Cloth({ pieces, opacity, ink, planes }: ClothProps) {
  const cloth = useGeometry(() => clothGeometry(pieces), [pieces]);
  const edges = useGeometry(() => lineGeometry(pieces.flatMap(clothEdges)), [pieces]);
  if (pieces.length === 0) return null;
  const clipped = [...planes];
  return (
    <>
      <mesh geometry={cloth}>
        <meshLambertMaterial
          color={ink.cloth}
          transparent
          opacity={opacity}
          side={DoubleSide}
          depthWrite={opacity === 1}
          polygonOffset
          polygonOffsetFactor={1}
          polygonOffsetUnits={1}
          clippingPlanes={clipped}
        />
      </mesh>
      <lineSegments geometry={edges}>
        <lineBasicMaterial color={ink.ink} transparent opacity={0.6} clippingPlanes={clipped} />
      </lineSegments>
    </>
  );
}

interface FineLinesProps extends Drawn {
  readonly stretches: readonly Stretch[];
  readonly color: string;
  readonly opacity?: number;
}

export function FineLines({ stretches, color, opacity = 1, planes }: FineLinesProps) {
  const geometry = useGeometry(() => lineGeometry(stretches), [stretches]);
  return (
    <lineSegments geometry={geometry}>
      <lineBasicMaterial color={color} transparent opacity={opacity} clippingPlanes={[...planes]} />
    </lineSegments>
  );
}
