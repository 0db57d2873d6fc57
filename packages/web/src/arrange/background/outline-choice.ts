import { create } from 'zustand';

/** The closed line of the drawing that is pointed at in the list. */
export const useOutlineChoice = create<{ readonly pointed: number | null }>(() => ({ pointed: null }));
