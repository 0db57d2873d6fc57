import { useSyncExternalStore } from 'react';

/** Colours of the drawing in space; the same paper and ink as the style sheet has. */
export interface Ink {
  readonly dark: boolean;
  readonly paper: string;
  readonly ink: string;
  readonly second: string;
  readonly accent: string;
  readonly body: string;
  readonly plate: string;
  readonly cloth: string;
  readonly wall: string;
}

const light: Ink = {
  dark: false,
  paper: '#FBFAF6',
  ink: '#1C2126',
  second: '#5A6169',
  accent: '#0B5F66',
  body: '#FBFAF6',
  plate: '#9DB4B8',
  cloth: '#8A8F94',
  wall: '#E4E3DC',
};

const dark: Ink = {
  dark: true,
  paper: '#15181B',
  ink: '#E9E6DF',
  second: '#A3A9AE',
  accent: '#63C3C9',
  body: '#525A61',
  plate: '#86A3A7',
  cloth: '#7C8288',
  wall: '#2B3136',
};

const query = window.matchMedia('(prefers-color-scheme: dark)');

const subscribe = (changed: () => void) => {
  query.addEventListener('change', changed);
  return () => query.removeEventListener('change', changed);
};

export const useInk = (): Ink => useSyncExternalStore(subscribe, () => (query.matches ? dark : light));
