import { bounds, selfCrossings, signedArea, type Vec2 } from '@cloche/engine';
import type { Edit } from '../edit.js';
import { writtenLength } from '../length-text.js';
import type { Scene } from '../scene.js';
import { outlineEdit } from '../tools/room.js';
import type { Diagonal } from './traverse.js';

/** The origin of a brief is the south-west inside corner of the room. */
export function fromSouthWest(corners: readonly Vec2[]): readonly Vec2[] {
  const { min } = bounds(corners);
  return corners.map(([x, y]): Vec2 => [x - min[0], y - min[1]]);
}

/** True when corners go round an area without crossing. */
export const isRoom = (corners: readonly Vec2[]): boolean =>
  corners.length > 2 && selfCrossings(corners).length === 0 && Math.abs(signedArea(corners)) > 1e-6;

/** The room of a list, with the diagonals that were taped; one step of undo. */
export function tapeEdit(
  corners: readonly Vec2[],
  diagonals: readonly Diagonal[],
  scene: Scene,
): { readonly edit: Edit; readonly told: readonly string[] } {
  const { edit, told } = outlineEdit(fromSouthWest(corners), scene);
  if (diagonals.length === 0 || edit.kind !== 'values') return { edit, told };
  const written = diagonals.map(({ from, to, measured }) => ({
    from,
    to,
    measured: writtenLength(measured, scene.units),
  }));
  const path = ['room', 'diagonals'];
  const others = edit.put.filter(([at]) => at.join('/') !== path.join('/'));
  return { edit: { kind: 'values', put: [...others, [path, written]] }, told };
}
