import type { Design } from '../engine/contract.js';
import { apart, centresOf } from './apart.js';
import type { AssemblyStep } from './assembly-order.js';
import { movedPiece, type Piece } from './pieces.js';
import type { SpaceState } from './space-store.js';

type Shown = Pick<SpaceState, 'apart' | 'step' | 'shown'>;

/** Parts that are there after a number of steps. */
export const partsUpTo = (steps: readonly AssemblyStep[], step: number): ReadonlySet<string> =>
  new Set(steps.slice(0, step + 1).flatMap((s) => s.parts.map((p) => p.id)));

function isShown({ kind, part, ceiling }: Piece, shown: SpaceState['shown']): boolean {
  if (ceiling && !shown.ceiling) return false;
  if (kind === 'cloth' && !shown.curtains) return false;
  if (kind === 'plate' && part && !shown.panels) return false;
  return kind !== 'beam' || shown.beams;
}

/** The pieces that are drawn, where they are drawn: what is set up so far, what is asked for, pulled apart as far as asked for. */
export function shownPieces(
  design: Design,
  pieces: readonly Piece[],
  steps: readonly AssemblyStep[],
  { apart: share, step, shown }: Shown,
): readonly Piece[] {
  const there = step === null ? null : partsUpTo(steps, step);
  const centre = centresOf(design);
  return pieces
    .filter((piece) => isShown(piece, shown) && (!there || !piece.part || there.has(piece.id)))
    .map((piece) => {
      if (share === 0 || !piece.part) return piece;
      return movedPiece(piece, apart(piece.part, centre(piece.part), share));
    });
}
