import { type Calculation, type CalculationStep, calculation } from '../floor/calculation.js';
import { type Outcome, ok } from '../floor/problem.js';
import type { Topic, TopicArguments, TopicInput } from '../floor/topic.js';
import type { Dimension } from '../floor/units.js';
import { beamDiameters, toD63 } from './beam-diameter.js';
import { emittedEnergy, emittedPower, exposureThroughAperture, peakExposure } from './beam-exposure.js';
import { barrierCautions, laserCautions } from './cautions.js';
import { diffuseHazardDistance } from './diffuse.js';
import { type HazardModel, hazardDistance } from './hazard-distance.js';
import { continuousLaserClass, singlePulseLaserClass } from './laser-class.js';
import { limitingAperture } from './limiting-aperture.js';
import { neitherPowerNorEnergy } from './messages.js';
import { barrierTransmission, requiredOpticalDensity } from './optical-density.js';
import { beamDiameterAt } from './propagation.js';
import { pulseTrainLimitByChoice } from './pulse-train.js';
import { requiredScaleNumber, scaleNumberLimit } from './scale-number.js';
import { limitByChoice } from './stricter-limit.js';
import type { ScaleMode, ScaleStandard } from './tables-filter.js';
import { type DiameterConvention, type EditionChoice, editions, type Organ } from './types.js';

const quantity = (name: string, dimension: Dimension, about: string, more: Partial<TopicInput> = {}): TopicInput => ({
  name,
  about,
  shape: { dimension },
  ...more,
});
const choice = (name: string, about: string, words: readonly string[], fallback: string): TopicInput => ({
  name,
  about,
  shape: { choice: words },
  default: fallback,
});
const optional = { optional: true } as const;

const edition = choice('edition', 'edition of the exposure limits', [...editions, 'stricter of both'], 'IEC2014');
const organ = choice('organ', 'eye or skin', ['eye', 'skin'], 'eye');
const wavelength = quantity('wavelength', 'length', 'wavelength, 180 nm to below 1 mm');
const duration = quantity('duration', 'time', 'exposure duration');
const sourceAngle = quantity('source-angle', 'angle', 'angular subtense; left out for a point source', optional);
const diameter = quantity('diameter', 'length', 'beam diameter where it leaves');
const measuredAt = choice(
  'measured-at',
  'where the diameter and divergence are measured',
  ['1/e', '1/e2', 'fwhm'],
  '1/e2',
);
const divergence = quantity('divergence', 'angle', 'full divergence');
const power = quantity('power', 'power', 'power', optional);
const energy = quantity('energy', 'energy', 'energy of one pulse', optional);

const num = (inputs: TopicArguments, name: string): number => Number(inputs[name]);
const maybe = (inputs: TopicArguments, name: string): number | undefined =>
  inputs[name] === undefined ? undefined : Number(inputs[name]);
const word = <T extends string>(inputs: TopicArguments, name: string): T => String(inputs[name]) as T;
const angleOf = (inputs: TopicArguments) => {
  const angle = maybe(inputs, 'source-angle');
  return angle === undefined ? {} : { sourceAngle: angle };
};
const d63 = (inputs: TopicArguments) => {
  const factor = toD63(word<DiameterConvention>(inputs, 'measured-at'));
  return { diameter: num(inputs, 'diameter') * factor, divergence: num(inputs, 'divergence') * factor };
};
const emission = (inputs: TopicArguments) => {
  const joules = maybe(inputs, 'energy');
  const watts = maybe(inputs, 'power');
  if ((joules === undefined) === (watts === undefined)) return null;
  return joules === undefined ? emittedPower(watts!) : emittedEnergy(joules);
};
const needOne: Outcome<never> = { ok: false, problems: [neitherPowerNorEnergy()] };

const pointSource = 'The source is taken as a point, which is safe.';
const convertedToD63 = 'Diameter and divergence were converted to the 1/e convention (Gaussian profile).';

const worked = <T extends { readonly steps: readonly CalculationStep[] }>(
  title: string,
  outcome: Outcome<T>,
  assumptions: readonly string[] = [],
  cautions = laserCautions,
): Outcome<Calculation> =>
  outcome.ok ? ok(calculation(title, outcome.value.steps, { assumptions, cautions })) : outcome;

const exposureLimitTopic: Topic = {
  name: 'exposure-limit',
  about: 'maximum permissible exposure of eye or skin, for one pulse or continuous light',
  inputs: [
    edition,
    organ,
    wavelength,
    duration,
    sourceAngle,
    quantity('area', 'area', 'exposed area of skin', optional),
  ],
  run: (inputs) => {
    const area = maybe(inputs, 'area');
    const limit = limitByChoice(word<EditionChoice>(inputs, 'edition'), {
      organ: word<Organ>(inputs, 'organ'),
      wavelength: num(inputs, 'wavelength'),
      duration: num(inputs, 'duration'),
      ...angleOf(inputs),
      ...(area === undefined ? {} : { exposedArea: area }),
    });
    return worked('Exposure limit', limit, inputs['source-angle'] === undefined ? [pointSource] : []);
  },
};

