import { add3, dot3, length3, scale3, sub3 } from '@cloche/engine';
import type { Vec3 } from '../engine/contract.js';
import { type SolidBox, within } from './boxes.js';
import type { Piece } from './pieces.js';
import { type Cut, isKept } from './section.js';

export interface Sight {
  readonly from: Vec3;
  /** Unit vector. */
  readonly along: Vec3;
}

/** Stretch of a line of sight inside a box, as distances; null when it passes by. */
function throughBox({ from, along }: Sight, box: SolidBox): readonly [number, number] | null {
  const start = within(box, from);
  let [near, far] = [0, Number.POSITIVE_INFINITY];
  for (const i of [0, 1, 2] as const) {
    const d = dot3(box.axes[i], along);
    const half = box.sizes[i] / 2;
    if (Math.abs(d) < 1e-12) {
      if (Math.abs(start[i]) > half) return null;
      continue;
    }
    const [a, b] = [(-half - start[i]) / d, (half - start[i]) / d];
    near = Math.max(near, Math.min(a, b));
    far = Math.min(far, Math.max(a, b));
  }
  return near < far ? [near, far] : null;
}

/** Where a line of sight first meets what the cuts leave of a box. */
export function meets(sight: Sight, box: SolidBox, cuts: readonly Cut[]): number | null {
  let stretch = throughBox(sight, box);
  for (const cut of cuts) {
    if (!stretch) return null;
    stretch = keptPart(sight, stretch, cut);
  }
  return stretch ? stretch[0] : null;
}

function keptPart(
  { from, along }: Sight,
  [near, far]: readonly [number, number],
  cut: Cut,
): readonly [number, number] | null {
  const at = (t: number) => add3(from, scale3(along, t));
  const [inNear, inFar] = [isKept(cut, at(near)), isKept(cut, at(far))];
  if (inNear && inFar) return [near, far];
  if (!inNear && !inFar) return null;
  const t = (cut.at - from[cut.axis]) / along[cut.axis];
  return inNear ? [near, t] : [t, far];
}

/** The piece that is seen first along a line of sight. */
export function pickedPiece(sight: Sight, pieces: readonly Piece[], cuts: readonly Cut[]): Piece | null {
  let best: { readonly piece: Piece; readonly far: number } | null = null;
  for (const piece of pieces)
    for (const box of piece.boxes) {
      const far = meets(sight, box, cuts);
      if (far !== null && (best === null || far < best.far)) best = { piece, far };
    }
  return best?.piece ?? null;
}

/** Panes, panels and strips are seen through. */
const isClear = ({ kind, part }: Piece): boolean => kind === 'plate' || kind === 'beam' || part?.role === 'strip panel';

/** Whether a body or a curtain hides a point from an eye. */
export function isHidden(eye: Vec3, point: Vec3, pieces: readonly Piece[], cuts: readonly Cut[]): boolean {
  const way = sub3(point, eye);
  const far = length3(way);
  if (far < 1e-6) return false;
  const sight = { from: eye, along: scale3(way, 1 / far) };
  return pieces.some(
    (piece) =>
      !isClear(piece) &&
      piece.boxes.some((box) => {
        const near = meets(sight, box, cuts);
        return near !== null && near < far - 1e-6;
      }),
  );
}
