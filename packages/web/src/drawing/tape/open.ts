import { create } from 'zustand';

/** Whether the tape list lies open on the sheet. */
export const useTapeList = create<{ readonly open: boolean }>(() => ({ open: false }));

export const openTapeList = (): void => useTapeList.setState({ open: true });
export const closeTapeList = (): void => useTapeList.setState({ open: false });