const pulseTrainTopic: Topic = {
  name: 'pulse-train-limit',
  about: 'exposure limit for each pulse of a regular train, all rules',
  inputs: [
    edition,
    organ,
    wavelength,
    quantity('pulse', 'time', 'duration of one pulse'),
    quantity('rate', 'frequency', 'repetition rate'),
    duration,
    sourceAngle,
  ],
  run: (inputs) => {
    const asked = word<EditionChoice>(inputs, 'edition');
    const limit = pulseTrainLimitByChoice(asked === 'stricter of both' ? editions : [asked], {
      organ: word<Organ>(inputs, 'organ'),
      wavelength: num(inputs, 'wavelength'),
      pulse: num(inputs, 'pulse'),
      rate: num(inputs, 'rate'),
      duration: num(inputs, 'duration'),
      ...angleOf(inputs),
    });
    return worked('Exposure limit of a pulse train', limit, inputs['source-angle'] === undefined ? [pointSource] : []);
  },
};

const diameterTopic: Topic = {
  name: 'beam-diameter',
  about: 'beam diameter in the conventions 1/e, 1/e2 and full width at half maximum',
  inputs: [diameter, measuredAt],
  run: (inputs) =>
    worked('Beam diameter', beamDiameters(num(inputs, 'diameter'), word<DiameterConvention>(inputs, 'measured-at'))),
};

const apertureTopic: Topic = {
  name: 'limiting-aperture',
  about: 'aperture over which an exposure is averaged',
  inputs: [choice('edition', 'edition', editions, 'IEC2014'), organ, wavelength, duration],
  run: (inputs) =>
    worked(
      'Limiting aperture',
      limitingAperture({
        edition: word(inputs, 'edition'),
        organ: word(inputs, 'organ'),
        wavelength: num(inputs, 'wavelength'),
        duration: num(inputs, 'duration'),
      }),
    ),
};

const beamExposureTopic: Topic = {
  name: 'beam-exposure',
  about:
    'irradiance or radiant exposure of a beam at a distance: on the axis, and through an aperture when one is given',
  inputs: [
    power,
    energy,
    diameter,
    measuredAt,
    divergence,
    quantity('distance', 'length', 'distance', { default: '0 m' }),
    quantity('aperture', 'length', 'aperture', optional),
  ],
  run: (inputs) => {
    const emitted = emission(inputs);
    if (!emitted) return needOne;
    const at = beamDiameterAt({ ...d63(inputs), distance: num(inputs, 'distance') });
    if (!at.ok) return at;
    const aperture = maybe(inputs, 'aperture');
    const found =
      aperture === undefined
        ? peakExposure(emitted, at.value.diameter)
        : exposureThroughAperture(emitted, aperture, { profile: 'gaussian', diameter: at.value.diameter });
    if (!found.ok) return found;
    return worked('Exposure by a beam', ok({ steps: [...at.value.steps, ...found.value.steps] }), [convertedToD63]);
  },
};

const hazardDistanceTopic: Topic = {
  name: 'hazard-distance',
  about: 'distance beyond which a free beam is under the exposure limit of the eye',
  inputs: [
    power,
    energy,
    quantity('limit', 'irradiance', 'exposure limit for a power', optional),
    quantity('pulse-limit', 'radiant exposure', 'exposure limit for a pulse energy', optional),
    diameter,
    measuredAt,
    divergence,
    choice('model', 'way of the beam', ['quadratic', 'linear', 'aperture'], 'quadratic'),
    quantity('aperture', 'length', 'limiting aperture of the aperture model', { default: '7 mm' }),
  ],
  run: (inputs) => {
    const emitted = emission(inputs);
    const limit = emitted?.kind === 'power' ? maybe(inputs, 'limit') : maybe(inputs, 'pulse-limit');
    if (!emitted || limit === undefined) return needOne;
    const args = { emitted, limit, ...d63(inputs) };
    const found = hazardDistance(args, word<HazardModel>(inputs, 'model'), num(inputs, 'aperture'));
    return worked('Hazard distance', found, [convertedToD63, 'Loss in air is left out.']);
  },
};

const diffuseTopic: Topic = {
  name: 'diffuse-hazard-distance',
  about: 'distance from a diffusely reflecting spot beyond which the limit is kept',
  inputs: [
    quantity('power', 'power', 'power on the spot'),
    quantity('limit', 'irradiance', 'exposure limit'),
    quantity('reflectance', 'ratio', 'reflectance', { default: '1' }),
    quantity('angle', 'angle', 'angle from the normal', { default: '0 deg' }),
  ],
  run: (inputs) =>
    worked(
      'Hazard distance from a diffuse reflection',
      diffuseHazardDistance({
        power: num(inputs, 'power'),
        limit: num(inputs, 'limit'),
        reflectance: num(inputs, 'reflectance'),
        angle: num(inputs, 'angle'),
      }),
      ['The spot is taken as a point: no credit for its size.'],
    ),
};

