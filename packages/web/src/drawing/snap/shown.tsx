import { create } from 'zustand';
import type { Vec2 } from '../../engine/contract.js';
import type { PlanView, Size } from '../../plan/view.js';
import { SnapMarks } from './snap-marks.js';
import type { SnapReason } from './types.js';

interface Shown {
  readonly at: Vec2;
  readonly reasons: readonly SnapReason[];
  readonly words: 'beside' | 'under';
}

const useSnapShown = create<{ readonly shown: Shown | null }>(() => ({ shown: null }));

/** Says why what is in hand rests where it does, until the next call. */
export const showSnap = (at: Vec2, reasons: readonly SnapReason[], words: Shown['words'] = 'beside'): void =>
  useSnapShown.setState({ shown: { at, reasons, words } });

export function hideSnap(): void {
  if (useSnapShown.getState().shown) useSnapShown.setState({ shown: null });
}

/** Whether something rests where it does, and tells why. */
export const useSnapping = (): boolean => useSnapShown((s) => s.shown !== null);

/** The one place of the plan where reasons are drawn, for whatever is moved or placed. */
export function SnapLayer({ view, size }: { readonly view: PlanView; readonly size: Size }) {
  const shown = useSnapShown((s) => s.shown);
  return shown && <SnapMarks at={shown.at} reasons={shown.reasons} words={shown.words} view={view} size={size} />;
}
