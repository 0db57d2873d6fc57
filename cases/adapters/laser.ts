import {
  apertureShare,
  barrierTransmission,
  beamDiameterAt,
  beamDiameters,
  continuousLaserClass,
  correctionFactors,
  curtainSwingAngle,
  type DiameterConvention,
  diffuseHazardDistance,
  diffuseIrradiance,
  type Edition,
  type Emitted,
  type ExposureLimit,
  emittedEnergy,
  emittedPower,
  exposureLimit,
  exposureThroughAperture,
  extendedDiffuseHazardDistance,
  type HazardModel,
  hazardDistance,
  type LaserClassFound,
  lensHazardDistance,
  limitingAperture,
  multimodeFibreHazardDistance,
  type Organ,
  type Outcome,
  openRayAngle,
  peakExposure,
  photochemicalFieldOfView,
  pulseTrainLimit,
  rayOverBarrier,
  requiredOpticalDensity,
  requiredScaleNumber,
  type ScaleMode,
  type ScaleStandard,
  scaleNumberLimit,
  singleModeFibreHazardDistance,
  singlePulseLaserClass,
  specularReflection,
  sumOfExposures,
  toD63,
} from '@cloche/engine';
import { type Adapter, type Adapters, type Given, Unsupported } from '../adapter.js';

function got<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Unsupported(outcome.problems.map((p) => `${p.code}: ${p.message}`).join(' '));
}

const oneOf = <T extends string>(g: Given, name: string, words: readonly T[], fallback?: T): T => {
  const text = g.optionalText(name) ?? fallback;
  const found = words.find((w) => w === text);
  if (found === undefined) throw new Unsupported(`${name} is ${text ?? 'missing'}`);
  return found;
};
const edition = (g: Given): Edition => oneOf<Edition>(g, 'edition', ['IEC2014', 'EU2006']);
const organ = (g: Given): Organ => oneOf<Organ>(g, 'organ', ['eye', 'skin'], 'eye');
const optional = <K extends string>(g: Given, field: string, name: K): { [k in K]?: number } => {
  const value = g.optionalNumber(field);
  return (value === undefined ? {} : { [name]: value }) as { [k in K]?: number };
};
/** Factor to the 1/e convention; files that give no convention mean 1/e. */
const conversion = (g: Given): number =>
  toD63(oneOf<DiameterConvention>(g, 'diameter_convention', ['1/e', '1/e2', 'fwhm'], '1/e'));
const beam = (g: Given) => {
  const factor = conversion(g);
  return { diameter: g.number('beam_diameter_m') * factor, divergence: g.number('divergence_rad') * factor };
};

const limitOf = (g: Given): ExposureLimit =>
  got(
    exposureLimit({
      edition: edition(g),
      organ: organ(g),
      wavelength: g.number('wavelength_m'),
      duration: g.number('exposure_s'),
      ...optional(g, 'source_angle_rad', 'sourceAngle'),
      ...optional(g, 'exposed_area_m2', 'exposedArea'),
    }),
  );

/** Factors under the names of the case files; angles in rad. */
const namedFactors = (factors: Readonly<Record<string, number>>) =>
  Object.fromEntries(
    Object.entries(factors).map(([name, value]) =>
      name === 'alpha_max'
        ? ['alpha_max_rad', value / 1000]
        : name === 'T2'
          ? ['t2_s', value]
          : [name.toLowerCase(), value],
    ),
  );

const least = (limit: ExposureLimit, mechanism: string) => {
  const values = limit.rows.filter((r) => r.mechanism === mechanism).map((r) => r.irradiance);
  return values.length > 0 ? Math.min(...values) : undefined;
};

const mpe: Adapter = (g) => {
  const limit = limitOf(g);
  const factors = got(
    correctionFactors({
      edition: limit.edition,
      wavelength: limit.wavelength,
      duration: limit.duration,
      ...optional(g, 'source_angle_rad', 'sourceAngle'),
    }),
  );
  return {
    mpe_J_m2: limit.radiantExposure,
    mpe_W_m2: limit.irradiance,
    photochemical_W_m2: least(limit, 'photochemical'),
    thermal_W_m2: least(limit, 'retinal thermal'),
    gamma_ph_rad: got(photochemicalFieldOfView(limit.duration)).angle,
    ...namedFactors(factors.factors),
  };
};

