import { create } from 'zustand';

interface Settings {
  /** From hardly seen to full, 0.1 to 1. */
  readonly strength: number;
}

const place = 'cloche.background-strength';

const kept = (): number => {
  const read = Number(localStorage.getItem(place) ?? '0.5');
  return read >= 0.1 && read <= 1 ? read : 0.5;
};

/** How strongly the background shows in this browser. */
export const useBackgroundSettings = create<Settings>(() => ({ strength: kept() }));

export function setStrength(strength: number): void {
  localStorage.setItem(place, String(strength));
  useBackgroundSettings.setState({ strength });
}
