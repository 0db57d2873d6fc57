import { millimetreText, numberText } from '../floor/number-text.js';
import { argumentProblem, type Problem } from '../floor/problem.js';

export const notPositive = (path: string, value: number): Problem =>
  argumentProblem(
    'cutting/size',
    path,
    `${path} is ${value} m; a size must be above zero.`,
    'Give the size in metres.',
  );

export const notACount = (path: string, value: number): Problem =>
  argumentProblem(
    'cutting/count',
    path,
    `${path} is ${value}; it must be a whole number, zero or more.`,
    'Count pieces.',
  );

export const negativeAllowance = (name: string, value: number): Problem =>
  argumentProblem(
    'cutting/allowance',
    name,
    `The ${name} is ${value} m; it cannot be below zero.`,
    `Give the ${name}.`,
  );

export const noStock = (): Problem =>
  argumentProblem('cutting/no-stock', 'stock', 'There is no bar to cut from.', 'Give at least one stock length.');

export const noPrice = (): Problem =>
  argumentProblem(
    'cutting/price',
    'stock',
    'A stock length has no price, or one below zero, so the least price cannot be told.',
    'Give every stock length a price, or plan for the least length.',
  );

export const pieceTooLong = (mark: string, length: number, longest: number): Problem =>
  argumentProblem(
    'cutting/piece-too-long',
    'pieces',
    `Piece ${mark} is ${millimetreText(length)} long; the longest usable bar is ${millimetreText(longest)}.`,
    'Split the piece with a joiner, or choose a profile that comes in longer bars.',
  );

export const notEnoughStock = (): Problem =>
  argumentProblem(
    'cutting/not-enough-stock',
    'stock',
    'No plan was found with the bars that are there.',
    'Add bars, or a stock length without a limit.',
  );

export const pieceTooLarge = (mark: string, width: number, height: number, sheet: readonly [number, number]): Problem =>
  argumentProblem(
    'cutting/piece-too-large',
    'pieces',
    `Piece ${mark}, ${numberText(width * 1000, 5)} x ${numberText(height * 1000, 5)} mm, does not lie on the usable sheet of ${numberText(sheet[0] * 1000, 5)} x ${numberText(sheet[1] * 1000, 5)} mm.`,
    'Divide the panel, allow turning, or choose a larger sheet.',
  );