const pulseTrain: Adapter = (g) => {
  const limit = got(
    pulseTrainLimit({
      edition: edition(g),
      organ: organ(g),
      wavelength: g.number('wavelength_m'),
      pulse: g.number('pulse_s'),
      rate: g.number('prf_Hz'),
      duration: g.number('exposure_s'),
      ...optional(g, 'source_angle_rad', 'sourceAngle'),
    }),
  );
  return {
    rule_single_J_m2: limit.singlePulse,
    rule_average_J_m2: limit.average,
    ...(limit.train === null ? {} : { rule_train_J_m2: limit.train }),
    mpe_per_pulse_J_m2: limit.perPulse,
    mpe_W_m2: limit.irradiance,
  };
};

const emitted = (g: Given): Emitted =>
  g.has('pulse_energy_J') ? emittedEnergy(g.number('pulse_energy_J')) : emittedPower(g.number('power_W'));

/** Limit as given in the unit of the emission, or from the tables when wavelength and exposure are given instead. */
const givenLimit = (g: Given, e: Emitted): number => {
  const field = e.kind === 'power' ? 'mpe_W_m2' : 'mpe_J_m2';
  if (g.has(field)) return g.number(field);
  const limit = limitOf(g);
  return e.kind === 'power' ? limit.irradiance : limit.radiantExposure;
};

/** Exposure averaged over the aperture by the profile of the file. */
const averaged = (g: Given, e: Emitted): number => {
  const aperture = g.has('aperture_m')
    ? g.number('aperture_m')
    : got(
        limitingAperture({
          edition: edition(g),
          organ: organ(g),
          wavelength: g.number('wavelength_m'),
          duration: g.number('exposure_s'),
        }),
      ).diameter;
  const profile = oneOf(g, 'profile', ['gaussian', 'top hat', 'top-hat', 'all power inside aperture'], 'gaussian');
  if (profile === 'all power inside aperture') {
    g.ignore('beam_diameter_m', 'diameter_convention');
    return got(exposureThroughAperture(e, aperture)).exposure;
  }
  const gaussian = profile === 'gaussian';
  const factor = gaussian ? conversion(g) : 1;
  if (!gaussian) g.ignore('diameter_convention');
  const shape = {
    profile: gaussian ? ('gaussian' as const) : ('top-hat' as const),
    diameter: g.number('beam_diameter_m') * factor,
  };
  return got(exposureThroughAperture(e, aperture, shape)).exposure;
};

const exposure: Adapter = (g) => {
  const e = emitted(g);
  const found = averaged(g, e);
  const limit = limitOf(g);
  return e.kind === 'power'
    ? { irradiance_W_m2: found, mpe_W_m2: limit.irradiance, exceeds: found > limit.irradiance }
    : { radiant_exposure_J_m2: found, mpe_J_m2: limit.radiantExposure, exceeds: found > limit.radiantExposure };
};

const apertureCoupling: Adapter = (g) => {
  const gaussian = oneOf(g, 'profile', ['gaussian', 'top hat', 'top-hat'], 'gaussian') === 'gaussian';
  if (!gaussian) g.ignore('diameter_convention');
  const diameter = g.number('beam_diameter_m') * (gaussian ? conversion(g) : 1);
  return { fraction: got(apertureShare(gaussian ? 'gaussian' : 'top-hat', diameter, g.number('aperture_m'))).share };
};

const diameter: Adapter = (g) => {
  const convention = oneOf<DiameterConvention>(g, 'diameter_convention', ['1/e', '1/e2', 'fwhm']);
  const found = got(beamDiameters(g.number('beam_diameter_m'), convention));
  return { d63_m: found.d63, d86_m: found.d86, fwhm_m: found.fwhm };
};

const directHazard: Adapter = (g) => {
  const e = emitted(g);
  const args = { emitted: e, limit: givenLimit(g, e), ...beam(g) };
  const model = oneOf<HazardModel>(g, 'nohd_model', ['linear', 'quadratic', 'aperture'], 'quadratic');
  return { nohd_m: got(hazardDistance(args, model, g.optionalNumber('aperture_m'))).distance };
};

const reflected = (g: Given) => ({
  power: g.number('power_W'),
  reflectance: g.optionalNumber('reflectance') ?? 1,
  angle: g.optionalNumber('angle_rad') ?? 0,
});

