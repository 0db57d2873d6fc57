import { millimetreText } from '../floor/number-text.js';
import { argumentProblem, type Problem } from '../floor/problem.js';

export const notInside = (argument: string, value: number, length: number): Problem =>
  argumentProblem(
    'curtain/outside-track',
    argument,
    `${argument} at ${millimetreText(value)} lies outside the track of ${millimetreText(length)}.`,
    'Give places between 0 and the length of the track.',
  );

export const badInterval = (argument: string): Problem =>
  argumentProblem(
    'curtain/interval',
    argument,
    `An interval of ${argument} ends before it starts or has an end that is no number.`,
    'Give each interval from its smaller to its larger end.',
  );

export const negative = (argument: string, value: number, unit: string): Problem =>
  argumentProblem(
    'curtain/negative',
    argument,
    `${argument} is ${value} ${unit}; it must be zero or more.`,
    `Give ${argument} of zero or more, in ${unit}.`,
  );

export const noSupportPlace = (from: number, to: number): Problem =>
  argumentProblem(
    'curtain/no-support-place',
    'forbidden',
    `No support can be fixed after ${millimetreText(from)} and up to ${millimetreText(to)}, where the next one is due.`,
    'Free a place in that stretch, choose a stiffer track with wider support spacing, or bridge the stretch with a frame.',
  );

export const noCandidateSet = (): Problem =>
  argumentProblem(
    'curtain/no-support-place',
    'candidates',
    'No choice of the candidate places keeps the spacing, the ends and the required places.',
    'Add candidate places.',
  );

export const nothingInStock = (argument: string): Problem =>
  argumentProblem(
    'curtain/no-stock',
    argument,
    `${argument} lists no size that can be bought.`,
    'Give at least one size above zero.',
  );

export const noSplit = (length: number, shortest: number): Problem =>
  argumentProblem(
    'curtain/no-split',
    'length',
    `${millimetreText(length)} of track cannot be made from the stock with at most one cut and no piece under ${millimetreText(shortest)}.`,
    'Move a corner so that the straight part gets longer, or add a stock length.',
  );

export const fullnessOrder = (low: number, high: number): Problem =>
  argumentProblem(
    'curtain/fullness-order',
    'extraHigh',
    `The largest extra width, ${high}, is below the least, ${low}.`,
    'Give the least extra width first.',
  );

export const noRoomForBend = (leg: string, length: number, tangent: number): Problem =>
  argumentProblem(
    'curtain/no-room-for-bend',
    leg,
    `The leg of ${millimetreText(length)} is shorter than the ${millimetreText(tangent)} that the bend takes from it.`,
    'Use a tighter bend, a corner connector, or a longer leg.',
  );

export const bendAngle = (degrees: number): Problem =>
  argumentProblem(
    'curtain/bend-angle',
    'angle',
    `A bend that turns the track by ${degrees.toFixed(1)} degrees is outside 0 to 180.`,
    'Give the angle by which the direction of the track turns, above 0 and under 180 degrees.',
  );

export const noDropLeft = (drop: number): Problem =>
  argumentProblem(
    'curtain/no-drop',
    'underside',
    `Runner and hem gap leave ${millimetreText(drop)} for the curtain.`,
    'Raise the track or make the hem gap smaller.',
  );

export const tooFewSupports = (count: number): Problem =>
  argumentProblem(
    'curtain/too-few-supports',
    'supports',
    `${count} support${count === 1 ? '' : 's'} cannot hold a track in place; two or more at different places are needed.`,
    'Give at least two supports.',
  );

export const mechanism = (): Problem =>
  argumentProblem(
    'curtain/mechanism',
    'hinges',
    'With these joints as hinges the track is not held: a part of it can swing freely.',
    'Put a support on the loose side of the joint, or use a joint that carries moment.',
  );

export const liftsOff = (): Problem =>
  argumentProblem(
    'curtain/lifts-off',
    'supports',
    'The track tips out of its hangers: an end loaded beyond its last support lifts the rest of it.',
    'Put a support closer to that end, or use supports that also hold the track down.',
  );
