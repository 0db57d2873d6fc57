export { type AdditiveGroup, type ExposedTo, type SumOfExposures, sumOfExposures } from './additivity.js';
export { type BeamDiameters, beamDiameters, toD63 } from './beam-diameter.js';
export {
  type ApertureShare,
  type AreaExposure,
  apertureShare,
  type Emitted,
  emittedEnergy,
  emittedPower,
  exposureThroughAperture,
  peakExposure,
} from './beam-exposure.js';
export { barrierCautions, laserCautions } from './cautions.js';
export {
  diffuseHazardDistance,
  diffuseIrradiance,
  type ExtendedHazardDistance,
  type ExtendedReflection,
  extendedDiffuseHazardDistance,
  type Reflection,
} from './diffuse.js';
export { type ExposureLimitArguments, exposureLimit } from './exposure-limit.js';
export {
  type HazardDistance,
  type HazardDistanceArguments,
  type HazardModel,
  hazardDistance,
  lensHazardDistance,
  multimodeFibreHazardDistance,
  singleModeFibreHazardDistance,
} from './hazard-distance.js';
export {
  continuousLaserClass,
  type EmissionLimits,
  type LaserClass,
  type LaserClassArguments,
  type LaserClassFound,
  singlePulseLaserClass,
} from './laser-class.js';
export { type LimitingAperture, limitingAperture } from './limiting-aperture.js';
export { curtainSwingAngle, openRayAngle, type RayOverBarrier, rayOverBarrier } from './line-of-sight.js';
export { barrierTransmission, requiredOpticalDensity, type Transmission } from './optical-density.js';
export { type BeamAt, beamDiameterAt } from './propagation.js';
export {
  type PulseRule,
  type PulseTrainArguments,
  type PulseTrainByChoice,
  type PulseTrainLimit,
  pulseTrainLimit,
  pulseTrainLimitByChoice,
} from './pulse-train.js';
export { nanometres as wavelengthInNanometres, type WavelengthBand, wavelengthBand } from './scale.js';
export {
  type RepeatedPulses,
  repeatedPulses,
  requiredScaleNumber,
  type ScaleLimitFound,
  type ScaleNumberArguments,
  type ScaleNumberFound,
  scaleModeOf,
  scaleNumberLimit,
  spotFactor as filterSpotFactor,
} from './scale-number.js';
export { type SpecularReflection, specularReflection } from './specular.js';
export { type LimitByChoice, limitByChoice } from './stricter-limit.js';
export type { ScaleMode, ScaleStandard } from './tables-filter.js';
export { laserTopics } from './topics.js';
export {
  type BeamProfile,
  type DiameterConvention,
  type Edition,
  type EditionChoice,
  type ExposureLimit,
  editions as limitEditions,
  type FactorName,
  type Mechanism,
  type Organ,
  type TestedRow,
} from './types.js';
export { correctionFactors, photochemicalFieldOfView } from './view-factors.js';
