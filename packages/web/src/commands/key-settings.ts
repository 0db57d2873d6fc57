import { create } from 'zustand';

const place = 'cloche.single-keys';

/** Whether single letters are keys: who speaks to the computer, or rests a hand on it, turns them off (WCAG 2.1.4). */
export const useKeySettings = create<{ readonly single: boolean }>(() => ({
  single: localStorage.getItem(place) !== 'off',
}));

export function setSingleKeys(single: boolean): void {
  localStorage.setItem(place, single ? 'on' : 'off');
  useKeySettings.setState({ single });
}
