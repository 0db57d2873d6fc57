import { invalidate } from '@react-three/fiber';
import { type RefObject, useEffect } from 'react';
import { type Camera, Vector3 } from 'three';
import type { Vec2, Vec3 } from '../engine/contract.js';
import { spreadWords } from './spread-words.js';

/** Writing and handles lie over the drawing as plain elements; these are the points of space that they follow. */
const pins = new Map<HTMLElement, Vec3>();
let picture: { readonly camera: Camera; readonly width: number; readonly height: number } | null = null;

/** Ties an element to a point; it is moved whenever the space is drawn, and hidden while the point is behind the eye. */
export function usePin(element: RefObject<HTMLElement | null>, point: Vec3): void {
  const [x, y, z] = point;
  useEffect(() => {
    const pinned = element.current;
    if (!pinned) return;
    pins.set(pinned, [x, y, z]);
    invalidate();
    return () => {
      pins.delete(pinned);
    };
  }, [element, x, y, z]);
}

/** A point of space in pixels of the drawing; null when it is behind the eye or nothing is drawn. */
export function onScreen(point: Vec3): Vec2 | null {
  if (!picture) return null;
  const { camera, width, height } = picture;
  const p = new Vector3(...point).applyMatrix4(camera.matrixWorldInverse);
  if (p.z > -0.01) return null;
  p.applyMatrix4(camera.projectionMatrix);
  return [((p.x + 1) / 2) * width, ((1 - p.y) / 2) * height];
}

/** Puts every pinned element where its point is seen now; words are kept from lying on each other, handles stay at their points. */
export function followPins(camera: Camera, width: number, height: number): void {
  camera.updateMatrixWorld();
  picture = { camera, width, height };
  const seen = [...pins].map(([element, point]) => ({ element, at: onScreen(point) }));
  const words = seen.flatMap(({ element, at }) => (at && element.dataset['word'] ? [{ element, at }] : []));
  const spread = spreadWords(
    words.map(({ element, at }) => {
      const { offsetWidth, offsetHeight } = element.firstElementChild as HTMLElement;
      return { ...inside(at, offsetWidth, width), width: offsetWidth, height: offsetHeight };
    }),
  );
  const places = new Map<HTMLElement, Vec2 | null>([
    ...seen.map(({ element, at }) => [element, at] as const),
    ...words.map(({ element }, i) => [element, spread[i] ? ([spread[i].x, spread[i].y] as const) : null] as const),
  ]);
  for (const [element, at] of places) {
    element.style.visibility = at ? '' : 'hidden';
    if (at) element.style.transform = `translate(${at[0].toFixed(1)}px, ${at[1].toFixed(1)}px)`;
  }
}

/** A word at the edge of the picture is moved into it; one whose point lies outside goes with its point. */
function inside([x, y]: Vec2, wordWidth: number, width: number): { readonly x: number; readonly y: number } {
  const half = wordWidth / 2 + 4;
  return { x: x < 0 || x > width || wordWidth > width ? x : Math.min(width - half, Math.max(half, x)), y };
}

export const forgetPicture = (): void => {
  picture = null;
};
