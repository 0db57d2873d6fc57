import { numberText } from '../floor/number-text.js';
import { argumentProblem, type Problem } from '../floor/problem.js';
import { roomSources } from './tables.js';

export const voltageOutside = (volts: number): Problem =>
  argumentProblem(
    'room/voltage-range',
    'voltsToGround',
    `${numberText(volts, 6)} V to ground is outside the table, which ends at 600 V.`,
    'Ask an electrician for the working space of higher voltages.',
    roomSources.workingSpace,
  );

export const notBetween = (): Problem =>
  argumentProblem(
    'room/gap-order',
    'barrier',
    'The barrier does not stand between the source and the screen.',
    'Give the places in the order source, barrier, screen.',
  );

export const emptyGap = (): Problem =>
  argumentProblem('room/gap-empty', 'gap', 'The gap has no width.', 'Give the lower end first, then the upper.');

export const badSweep = (): Problem =>
  argumentProblem(
    'room/door-sweep',
    'to',
    'A door leaf turns by more than nothing and at most once round.',
    'Give the angle of the closed leaf and of the open one.',
  );

export const tooFewCorners = (argument: string): Problem =>
  argumentProblem('room/corners', argument, 'An outline needs at least three corners.', 'Give the corners in order.');

export const notInFreeSpace = (which: string): Problem =>
  argumentProblem(
    'room/place-blocked',
    which,
    `The ${which} does not lie in the free floor of the room.`,
    'Choose a place on the floor, outside of tables, columns and walls.',
  );
