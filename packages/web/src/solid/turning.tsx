import { useThree } from '@react-three/fiber';
import { useEffect, useMemo } from 'react';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Vec3 } from '../engine/contract.js';

/** Turning, moving and coming closer by pointer; arrow keys turn when the drawing has the focus. */
export function Turning({ target }: { readonly target: Vec3 }) {
  const camera = useThree((s) => s.camera);
  const element = useThree((s) => s.gl.domElement);
  const invalidate = useThree((s) => s.invalidate);
  const [x, y, z] = target;
  const controls = useMemo(() => new OrbitControls(camera, element), [camera, element]);
  useEffect(() => {
    controls.target.set(x, y, z);
    controls.maxPolarAngle = Math.PI * 0.495;
    controls.update();
    invalidate();
  }, [controls, x, y, z, invalidate]);
  useEffect(() => {
    const draw = () => invalidate();
    controls.addEventListener('change', draw);
    const onKey = (event: KeyboardEvent) => {
      const by = keyTurn[event.key];
      if (!by) return;
      controls.rotateLeft(by[0]);
      controls.rotateUp(by[1]);
      controls.update();
      event.preventDefault();
    };
    element.tabIndex = 0;
    element.addEventListener('keydown', onKey);
    return () => {
      element.removeEventListener('keydown', onKey);
      controls.removeEventListener('change', draw);
      controls.dispose();
    };
  }, [controls, element, invalidate]);
  return null;
}

const step = Math.PI / 36;
const keyTurn: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [step, 0],
  ArrowRight: [-step, 0],
  ArrowUp: [0, step],
  ArrowDown: [0, -step],
};
