import type { Verdict } from '@cloche/engine';
import type { Pen } from './types.js';

/** Ink of the printed sheets; the same as on the light screen. */
export const ink = '#1C2126';
export const secondInk = '#5A6169';
export const hairline = '#C9CCC6';
export const accent = '#0B5F66';
export const paper = '#FFFFFF';
export const wash = '#F1F1EC';

/**
 * Colour of each verdict; never alone, always beside its shape and word.
 * Source: contrast against white and under simulated colour blindness, handbook of deliverables 7.2 (computed).
 */
export const verdictInk: Readonly<Record<Verdict, string>> = {
  meets: '#005A8C',
  attention: '#E69F00',
  fails: '#9B1C1C',
  'not assessed': '#6B6B6B',
};

/** Line widths of group 0.5 and of construction drawings [mm]. Source: ISO 128-2, line groups (from memory). */
export const lineWidth = { narrow: 0.25, symbol: 0.35, wide: 0.5, frame: 0.7, extraWide: 1 } as const;

/**
 * Dash lengths as multiples of the line width: dash 12, long dash 24, gap 3, dot 0.5.
 * Source: ISO 128-2, line patterns (from memory).
 */
export const dashed = (width: number): readonly number[] => [12 * width, 3 * width];
export const chain = (width: number): readonly number[] => [24 * width, 3 * width, 0.5 * width, 3 * width];
export const doubleDot = (width: number): readonly number[] => [...chain(width), 0.5 * width, 3 * width];

export const narrow: Pen = { width: lineWidth.narrow, colour: ink };
export const fine: Pen = { width: 0.18, colour: secondInk };
export const symbol: Pen = { width: lineWidth.symbol, colour: ink };
export const wide: Pen = { width: lineWidth.wide, colour: ink };
export const extraWide: Pen = { width: lineWidth.extraWide, colour: ink };
export const hidden: Pen = { ...narrow, dash: dashed(lineWidth.narrow) };
export const centreLine: Pen = { ...narrow, dash: chain(lineWidth.narrow) };
export const byOthers: Pen = { ...narrow, dash: doubleDot(lineWidth.narrow) };
