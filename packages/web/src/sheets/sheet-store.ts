import { create } from 'zustand';
import { show } from '../state/store.js';

/** The sheet that is looked at, by its file in the pack. */
export const useSheet = create<{ readonly name: string; readonly trueSize: boolean }>(() => ({
  name: 'plan.svg',
  trueSize: false,
}));

export function showSheet(name: string): void {
  useSheet.setState({ name });
  show('sheet');
}
