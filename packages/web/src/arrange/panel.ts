import { create } from 'zustand';

/** What lies over the sheet. */
interface Panels {
  readonly open: 'layers' | null;
  /** Whether the card beside the thing in hand shows what can be done with it. */
  readonly actions: boolean;
}

export const usePanel = create<Panels>(() => ({ open: null, actions: false }));

export const togglePanel = (name: 'layers'): void =>
  usePanel.setState((s) => ({ open: s.open === name ? null : name }));
