import { create } from 'zustand';

/** The panel that lies over the corner of the sheet. */
export const usePanel = create<{ readonly open: 'layers' | null }>(() => ({ open: null }));

export const togglePanel = (name: 'layers'): void =>
  usePanel.setState((s) => ({ open: s.open === name ? null : name }));
