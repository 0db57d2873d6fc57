import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { MathUtils, type PerspectiveCamera, Vector3 } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Vec3 } from '../engine/contract.js';
import { select, useWorkbench } from '../state/store.js';
import { leaveAt, lookFrom, useSpace } from './space-store.js';
import { type Lens, looks, type Stand, standFor, uprightAngle } from './stand.js';

interface TurningProps {
  /** Points that the whole room takes. */
  readonly room: readonly Vec3[];
  /** Points of the thing in hand; empty when nothing is. */
  readonly hand: readonly Vec3[];
}

/** Angle of view from outside, across the shorter side of the picture [rad]. */
const viewAngle = MathUtils.degToRad(35);

const lensOf = ({ aspect }: PerspectiveCamera): Lens => ({ angle: uprightAngle(viewAngle, aspect), aspect });
/** How long the eye takes to a set view [s]. */
const flight = 0.4;
const quick = () => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Turning, moving and coming closer by pointer and by keys, and the set views. */
export function Turning({ room, hand }: TurningProps) {
  const camera = useThree((s) => s.camera) as PerspectiveCamera;
  const element = useThree((s) => s.gl.domElement);
  const invalidate = useThree((s) => s.invalidate);
  const size = useThree((s) => s.size);
  const wanted = useSpace((s) => s.wanted);
  const controls = useMemo(() => new OrbitControls(camera, element), [camera, element]);
  const flying = useRef<{ readonly from: Stand; readonly to: Stand; share: number } | null>(null);
  const points = useRef({ room, hand });
  points.current = { room, hand };

  const stand = useMemo(
    () => ({ now: (): Stand => ({ eye: camera.position.toArray(), target: controls.target.toArray() }) }),
    [camera, controls],
  );
  const put = useMemo(
    () =>
      ({ eye, target }: Stand) => {
        camera.position.set(...eye);
        controls.target.set(...target);
        controls.update();
        invalidate();
      },
    [camera, controls, invalidate],
  );
  const goTo = useMemo(
    () => (look: keyof typeof looks | 'hand') => {
      const lens = lensOf(camera);
      const now = stand.now();
      const back: Vec3 = [now.eye[0] - now.target[0], now.eye[1] - now.target[1], now.eye[2] - now.target[2]];
      const to =
        look === 'hand' ? standFor(points.current.hand, back, lens) : standFor(points.current.room, looks[look], lens);
      if (quick()) put(to);
      else {
        flying.current = { from: now, to, share: 0 };
        invalidate();
      }
    },
    [camera, put, stand, invalidate],
  );

  // biome-ignore lint/correctness/useExhaustiveDependencies: the angle follows the size of the picture
  useEffect(() => {
    camera.fov = MathUtils.radToDeg(lensOf(camera).angle);
    camera.updateProjectionMatrix();
    invalidate();
  }, [camera, size, invalidate]);

  useEffect(() => {
    camera.up.set(0, 0, 1);
    controls.maxPolarAngle = Math.PI * 0.495;
    const { left } = useSpace.getState();
    const { opened } = useWorkbench.getState();
    const before = left?.opened === opened ? left.stand : null;
    put(before ?? standFor(points.current.room, looks.corner, lensOf(camera)));
    return () => leaveAt(stand.now(), opened);
  }, [camera, controls, put, stand]);

  useEffect(() => {
    if (wanted && (wanted.look !== 'hand' || points.current.hand.length > 0)) goTo(wanted.look);
  }, [wanted, goTo]);

  useEffect(() => {
    const draw = () => invalidate();
    const land = () => {
      flying.current = null;
    };
    const onKey = (event: KeyboardEvent) => {
      if (!byKey(event, controls, camera)) return;
      event.preventDefault();
      controls.update();
      invalidate();
    };
    controls.addEventListener('change', draw);
    controls.addEventListener('start', land);
    element.addEventListener('keydown', onKey);
    return () => {
      element.removeEventListener('keydown', onKey);
      controls.removeEventListener('change', draw);
      controls.removeEventListener('start', land);
      controls.dispose();
    };
  }, [camera, controls, element, invalidate]);

  useFrame((_, seconds) => {
    const way = flying.current;
    if (!way) return;
    way.share = Math.min(1, way.share + Math.min(seconds, 0.05) / flight);
    const t = MathUtils.smootherstep(way.share, 0, 1);
    const mix = (a: Vec3, b: Vec3): Vec3 => new Vector3(...a).lerp(new Vector3(...b), t).toArray();
    put({ eye: mix(way.from.eye, way.to.eye), target: mix(way.from.target, way.to.target) });
    if (way.share === 1) flying.current = null;
  });
  return null;
}

const step = Math.PI / 36;
const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Whether a key moved the eye. */
function byKey(event: KeyboardEvent, controls: OrbitControls, camera: PerspectiveCamera): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const by = arrows[event.key];
  if (by && event.shiftKey) controls.pan(by[0] * 30, by[1] * 30);
  else if (by) {
    controls.rotateLeft(by[0] * step);
    controls.rotateUp(by[1] * step);
  } else if (event.key === '+' || event.key === '=') closer(controls, camera, 0.85);
  else if (event.key === '-') closer(controls, camera, 1 / 0.85);
  else if (event.key === '0') lookFrom('corner');
  else if (event.key === 'Escape') select(null);
  else return false;
  return true;
}

function closer(controls: OrbitControls, camera: PerspectiveCamera, factor: number): void {
  camera.position.sub(controls.target).multiplyScalar(factor).add(controls.target);
}
