import { argumentProblem, type Problem } from '../floor/problem.js';
import type { Source } from '../floor/source.js';
import { rangeSource } from './tables.js';

/** Problems of this discipline: what is wrong and what to do. Tests compare with these functions, not with the text. */
const of = (code: string, argument: string, message: string, hint: string, source?: Source): Problem =>
  argumentProblem(`laser/${code}`, argument, message, hint, source);

export const wavelengthOutside = (nm: number): Problem =>
  of(
    'wavelength-range',
    'wavelength',
    `${nm} nm is outside 180 nm to 1 mm, where laser exposure limits exist.`,
    'Check the wavelength and its unit; other radiation has other rules.',
    rangeSource,
  );
export const noLimitRow = (nm: number, seconds: number): Problem =>
  of('no-row', 'duration', `No row of the tables covers ${nm} nm and ${seconds} s.`, 'Check wavelength and duration.');
export const sourceAngleNotUsable = (angle: number): Problem =>
  of(
    'source-angle',
    'sourceAngle',
    `An angular subtense of ${angle} rad cannot be.`,
    'Give it above zero and below 3.2 rad, or leave it out for a point source (the safe choice).',
  );
export const areaOnlyForSkin = (): Problem =>
  of(
    'area-for-skin-only',
    'exposedArea',
    'An exposed area changes the limit of the skin only.',
    'Leave it out for the eye.',
  );
export const conventionUnknown = (got: string): Problem =>
  of('convention', 'convention', `"${got}" is no place on the profile.`, 'Use 1/e, 1/e2 or fwhm.');
export const conventionNeedsGaussian = (got: string): Problem =>
  of(
    'convention-of-top-hat',
    'convention',
    `A top-hat beam has one edge; a diameter at ${got} says nothing about it.`,
    'Give the edge diameter as 1/e, or call the profile gaussian.',
  );
export const reflectanceOutside = (value: number): Problem =>
  of(
    'reflectance',
    'reflectance',
    `A reflectance of ${value} is outside 0 to 1.`,
    'Give it between 0 and 1; 1 is safe.',
  );
export const angleOutside = (argument: string, angle: number): Problem =>
  of(
    'angle-range',
    argument,
    `An angle of ${angle} rad from the normal is outside 0 to a quarter turn.`,
    'Give the angle from the normal of the surface.',
  );
export const doesNotWiden = (): Problem =>
  of(
    'no-divergence',
    'divergence',
    'The beam is above its limit where it leaves and does not widen: there is no hazard distance.',
    'Give the divergence of the beam (full angle), or treat the whole way of the beam as hazardous.',
  );
export const negative = (argument: string, value: number, unit: string): Problem =>
  of(
    'negative',
    argument,
    `${argument} is ${value} ${unit}; it must not be below zero.`,
    `Give ${argument} of zero or more.`,
  );
export const notAbove = (argument: string, value: number, limit: number): Problem =>
  of('too-small', argument, `${argument} is ${value}; it must be above ${limit}.`, `Check ${argument}.`);
export const numericalApertureOutside = (value: number): Problem =>
  of(
    'numerical-aperture',
    'numericalAperture',
    `A numerical aperture of ${value} is outside 0 to 1.`,
    'Take it from the data sheet of the fibre.',
  );
export const tooNearForEye = (distance: number): Problem =>
  of(
    'nearer-than-eye-focuses',
    'power',
    `With extended-source credit the limit is only met or exceeded nearer than ${distance} m, where no eye focuses and the tables say nothing.`,
    'Use the hazard distance without credit.',
  );
export const creditOutsideRetinalBand = (nm: number): Problem =>
  of(
    'no-extended-credit',
    'wavelength',
    `At ${nm} nm the eye makes no image: a larger source earns no credit.`,
    'Use the hazard distance without extended-source credit.',
  );
export const pulseLongerThanPeriod = (pulse: number, period: number): Problem =>
  of(
    'pulse-longer-than-period',
    'pulse',
    `A pulse of ${pulse} s does not fit into a period of ${period} s.`,
    'Check pulse duration and repetition rate; treat touching pulses as continuous.',
  );
export const pulseLongerThanExposure = (pulse: number, exposure: number): Problem =>
  of(
    'pulse-longer-than-exposure',
    'duration',
    `The exposure of ${exposure} s is shorter than one pulse of ${pulse} s.`,
    'Give an exposure of at least one pulse.',
  );
export const noScaleNumber = (highest: number, got: number, unit: string): Problem =>
  of(
    'beyond-scale',
    'exposure',
    `${got} ${unit} is beyond scale number 10, which ends at ${highest} ${unit}.`,
    'No filter or screen of the scale stands this: enclose the beam, enlarge the distance or use a guard tested for it.',
  );
export const scaleNumberOutside = (n: number): Problem =>
  of(
    'scale-number',
    'scaleNumber',
    `Scale number ${n} is outside the whole numbers 1 to 10.`,
    'Take it from the marking.',
  );
export const pulseNeeded = (): Problem =>
  of(
    'pulse-needed',
    'pulse',
    'In this band the number is found from the peak power density, and that needs the pulse duration.',
    'Give the pulse duration.',
  );
export const countNeeded = (): Problem =>
  of(
    'count-needed',
    'countTime',
    'A train of pulses needs the time over which pulses are counted.',
    'Give it: 5 s for EN 207:2017, 10 s before.',
  );
export const editionWithoutClasses = (edition: string): Problem =>
  of(
    'class-edition',
    'edition',
    `Classes are computed by IEC 60825-1:2014 only, not by ${edition}.`,
    'Use edition IEC2014.',
  );
export const noBeams = (): Problem => of('no-beams', 'beams', 'There is no beam to add up.', 'Give at least one beam.');
export const indexTooLow = (n: number): Problem =>
  of('refractive-index', 'refractiveIndex', `A refractive index of ${n} is below 1.`, 'Glass has about 1.5.');
export const surfacesNotCounted = (n: number): Problem =>
  of('surfaces', 'surfaces', `${n} is no number of surfaces.`, 'Give 1 for one face, 2 for a plate.');
export const behindBarrier = (): Problem =>
  of(
    'eye-before-barrier',
    'eyeDistance',
    'The eye must be beyond the curtain.',
    'Give the horizontal distances from the source.',
  );
export const neitherPowerNorEnergy = (): Problem =>
  of(
    'power-or-energy',
    'power',
    'Give either a power with a limit in W/m² or an energy with a limit in J/m².',
    'Give one pair.',
  );
export const obliqueNotComputed = (angle: number): Problem =>
  of(
    'oblique',
    'angle',
    `Only normal incidence is computed, not ${angle} rad: oblique glass can reflect much more.`,
    'Take a reflectance of 1, or the value of the polarisation and angle at hand.',
  );
