import { create } from 'zustand';

/** Counts how often the line was asked for by its key, so that it can take the focus; and whether the list of keys is open. */
export const useAskLine = create<{ readonly asked: number; readonly keyList: boolean }>(() => ({
  asked: 0,
  keyList: false,
}));

export const askLine = (): void => useAskLine.setState((s) => ({ asked: s.asked + 1 }));
export const showKeys = (keyList: boolean): void => useAskLine.setState({ keyList });
