import { argumentProblem, numberText, type Problem } from '../floor/index.js';
import { sources } from './tables.js';
import type { EmptyCell } from './types.js';

const micrometres = (size: number) => `${numberText(size * 1e6)} \u00b5m`;

export const classRange = (n: number): Problem =>
  argumentProblem(
    'air/class-range',
    'classNumber',
    `ISO class ${n} is outside 1 to 9.`,
    'Enter the class that the process needs, or leave it out.',
    sources.classTable,
  );

export const classIncrement = (n: number): Problem =>
  argumentProblem(
    'air/class-step',
    'classNumber',
    `ISO class ${n} is no multiple of 0.1, the smallest step between classes.`,
    'Round the class to one decimal, towards the cleaner side.',
    sources.classFormula,
  );

export const sizeRange = (size: number): Problem =>
  argumentProblem(
    'air/size-range',
    'size',
    `A particle size of ${micrometres(size)} is outside 0.1 \u00b5m to 5 \u00b5m, the sizes that classes are stated for.`,
    'Choose a size from 0.1 \u00b5m to 5 \u00b5m; larger particles need an M descriptor.',
    sources.classTable,
  );

export const cellEmpty = (n: number, size: number, why: EmptyCell): Problem =>
  argumentProblem(
    'air/cell-empty',
    'size',
    `ISO class ${n} has no limit at ${micrometres(size)}: ${why}.`,
    'Choose a size for which the table of the standard gives a limit.',
    sources.classTable,
  );

export const cellUndecided = (n: number, size: number): Problem =>
  argumentProblem(
    'air/cell-undecided',
    'size',
    `ISO class ${n} at ${micrometres(size)} is not decided by the tables: a neighbouring size has no limit.`,
    'Choose a size for which the table of the standard gives a limit.',
    sources.classTable,
  );

export const classState = (state: string): Problem =>
  argumentProblem(
    'air/class-state',
    'state',
    `ISO class 9 is stated for the operational state only, not ${state}.`,
    'Choose the operational state, or a cleaner class.',
    sources.classTable,
  );

export const sizesTooClose = (smaller: number, larger: number): Problem =>
  argumentProblem(
    'air/sizes-too-close',
    'sizes',
    `${micrometres(larger)} is less than 1.5 times ${micrometres(smaller)}.`,
    'Leave one of the two sizes out.',
    sources.classFormula,
  );

export const noClass = (concentration: number, size: number): Problem =>
  argumentProblem(
    'air/no-class',
    'concentration',
    `${numberText(concentration)} particles per m3 at ${micrometres(size)} meet no class that has a limit at this size.`,
    'Choose another size, or state the concentration itself.',
    sources.classTable,
  );

export const emptyList = (name: string, least: number): Problem =>
  argumentProblem(
    'air/too-few',
    name,
    `${name} needs at least ${least} ${least === 1 ? 'value' : 'values'}.`,
    'Give more values.',
  );

export const confidenceLocations = (count: number): Problem =>
  argumentProblem(
    'air/ucl-locations',
    'averages',
    `The upper confidence limit of the 1999 edition is for 2 to 9 locations, not ${count}.`,
    count > 9 ? 'Leave it out: from 10 locations on none is asked for.' : 'Measure at 2 locations or more.',
    sources.confidence1999,
  );

export const notFalling = (): Problem =>
  argumentProblem(
    'air/not-falling',
    'last',
    'The concentration did not fall, so there is no recovery rate.',
    'Take two readings on the falling, straight part of the log.',
    sources.recovery,
  );

export const neverReached = (steady: number, target: number): Problem =>
  argumentProblem(
    'air/never-reached',
    'target',
    `The concentration settles at ${numberText(steady)} per m3 and never falls to ${numberText(target)} per m3.`,
    'Give more clean air, fewer particles, or tighter gaps.',
    sources.wellMixed,
  );

export const noExchange = (): Problem =>
  argumentProblem(
    'air/no-exchange',
    'flow',
    'Without flow and deposition the concentration has no steady value.',
    'Give a flow above zero.',
    sources.wellMixed,
  );

