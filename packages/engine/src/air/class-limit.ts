import { type Outcome, ok, type Problem, refuse } from '../floor/index.js';
import {
  cellEmpty,
  cellUndecided,
  classIncrement,
  classRange,
  classState,
  noClass,
  sizeRange,
  sizesTooClose,
} from './messages.js';
import { classSizes, classTable } from './tables.js';
import type { EmptyCell, OccupancyState } from './types.js';

/** Sizes and class numbers come out of decimal text; this much is rounding and no difference. */
const rounding = 1e-9;

const toThreeFigures = (value: number): number => Math.round(Number(value.toPrecision(3)));

const isMultipleOfTenth = (n: number): boolean => Math.abs(n * 10 - Math.round(n * 10)) < 1e-6;

function argumentProblems(classNumber: number, size: number): Problem[] {
  const problems: Problem[] = [];
  if (!(classNumber >= 1 && classNumber <= 9)) problems.push(classRange(classNumber));
  else if (!isMultipleOfTenth(classNumber)) problems.push(classIncrement(classNumber));
  if (!(size >= 0.1e-6 * (1 - rounding) && size <= 5e-6 * (1 + rounding))) problems.push(sizeRange(size));
  return problems;
}

const isEmpty = (cell: number | EmptyCell): cell is EmptyCell => typeof cell === 'string';

/** The cells on both sides of a size (twice the same on a column) in the row of the whole class at or below. */
function cellsBeside(classNumber: number, size: number): readonly (number | EmptyCell)[] {
  const row = classTable[Math.floor(classNumber + rounding)]!;
  const at = classSizes.findIndex((s) => Math.abs(s - size) < s * rounding);
  if (at >= 0) return [row[at]!];
  const above = classSizes.findIndex((s) => s > size);
  return [row[above - 1]!, row[above]!];
}

/**
 * Highest allowed concentration of airborne particles for an ISO class, rounded as the standard prints it.
 *
 *     C = 10^N (0.1 um / D)^2.08, to three significant figures and a whole number
 * Whole classes at the sizes of Table 1 are read from it. A decimal class takes the empty cells of the whole class below
 * it, and a size between two columns needs a limit in both (own rules; they give every empty cell of Table E.1). A class is
 * a planning target here: only a measurement in the finished room by a competent person makes it a claim.
 * @param classNumber N, 1 to 9 in steps of 0.1 [-]
 * @param size        D, smallest particle counted, 0.1 um to 5 um [m]
 * @returns           particles of size D and larger [1/m3], or `air/class-range`, `air/class-step`, `air/size-range`,
 *                    `air/cell-empty`, `air/cell-undecided`; never a number where the table sets none
 * Source: ISO 14644-1:2015, Table 1; Annex E, Formula E.1 and Table E.1 (annex from memory).
 */
export function classLimit(classNumber: number, size: number): Outcome<number> {
  const problems = argumentProblems(classNumber, size);
  if (problems.length > 0) return refuse(problems);
  const cells = cellsBeside(classNumber, size);
  const empty = cells.find(isEmpty);
  if (empty !== undefined)
    return refuse([cells.length === 1 ? cellEmpty(classNumber, size, empty) : cellUndecided(classNumber, size)]);
  const whole = Math.abs(classNumber - Math.round(classNumber)) < rounding;
  if (whole && cells.length === 1) return ok(cells[0] as number);
  return ok(toThreeFigures(classLimitUnrounded(classNumber, size)));
}

/**
 * The class formula before rounding; arguments are not checked.
 * @param classNumber N [-]
 * @param size D [m]
 * @returns particles of size D and larger [1/m3]
 * Source: ISO 14644-1:2015, Annex E, Formula E.1 (from memory).
 */
export const classLimitUnrounded = (classNumber: number, size: number): number =>
  10 ** classNumber * (0.1e-6 / size) ** 2.08;

/**
 * Whether a class can be stated for a state: class 9 is for the operational state only.
 * @param classNumber N [-]
 * @returns true, or `air/class-range`, `air/class-step`, `air/class-state`
 * Source: ISO 14644-1:2015, Table 1, note g (published).
 */
export function classStateAllowed(classNumber: number, state: OccupancyState): Outcome<true> {
  const problems = argumentProblems(classNumber, 0.5e-6);
  if (problems.length > 0) return refuse(problems);
  return classNumber > 8 + rounding && state !== 'operational' ? refuse([classState(state)]) : ok(true);
}

/**
 * Whether several sizes may be used together: each at least 1.5 times the next smaller.
 * @param sizes in any order [m]
 * @returns the sizes in rising order, or `air/size-range`, `air/sizes-too-close`
 * Source: ISO 14644-1:2015, 4.2 (from memory).
 */
export function sizesAllowed(sizes: readonly number[]): Outcome<readonly number[]> {
  const rising = [...sizes].sort((a, b) => a - b);
  const problems = rising.flatMap((size, i) => {
    const range = argumentProblems(1, size);
    const smaller = rising[i - 1];
    return smaller !== undefined && size < 1.5 * smaller * (1 - rounding)
      ? [...range, sizesTooClose(smaller, size)]
      : range;
  });
  return problems.length > 0 ? refuse(problems) : ok(rising);
}

/**
 * The cleanest class whose rounded limit a concentration does not exceed; a planning figure, no class statement.
 * @param concentration of particles of the size and larger [1/m3]
 * @param size D [m]
 * @returns the cleanest whole class and the cleanest class in steps of 0.1 [-], or `air/size-range`, `air/no-class`
 * Source: ISO 14644-1:2015, Table 1; Annex E (from memory).
 */
export function bestClass(
  concentration: number,
  size: number,
): Outcome<{ readonly whole: number; readonly decimal: number }> {
  const problems = argumentProblems(1, size);
  if (problems.length > 0) return refuse(problems);
  const meets = (n: number) => {
    const limit = classLimit(n, size);
    return limit.ok && concentration <= limit.value;
  };
  const tenths = Array.from({ length: 81 }, (_, i) => (10 + i) / 10);
  const decimal = tenths.find(meets);
  const whole = tenths.filter(Number.isInteger).find(meets);
  return whole === undefined || decimal === undefined ? refuse([noClass(concentration, size)]) : ok({ whole, decimal });
}