const opticalDensityTopic: Topic = {
  name: 'optical-density',
  about: 'optical density that brings an exposure down to the limit',
  inputs: [
    quantity('exposure', 'irradiance', 'irradiance at the limiting aperture'),
    quantity('limit', 'irradiance', 'exposure limit'),
  ],
  run: (inputs) =>
    worked('Optical density', requiredOpticalDensity(num(inputs, 'exposure'), num(inputs, 'limit'), 'W/m2')),
};

const transmissionTopic: Topic = {
  name: 'barrier-transmission',
  about: 'irradiance behind a barrier of known optical density',
  inputs: [
    quantity('irradiance', 'irradiance', 'irradiance on the barrier'),
    { name: 'optical-density', about: 'optical density', shape: { number: true } },
    quantity('limit', 'irradiance', 'limit behind the barrier'),
  ],
  run: (inputs) =>
    worked(
      'Transmission of a barrier',
      barrierTransmission({
        irradiance: num(inputs, 'irradiance'),
        opticalDensity: num(inputs, 'optical-density'),
        limit: num(inputs, 'limit'),
      }),
      ['Attenuation alone: whether the barrier survives is another question.'],
      barrierCautions,
    ),
};

const standard = choice('standard', 'EN207 for eyewear, EN12254 for screens', ['EN207', 'EN12254'], 'EN12254');
const mode = choice('mode', 'D continuous, I long, R nanosecond, M ultrashort pulses', ['D', 'I', 'R', 'M'], 'D');

const scaleNumberTopic: Topic = {
  name: 'scale-number',
  about: 'scale number that eyewear (EN 207, LB) or a screen (EN 12254, AB) needs',
  inputs: [
    standard,
    mode,
    wavelength,
    power,
    energy,
    quantity('diameter', 'length', 'beam diameter on the surface'),
    measuredAt,
    quantity('pulse', 'time', 'pulse duration', optional),
    quantity('rate', 'frequency', 'repetition rate', optional),
    quantity('count-time', 'time', 'time over which pulses are counted', optional),
  ],
  run: (inputs) => {
    const known = {
      pulse: maybe(inputs, 'pulse'),
      rate: maybe(inputs, 'rate'),
      countTime: maybe(inputs, 'count-time'),
    };
    const amounts = { power: maybe(inputs, 'power'), energy: maybe(inputs, 'energy') };
    const given = Object.fromEntries(Object.entries({ ...known, ...amounts }).filter(([, v]) => v !== undefined));
    const found = requiredScaleNumber({
      standard: word<ScaleStandard>(inputs, 'standard'),
      mode: word<ScaleMode>(inputs, 'mode'),
      wavelength: num(inputs, 'wavelength'),
      diameter: num(inputs, 'diameter') * toD63(word<DiameterConvention>(inputs, 'measured-at')),
      ...given,
    });
    return worked('Scale number', found, [convertedToD63], barrierCautions);
  },
};

const scaleLimitTopic: Topic = {
  name: 'scale-number-limit',
  about: 'what a scale number withstands and lets through',
  inputs: [standard, mode, wavelength, { name: 'number', about: 'scale number, 1 to 10', shape: { number: true } }],
  run: (inputs) =>
    worked(
      'Limit of a scale number',
      scaleNumberLimit({
        standard: word<ScaleStandard>(inputs, 'standard'),
        mode: word<ScaleMode>(inputs, 'mode'),
        wavelength: num(inputs, 'wavelength'),
        scaleNumber: num(inputs, 'number'),
      }),
      [],
      barrierCautions,
    ),
};

const classTopic: Topic = {
  name: 'laser-class',
  about: 'class of a continuous laser (power) or of one pulse (energy and pulse), IEC 60825-1:2014, point source',
  inputs: [
    wavelength,
    power,
    energy,
    quantity('pulse', 'time', 'pulse duration', optional),
    diameter,
    measuredAt,
    divergence,
  ],
  run: (inputs) => {
    const emitted = emission(inputs);
    if (!emitted) return needOne;
    const args = { edition: 'IEC2014', wavelength: num(inputs, 'wavelength'), ...d63(inputs) } as const;
    const found =
      emitted.kind === 'power'
        ? continuousLaserClass(args, emitted.amount)
        : singlePulseLaserClass(args, emitted.amount, num(inputs, 'pulse'));
    return found.ok
      ? worked(`Class ${found.value.class}`, found, [
          pointSource,
          convertedToD63,
          'The manufacturer declares the class, from the worst case with faults; this is a plausibility check.',
        ])
      : found;
  },
};

/** Laser calculations that stand without a project. */
export const laserTopics: readonly Topic[] = [
  exposureLimitTopic,
  pulseTrainTopic,
  apertureTopic,
  diameterTopic,
  beamExposureTopic,
  hazardDistanceTopic,
  diffuseTopic,
  opticalDensityTopic,
  transmissionTopic,
  scaleNumberTopic,
  scaleLimitTopic,
  classTopic,
];