const diffuseHazard: Adapter = (g) => {
  const watts = emittedPower(g.number('power_W'));
  const limit = givenLimit(g, watts);
  const credit = g.any('extended_source_credit') === true;
  if (!credit) {
    g.ignore('spot_diameter_m');
    return { mpe_W_m2: limit, nhz_m: got(diffuseHazardDistance({ ...reflected(g), limit })).distance };
  }
  const found = got(
    extendedDiffuseHazardDistance({
      ...reflected(g),
      edition: edition(g),
      wavelength: g.number('wavelength_m'),
      duration: g.number('exposure_s'),
      spotDiameter: g.number('spot_diameter_m'),
    }),
  );
  return {
    nhz_m: found.distance,
    source_angle_rad: found.sourceAngle,
    mpe_W_m2: found.limit,
    nhz_without_credit_m: found.withoutCredit,
  };
};

const lensHazard: Adapter = (g) => {
  const e = emitted(g);
  const factor = conversion(g);
  const found = lensHazardDistance({
    emitted: e,
    limit: givenLimit(g, e),
    focalLength: g.number('focal_length_m'),
    diameter: g.number('beam_diameter_at_lens_m') * factor,
  });
  return { nhz_m: got(found).distance };
};

const fibreHazard: Adapter = (g) => {
  const e = emitted(g);
  const kind = oneOf(g, 'fibre', ['multimode', 'single mode']);
  const found =
    kind === 'multimode'
      ? multimodeFibreHazardDistance({ emitted: e, limit: givenLimit(g, e), numericalAperture: g.number('na') })
      : singleModeFibreHazardDistance({
          emitted: e,
          limit: givenLimit(g, e),
          modeFieldDiameter: g.number('mode_field_diameter_m'),
          wavelength: g.number('wavelength_m'),
        });
  g.ignore('wavelength_m');
  return { nohd_m: got(found).distance };
};

/** The kind of reflection or optic decides; without one it is the direct beam. */
const anyHazard: Adapter = (g, wanted) => {
  if (g.has('fibre')) return fibreHazard(g, wanted);
  const kind = oneOf(g, 'source', ['direct', 'diffuse', 'lens'], 'direct');
  if (kind === 'diffuse') return diffuseHazard(g, wanted);
  return kind === 'lens' ? lensHazard(g, wanted) : directHazard(g, wanted);
};

const specular: Adapter = (g) => {
  const found = got(
    specularReflection({
      power: g.number('power_W'),
      refractiveIndex: g.number('refractive_index'),
      ...optional(g, 'surfaces', 'surfaces'),
      ...optional(g, 'angle_rad', 'angle'),
    }),
  );
  return { reflectance: found.reflectance, power_reflected_W: found.power };
};

const opticalDensity: Adapter = (g) => {
  if (g.has('radiant_exposure_J_m2'))
    return {
      od: got(requiredOpticalDensity(g.number('radiant_exposure_J_m2'), g.number('mpe_J_m2'), 'J/m2')).opticalDensity,
    };
  if (g.has('irradiance_W_m2'))
    return {
      od: got(requiredOpticalDensity(g.number('irradiance_W_m2'), g.number('mpe_W_m2'), 'W/m2')).opticalDensity,
    };
  const e = emitted(g);
  const unit = e.kind === 'power' ? ('W/m2' as const) : ('J/m2' as const);
  return { od: got(requiredOpticalDensity(averaged(g, e), givenLimit(g, e), unit)).opticalDensity };
};

const powerLimit: Adapter = (g) => {
  const limit = limitOf(g);
  const aperture = g.optionalNumber('aperture_m') ?? got(limitingAperture(limit)).diameter;
  const perWatt = got(exposureThroughAperture(emittedPower(1), aperture)).exposure;
  return {
    power_limit_W: limit.irradiance / perWatt,
    mpe_W_m2: limit.irradiance,
    mpe_J_m2: limit.radiantExposure,
  };
};

