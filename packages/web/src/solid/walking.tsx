import { useFrame, useThree } from '@react-three/fiber';
import { useEffect, useMemo, useRef } from 'react';
import { type PerspectiveCamera, Vector3 } from 'three';
import type { Design } from '../engine/contract.js';
import { type OnFoot, useSpace, walkTo } from './space-store.js';
import { type Ground, groundOf, walked } from './walk.js';

/** Angle of view on foot, upright [degrees]: wide enough to see a room from inside it. */
const footAngle = 62;
/** Walking indoors [m/s], turning on the spot [rad/s] (common practice). */
const pace = 1.2;
const turnPace = 1.4;
/** One press of a key, however short [m, rad]. */
const onePace = 0.1;
const oneTurn = Math.PI / 36;
/** How far one can look up and down [rad]. */
const mostPitch = 1.3;
const perPixel = 0.005;

interface Drive {
  /** Ahead, and to the right. */
  readonly ahead?: number;
  readonly right?: number;
  readonly turn?: number;
}

const drives: Readonly<Record<string, Drive>> = {
  w: { ahead: 1 },
  s: { ahead: -1 },
  a: { right: -1 },
  d: { right: 1 },
  arrowup: { ahead: 1 },
  arrowdown: { ahead: -1 },
  arrowleft: { turn: 1 },
  arrowright: { turn: -1 },
};

function driven(ground: Ground, foot: OnFoot, drive: Drive, far: number, angle: number): OnFoot {
  const { ahead = 0, right = 0, turn = 0 } = drive;
  const [c, s] = [Math.cos(foot.heading), Math.sin(foot.heading)];
  const at =
    ahead === 0 && right === 0
      ? foot.at
      : walked(ground, foot.at, [(c * ahead + s * right) * far, (s * ahead - c * right) * far]);
  return { ...foot, at, heading: foot.heading + turn * angle };
}

/** On foot at eye height: keys walk and turn, dragging looks round; what stands in the way stops. */
export function Walking({ design }: { readonly design: Design }) {
  const camera = useThree((s) => s.camera) as PerspectiveCamera;
  const element = useThree((s) => s.gl.domElement);
  const invalidate = useThree((s) => s.invalidate);
  const foot = useSpace((s) => s.walk);
  const eyeHeight = useSpace((s) => s.eyeHeight);
  const ground = useMemo(() => groundOf(design), [design]);
  const held = useRef(new Set<string>());

  useEffect(() => {
    if (!foot) return;
    const level = Math.cos(foot.pitch);
    camera.fov = footAngle;
    camera.near = 0.05;
    camera.updateProjectionMatrix();
    camera.up.set(0, 0, 1);
    camera.position.set(foot.at[0], foot.at[1], eyeHeight);
    camera.lookAt(
      new Vector3(Math.cos(foot.heading) * level, Math.sin(foot.heading) * level, Math.sin(foot.pitch)).add(
        camera.position,
      ),
    );
    invalidate();
  }, [camera, foot, eyeHeight, invalidate]);

  useEffect(() => {
    const keys = held.current;
    const onDown = (event: KeyboardEvent) => {
      if (event.ctrlKey || event.metaKey || event.altKey) return;
      const key = event.key.toLowerCase();
      const now = useSpace.getState().walk;
      if (!now) return;
      if (!drives[key]) return;
      if (!keys.has(key)) walkTo(driven(ground, now, drives[key], onePace, oneTurn));
      keys.add(key);
      invalidate();
      event.preventDefault();
      event.stopPropagation();
    };
    const onUp = (event: KeyboardEvent) => keys.delete(event.key.toLowerCase());
    const release = () => keys.clear();
    element.addEventListener('keydown', onDown);
    element.addEventListener('keyup', onUp);
    element.addEventListener('blur', release);
    return () => {
      release();
      element.removeEventListener('keydown', onDown);
      element.removeEventListener('keyup', onUp);
      element.removeEventListener('blur', release);
    };
  }, [element, ground, invalidate]);

  useEffect(() => lookRound(element), [element]);
  useEffect(leaveByEscape, []);

  useFrame((_, seconds) => {
    const now = useSpace.getState().walk;
    if (!now || held.current.size === 0) return;
    const time = Math.min(seconds, 0.05);
    walkTo(
      [...held.current].reduce((foot, key) => driven(ground, foot, drives[key]!, pace * time, turnPace * time), now),
    );
    invalidate();
  });
  return null;
}

/** Escape leaves the walk from anywhere, before it does anything else. */
function leaveByEscape(): () => void {
  const onKey = (event: KeyboardEvent) => {
    if (event.key !== 'Escape') return;
    walkTo(null);
    event.preventDefault();
    event.stopPropagation();
  };
  window.addEventListener('keydown', onKey, { capture: true });
  return () => window.removeEventListener('keydown', onKey, { capture: true });
}

/** Dragging turns the head. */
function lookRound(element: HTMLElement): () => void {
  let last: readonly [number, number] | null = null;
  const down = (event: PointerEvent) => {
    element.setPointerCapture(event.pointerId);
    last = [event.clientX, event.clientY];
  };
  const move = (event: PointerEvent) => {
    const now = useSpace.getState().walk;
    if (!last || !now) return;
    const [dx, dy] = [event.clientX - last[0], event.clientY - last[1]];
    last = [event.clientX, event.clientY];
    const pitch = Math.max(-mostPitch, Math.min(mostPitch, now.pitch + dy * perPixel));
    walkTo({ ...now, heading: now.heading + dx * perPixel, pitch });
  };
  const up = () => {
    last = null;
  };
  element.addEventListener('pointerdown', down);
  element.addEventListener('pointermove', move);
  element.addEventListener('pointerup', up);
  element.addEventListener('pointercancel', up);
  return () => {
    element.removeEventListener('pointerdown', down);
    element.removeEventListener('pointermove', move);
    element.removeEventListener('pointerup', up);
    element.removeEventListener('pointercancel', up);
  };
}