export const supplyTooDirty = (): Problem =>
  argumentProblem(
    'air/supply-too-dirty',
    'supplyConcentration',
    'The supply air already holds more particles than the share of the limit allows.',
    'Use a better filter, or allow a larger share of the limit.',
    sources.wellMixed,
  );

export const emissionSize = (size: number): Problem =>
  argumentProblem(
    'air/emission-size',
    'size',
    `No emission was measured at ${micrometres(size)}; the source has 0.5 \u00b5m and 5 \u00b5m.`,
    'Use 0.5 \u00b5m or 5 \u00b5m, or scale and mark the result as an estimate.',
    sources.people,
  );

export const filterUnknown = (name: string): Problem =>
  argumentProblem(
    'air/filter-class',
    'filterClass',
    `"${name}" is no filter class of EN 1822-1 or group of ISO 29463-1 that we know.`,
    'Use E10 to E12, H13, H14, U15 to U17, or 35 H, 45 H, 55 U, 65 U, 75 U.',
    sources.filters,
  );

export const federalClass = (n: number): Problem =>
  argumentProblem(
    'air/fs209-class',
    'federalClass',
    `${n} is no class of FED-STD-209E that has an ISO class beside it.`,
    'Use 1, 10, 100, 1000, 10 000 or 100 000.',
    sources.federalTable,
  );

export const curveShape = (): Problem =>
  argumentProblem(
    'air/fan-curve',
    'curve',
    'A fan curve needs two points or more, with rising flow and a pressure that does not rise.',
    'Sort the points by flow and check their pressures.',
    sources.fanCurve,
  );

export const curveOutside = (where: 'below the first' | 'beyond the last'): Problem =>
  argumentProblem(
    'air/operating-point-outside',
    'curve',
    `Fan and resistance meet ${where} point of the fan curve; the curve is not extended.`,
    where === 'beyond the last'
      ? 'Extend the curve by data of the maker, or make the openings smaller.'
      : 'Extend the curve by data of the maker, or make the openings larger.',
    sources.fanCurve,
  );

export const backgroundTooLoud = (): Problem =>
  argumentProblem(
    'air/background-too-loud',
    'background',
    'The level with the source must be at least 3 dB above the background; else the source cannot be told from it.',
    'Measure again when it is quieter.',
    sources.levelSum,
  );

export const indexRange = (name: string, value: string, range: string): Problem =>
  argumentProblem(
    'air/index-range',
    name,
    `${name} of ${value} is outside ${range}, where the equation of the refractive index is used.`,
    'Give a value inside this range.',
    sources.refractiveIndex,
  );

export const taskUnknown = (task: string): Problem =>
  argumentProblem(
    'air/light-task',
    'task',
    `No light level is known for "${task}".`,
    'Enter the illuminance that the work needs, in lx.',
    sources.lightLevels,
  );

export const reflectanceOne = (value: number): Problem =>
  argumentProblem(
    'air/reflectance',
    'reflectance',
    `A mean reflectance of ${value} is not from 0 to below 1.`,
    'Give the mean reflectance of the inside as a share below 1.',
    sources.lightTightness,
  );

export const notBelowOne = (name: string, value: number): Problem =>
  argumentProblem(
    'air/absorption',
    name,
    `${name} is ${value}; it must lie above 0 and below 1.`,
    'Give the mean absorption of the surfaces as a share.',
    sources.roomEquation,
  );

export const notWhole = (name: string, value: number): Problem =>
  argumentProblem(
    'air/not-whole',
    name,
    `${name} is ${value}; it must be a whole number, zero or more.`,
    'Count again.',
  );

export const coincidenceTooHigh = (): Problem =>
  argumentProblem(
    'air/coincidence-too-high',
    'indicated',
    'No true concentration gives this reading: it is above the largest that the counter can show.',
    'Dilute the sample, or use a counter with a higher limit.',
    sources.coincidence,
  );

export const outsideDuct = (): Problem =>
  argumentProblem(
    'air/outside-duct',
    'place',
    'The place lies outside the duct.',
    'Give it from the middle of the duct.',
  );
