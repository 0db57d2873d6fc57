import { useThree } from '@react-three/fiber';
import { useEffect, useRef } from 'react';
import { Raycaster, Vector2 } from 'three';
import { select } from '../state/store.js';
import { pickedPiece } from './pick.js';
import type { Piece } from './pieces.js';
import type { Cut } from './section.js';
import { hover } from './space-store.js';

/** A pointer that moved less between down and up has touched, not dragged [px]. */
const still = 4;

/** Touching takes a thing in hand; pointing names the piece that is pointed at. */
export function Picking({ pieces, cuts }: { readonly pieces: readonly Piece[]; readonly cuts: readonly Cut[] }) {
  const camera = useThree((s) => s.camera);
  const element = useThree((s) => s.gl.domElement);
  const now = useRef({ pieces, cuts });
  now.current = { pieces, cuts };
  useEffect(() => {
    const rays = new Raycaster();
    let down: readonly [number, number] | null = null;
    let waiting = 0;
    const at = (event: PointerEvent): Piece | null => {
      const box = element.getBoundingClientRect();
      const point = new Vector2(
        ((event.clientX - box.left) / box.width) * 2 - 1,
        1 - ((event.clientY - box.top) / box.height) * 2,
      );
      rays.setFromCamera(point, camera);
      const { origin, direction } = rays.ray;
      return pickedPiece({ from: origin.toArray(), along: direction.toArray() }, now.current.pieces, now.current.cuts);
    };
    const onDown = (event: PointerEvent) => {
      down = event.button === 0 ? [event.clientX, event.clientY] : null;
    };
    const onUp = (event: PointerEvent) => {
      if (down && Math.hypot(event.clientX - down[0], event.clientY - down[1]) < still)
        select(at(event)?.thing ?? null);
      down = null;
    };
    const onMove = (event: PointerEvent) => {
      if (down || event.pointerType === 'touch') return;
      cancelAnimationFrame(waiting);
      waiting = requestAnimationFrame(() => hover(at(event)?.id ?? null));
    };
    const onLeave = () => {
      cancelAnimationFrame(waiting);
      hover(null);
    };
    element.addEventListener('pointerdown', onDown);
    element.addEventListener('pointerup', onUp);
    element.addEventListener('pointermove', onMove);
    element.addEventListener('pointerleave', onLeave);
    return () => {
      onLeave();
      element.removeEventListener('pointerdown', onDown);
      element.removeEventListener('pointerup', onUp);
      element.removeEventListener('pointermove', onMove);
      element.removeEventListener('pointerleave', onLeave);
    };
  }, [camera, element]);
  return null;
}
