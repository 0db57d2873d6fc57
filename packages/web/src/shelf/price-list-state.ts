import { create } from 'zustand';

/** Whether the reader of price lists is open. */
export const usePriceList = create<{ readonly open: boolean }>(() => ({ open: false }));
