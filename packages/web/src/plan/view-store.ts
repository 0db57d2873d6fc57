import { create } from 'zustand';
import type { PlanView, Size } from './view.js';

/** The view is shared: the title block tells its scale, leaders of notes end in it. */
interface Viewed {
  readonly view: PlanView | null;
  readonly size: Size;
  /** Size of the letters as a share of that on a screen of common size. */
  readonly type: number;
  /** Nobody has moved or scaled the plan since it was fitted. */
  readonly whole: boolean;
  /** Height of the legend that stands over the foot of the sheet, pixels. */
  readonly legend: number;
}

export const usePlanView = create<Viewed>(() => ({
  view: null,
  size: { width: 0, height: 0 },
  type: 1,
  whole: false,
  legend: 0,
}));

export const setPlanView = (view: PlanView): void => usePlanView.setState({ view, whole: false });

/** The whole room; it is fitted again when the free part of the sheet changes. */
export const setWholeView = (view: PlanView): void => usePlanView.setState({ view, whole: true });
