import { sub3 } from '@cloche/engine';
import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { MathUtils, type PerspectiveCamera } from 'three';
import { OrbitControls } from 'three/examples/jsm/controls/OrbitControls.js';
import type { Vec3 } from '../engine/contract.js';
import { select, useWorkbench } from '../state/store.js';
import { leaveAt, looked, lookFrom, useSpace, type Wanted } from './space-store.js';
import { type Lens, looks, type Stand, standBetween, standFor, uprightAngle } from './stand.js';

interface TurningProps {
  /** Points that the whole room takes. */
  readonly room: readonly Vec3[];
  /** Points of the thing in hand; empty when nothing is. */
  readonly hand: readonly Vec3[];
}

/** Angle of view from outside, across the shorter side of the picture [rad]. */
const viewAngle = MathUtils.degToRad(35);
/** How long the eye takes to a set view [s]. */
const flight = 0.4;
/** What one press or one touch of a button leaves of the distance. */
const nearer = 0.85;

const lensOf = ({ aspect }: PerspectiveCamera): Lens => ({ angle: uprightAngle(viewAngle, aspect), aspect });
const isStill = () => window.matchMedia('(prefers-reduced-motion: reduce)').matches;

/** Turning, moving and coming closer by pointer and by keys, and the set views. */
export function Turning({ room, hand }: TurningProps) {
  const camera = useThree((s) => s.camera) as PerspectiveCamera;
  const element = useThree((s) => s.gl.domElement);
  const invalidate = useThree((s) => s.invalidate);
  const size = useThree((s) => s.size);
  const wanted = useSpace((s) => s.wanted);
  const controls = useMemo(() => new OrbitControls(camera), [camera]);
  const way = useRef<{ readonly from: Stand; readonly to: Stand; begun: number | null } | null>(null);
  const points = useRef({ room, hand });
  points.current = { room, hand };

  // biome-ignore lint/correctness/useExhaustiveDependencies: the angle follows the size of the picture
  useEffect(() => {
    camera.fov = MathUtils.radToDeg(lensOf(camera).angle);
    camera.updateProjectionMatrix();
    invalidate();
  }, [camera, size, invalidate]);

  useEffect(() => {
    const { left } = useSpace.getState();
    const { opened } = useWorkbench.getState();
    const before = left?.opened === opened ? left.stand : null;
    camera.up.set(0, 0, 1);
    controls.maxPolarAngle = Math.PI * 0.495;
    put(controls, before ?? standFor(points.current.room, looks.corner, lensOf(camera)));
    return () => leaveAt(standOf(controls), opened);
  }, [camera, controls]);

  useEffect(() => {
    if (!wanted) return;
    looked();
    const to = wantedStand(wanted, standOf(controls), points.current, lensOf(camera));
    if (!to) return;
    if (isStill()) put(controls, to);
    else way.current = { from: standOf(controls), to, begun: null };
    invalidate();
  }, [wanted, camera, controls, invalidate]);

  useEffect(() => {
    const draw = () => invalidate();
    const takeOver = () => {
      way.current = null;
    };
    const onKey = (event: KeyboardEvent) => {
      if (!byKey(event, controls)) return;
      event.preventDefault();
      controls.update();
      invalidate();
    };
    controls.connect(element);
    controls.addEventListener('change', draw);
    controls.addEventListener('start', takeOver);
    element.addEventListener('keydown', onKey);
    return () => {
      element.removeEventListener('keydown', onKey);
      controls.removeEventListener('change', draw);
      controls.removeEventListener('start', takeOver);
      controls.disconnect();
    };
  }, [controls, element, invalidate]);

  useFrame(() => {
    const now = way.current;
    if (!now) return;
    // The first picture begins the way: however long nothing was drawn before, it is not part of it.
    now.begun ??= performance.now();
    const share = Math.min(1, (performance.now() - now.begun) / (flight * 1000));
    put(controls, standBetween(now.from, now.to, MathUtils.smootherstep(share, 0, 1)));
    if (share === 1) way.current = null;
    else invalidate();
  });
  return null;
}

const standOf = ({ object, target }: OrbitControls): Stand => ({
  eye: object.position.toArray(),
  target: target.toArray(),
});

function put(controls: OrbitControls, { eye, target }: Stand): void {
  controls.object.position.set(...eye);
  controls.target.set(...target);
  controls.update();
}

/** Where to stand for a set view; null when there is nothing to look at. */
function wantedStand({ look }: Wanted, now: Stand, { room, hand }: TurningProps, lens: Lens): Stand | null {
  const back = sub3(now.eye, now.target);
  if (look === 'closer' || look === 'farther') return atDistance(now, look === 'closer' ? nearer : 1 / nearer);
  if (look === 'hand') return hand.length === 0 ? null : standFor(hand, back, lens);
  return standFor(room, looks[look], lens);
}

const atDistance = (now: Stand, factor: number): Stand => {
  const [x, y, z] = sub3(now.eye, now.target);
  const [tx, ty, tz] = now.target;
  return { eye: [tx + x * factor, ty + y * factor, tz + z * factor], target: now.target };
};

const step = Math.PI / 36;
/** Pixels that one press moves the drawing. */
const shift = 30;
const arrows: Readonly<Record<string, readonly [number, number]>> = {
  ArrowLeft: [1, 0],
  ArrowRight: [-1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

/** Whether a key was one that moves the eye. */
function byKey(event: KeyboardEvent, controls: OrbitControls): boolean {
  if (event.ctrlKey || event.metaKey || event.altKey) return false;
  const by = arrows[event.key];
  if (by && event.shiftKey) controls.pan(by[0] * shift, by[1] * shift);
  else if (by) {
    controls.rotateLeft(by[0] * step);
    controls.rotateUp(by[1] * step);
  } else if (event.key === '+' || event.key === '=') lookFrom('closer');
  else if (event.key === '-') lookFrom('farther');
  else if (event.key === '0') lookFrom('corner');
  else if (event.key === 'Escape') select(null);
  else return false;
  return true;
}
