import { create } from 'zustand';
import type { SnapReason } from '../drawing/snap/index.js';
import type { Vec2 } from '../engine/contract.js';

/** Why a dragged thing rests where it is, and beside which point this is told. */
export const useMoveSnap = create<{ readonly at: Vec2 | null; readonly reasons: readonly SnapReason[] }>(() => ({
  at: null,
  reasons: [],
}));