const scaleNumber: Adapter = (g) => {
  const standard = oneOf<ScaleStandard>(g, 'standard', ['EN207', 'EN12254']);
  const mode = oneOf<ScaleMode>(g, 'mode', ['D', 'I', 'R', 'M']);
  const factor = conversion(g);
  const width = g.optionalNumber('beam_diameter_m');
  const found = got(
    requiredScaleNumber({
      standard,
      mode,
      wavelength: g.number('wavelength_m'),
      ...(width === undefined ? {} : { diameter: width * factor }),
      ...optional(g, 'power_W', 'power'),
      ...optional(g, 'pulse_energy_J', 'energy'),
      ...optional(g, 'irradiance_W_m2', 'irradiance'),
      ...optional(g, 'radiant_exposure_J_m2', 'radiantExposure'),
      ...optional(g, 'pulse_s', 'pulse'),
      ...optional(g, 'prf_Hz', 'rate'),
      ...optional(g, 'pulse_count', 'pulseCount'),
      ...optional(g, 'count_time_s', 'countTime'),
    }),
  );
  return mode === 'D'
    ? {
        scale_number: found.scaleNumber,
        irradiance_W_m2: found.exposure,
        spot_factor: found.spotFactor,
        corrected_irradiance_W_m2: found.corrected,
      }
    : {
        scale_number: found.scaleNumber,
        radiant_exposure_J_m2: found.exposure,
        [found.unit === 'J/m2' ? 'corrected_radiant_exposure_J_m2' : 'corrected_irradiance_W_m2']: found.corrected,
      };
};

const scaleLimit: Adapter = (g) => {
  const found = got(
    scaleNumberLimit({
      standard: oneOf<ScaleStandard>(g, 'standard', ['EN207', 'EN12254']),
      scaleNumber: g.number('scale_number'),
      mode: oneOf<ScaleMode>(g, 'mode', ['D', 'I', 'R', 'M']),
      wavelength: g.number('wavelength_m'),
    }),
  );
  const name = found.unit === 'W/m2' ? 'limit_W_m2' : 'limit_J_m2';
  return { [name]: found.limit, transmittance_max: found.transmittance };
};

const barrierIrradiance: Adapter = (g) => {
  g.ignore('wavelength_m', 'edition');
  const at = got(
    beamDiameterAt({
      ...beam(g),
      distance: g.number('distance_m'),
      propagation: oneOf(g, 'propagation', ['quadratic', 'linear'], 'quadratic'),
    }),
  );
  const e = emitted(g);
  const found = got(peakExposure(e, at.diameter)).exposure;
  return {
    beam_diameter_at_barrier_m: at.diameter,
    [e.kind === 'power' ? 'irradiance_W_m2' : 'radiant_exposure_J_m2']: found,
  };
};

const transmission: Adapter = (g) => {
  const limit = limitOf(g).irradiance;
  const found = got(
    barrierTransmission({ irradiance: g.number('irradiance_W_m2'), opticalDensity: g.number('od'), limit }),
  );
  return { transmitted_W_m2: found.transmitted, mpe_W_m2: limit, adequate: found.adequate };
};

const additivity: Adapter = (g) => {
  const raw = g.any('beams');
  if (!Array.isArray(raw)) throw new Unsupported('beams is no list');
  const beams = raw.map((b: Readonly<Record<string, unknown>>) => {
    const unknown = Object.keys(b).filter((k) => !['wavelength_m', 'irradiance_W_m2', 'source_angle_rad'].includes(k));
    if (unknown.length > 0) throw new Unsupported(`field of a beam not known: ${unknown.join(', ')}`);
    if (typeof b.wavelength_m !== 'number' || typeof b.irradiance_W_m2 !== 'number')
      throw new Unsupported('a beam lacks wavelength or irradiance');
    const angle = typeof b.source_angle_rad === 'number' ? { sourceAngle: b.source_angle_rad } : {};
    return { wavelength: b.wavelength_m, irradiance: b.irradiance_W_m2, ...angle };
  });
  const found = got(sumOfExposures({ edition: edition(g), organ: organ(g), duration: g.number('exposure_s'), beams }));
  return { sum_ratio: found.ratio, exceeds: found.exceeds };
};

const classResult = (found: LaserClassFound) => {
  const u = found.unit;
  const limits = {
    ael1: found.limits.one,
    ael2: found.limits.two,
    ael3R: found.limits.threeR,
    ael3B: found.limits.threeB,
  };
  const named = Object.entries(limits).filter(([, v]) => v !== null);
  return {
    class: found.class,
    ...Object.fromEntries(named.map(([name, v]) => [`${name}_${u}`, v])),
    [`ae_condition3_${u}`]: found.naked,
    ...(found.telescope === null ? {} : { [`ae_condition1_${u}`]: found.telescope }),
  };
};

