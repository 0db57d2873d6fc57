import { create } from 'zustand';
import type { PlanView, Size } from './view.js';

/** The view is shared: the title block tells its scale, leaders of notes end in it. */
export const usePlanView = create<{ readonly view: PlanView | null; readonly size: Size }>(() => ({
  view: null,
  size: { width: 0, height: 0 },
}));

export const setPlanView = (view: PlanView): void => usePlanView.setState({ view });
