import { useThree } from '@react-three/fiber';
import { useLayoutEffect, useMemo, useRef } from 'react';
import { ConeGeometry, type InstancedMesh, Matrix4, Quaternion, Vector3 } from 'three';
import type { DesignLaser } from '../engine/contract.js';
import type { Drawn } from './bodies.js';
import type { Stretch } from './geometry.js';
import { StrongLines } from './strong-lines.js';

/** An arrow head that points along +y from its foot in the origin. */
const headLength = 0.11;
const head = new ConeGeometry(0.028, headLength, 12).translate(0, -headLength / 2, 0);
const upward = new Vector3(0, 1, 0);

interface BeamsProps extends Drawn {
  readonly lasers: readonly DesignLaser[];
}

/** Beams as arrows, leg by leg; what is carried in a fibre or a tube is a finer line. */
export function Beams({ lasers, ink, planes }: BeamsProps) {
  const heads = useRef<InstancedMesh>(null);
  const invalidate = useThree((s) => s.invalidate);
  const legs = useMemo(() => lasers.flatMap((laser) => laser.legs), [lasers]);
  const [open, carried] = useMemo(() => {
    const stretches = (inOpen: boolean) =>
      legs.filter((l) => (l.carried === 'open') === inOpen).map(({ from, to }): Stretch => [from, to]);
    return [stretches(true), stretches(false)];
  }, [legs]);
  useLayoutEffect(() => {
    legs.forEach(({ from, to }, i) => {
      const along = new Vector3(...to).sub(new Vector3(...from)).normalize();
      const turn = new Quaternion().setFromUnitVectors(upward, along);
      heads.current?.setMatrixAt(i, new Matrix4().compose(new Vector3(...to), turn, new Vector3(1, 1, 1)));
    });
    if (heads.current) {
      heads.current.instanceMatrix.needsUpdate = true;
      heads.current.computeBoundingSphere();
    }
    invalidate();
  }, [legs, invalidate]);
  if (legs.length === 0) return null;
  return (
    <>
      <StrongLines stretches={open} color={ink.accent} width={1.8} planes={planes} />
      <StrongLines stretches={carried} color={ink.accent} width={1} planes={planes} />
      <instancedMesh key={legs.length} ref={heads} args={[head, undefined, legs.length]}>
        <meshBasicMaterial color={ink.accent} clippingPlanes={[...planes]} />
      </instancedMesh>
    </>
  );
}