const classContinuous: Adapter = (g) =>
  classResult(
    got(
      continuousLaserClass(
        { edition: edition(g), wavelength: g.number('wavelength_m'), ...beam(g) },
        g.number('power_W'),
      ),
    ),
  );

const classPulse: Adapter = (g) => {
  if (g.any('single_pulse') === false || g.has('prf_Hz')) throw new Unsupported('trains of pulses are not classed');
  const inside = g.any('all_energy_in_aperture') === true;
  const args = { edition: edition(g), wavelength: g.number('wavelength_m'), ...beam(g) };
  const energyAndPulse = [g.number('pulse_energy_J'), g.number('pulse_s')] as const;
  return classResult(
    got(singlePulseLaserClass(args, ...energyAndPulse, inside ? 'all energy in aperture' : 'through apertures')),
  );
};

export const laserAdapters: Adapters = {
  'mpe-uv': mpe,
  'mpe-visible-thermal': mpe,
  'mpe-visible-pulse': mpe,
  'mpe-visible-photochemical': mpe,
  'mpe-700-1050': mpe,
  'mpe-1050-1400': mpe,
  'mpe-1400-2600': mpe,
  'mpe-far-ir': mpe,
  'mpe-extended': mpe,
  'mpe-skin': mpe,
  'mpe-skin-large-area': mpe,
  'mpe-published': mpe,
  'photochemical-field-of-view': (g) => {
    g.ignore('edition', 'wavelength_m', 'organ');
    return { gamma_ph_rad: got(photochemicalFieldOfView(g.number('exposure_s'))).angle };
  },
  'mpe-factors': (g) =>
    namedFactors(
      got(
        correctionFactors({
          edition: edition(g),
          wavelength: g.number('wavelength_m'),
          ...optional(g, 'exposure_s', 'duration'),
          ...optional(g, 'source_angle_rad', 'sourceAngle'),
        }),
      ).factors,
    ),
  'pulse-train': pulseTrain,
  'aperture-coupling': apertureCoupling,
  'beam-diameter': diameter,
  exposure,
  nohd: anyHazard,
  'nhz-osha': anyHazard,
  'nhz-diffuse': anyHazard,
  'nhz-diffuse-extended': anyHazard,
  'nhz-lens': anyHazard,
  'nohd-fibre': anyHazard,
  'diffuse-irradiance': (g) => ({
    irradiance_W_m2: got(
      diffuseIrradiance({
        ...reflected(g),
        distance: g.number('distance_m'),
        ...optional(g, 'spot_diameter_m', 'spotDiameter'),
      }),
    ).irradiance,
  }),
  specular,
  'optical-density': opticalDensity,
  'power-limit': powerLimit,
  'eyewear-scale-number': scaleNumber,
  'barrier-scale-number': scaleNumber,
  'barrier-limit': scaleLimit,
  'barrier-irradiance': barrierIrradiance,
  'barrier-transmission': transmission,
  'line-of-sight-over': (g) => {
    const found = got(
      rayOverBarrier({
        sourceHeight: g.number('source_height_m'),
        eyeHeight: g.number('eye_height_m'),
        barrierDistance: g.number('curtain_distance_m'),
        eyeDistance: g.number('eye_distance_m'),
        barrierTop: g.number('curtain_top_m'),
      }),
    );
    return { ray_height_m: found.rayHeight, visible: found.visible };
  },
  'panel-overlap': (g) => ({
    open_ray_angle_from_normal_rad: got(openRayAngle(g.number('overlap_m'), g.number('plane_spacing_m'))).angle,
  }),
  'curtain-swing': (g) => ({
    swing_angle_rad: got(
      curtainSwingAngle({
        airSpeed: g.number('air_speed_m_s'),
        massPerArea: g.number('mass_per_area_kg_m2'),
        ...optional(g, 'gravity_m_s2', 'gravity'),
      }),
    ).angle,
  }),
  additivity,
  'class-cw': classContinuous,
  'class-single-pulse': classPulse,
};
