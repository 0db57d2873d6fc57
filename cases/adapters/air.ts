import {
  ageFromExponentialDecay,
  airChangeRate,
  airExchangeEfficiency,
  airRefractiveIndex,
  beamBending,
  behindFilters,
  benchmarkRoomBoundary,
  bestClass,
  type Clothing,
  classLimit,
  classStateAllowed,
  cleanAirFlow,
  coincidenceCorrected,
  coincidenceReading,
  concentrationAfter,
  countedConcentration,
  cubicFoot,
  cumulativeCounts,
  ductMean,
  ductVelocity,
  endlessStripIlluminance,
  exhaustAge,
  expansionDrift,
  fanOperatingPoint,
  federalLimit,
  filterData,
  gapFlow,
  gapJetVelocity,
  humanEmission,
  hundredToOneTime,
  insideVelocityBand,
  largestGapArea,
  lightAttenuation,
  lightThroughGap,
  locationAverages,
  maintainedIlluminance,
  meanGapVelocity,
  meanIlluminance,
  type OccupancyState,
  type Outcome,
  onceThroughZone,
  overPressure,
  plateFlow,
  pointIlluminance,
  poissonUpperLimit,
  recirculatingZone,
  recoveryRate,
  roomAgeOf,
  roomConstant,
  roomSoundLevel,
  samplingLocations,
  samplingLocations1999,
  singleSample,
  sizesAllowed,
  soundLevelAt,
  soundLevelSum,
  soundLevelWithout,
  stripIlluminance,
  stripsNeeded,
  temperatureRise,
  temperatureRiseAfter,
  unidirectionalFlow,
  upperConfidenceLimit,
  velocityNonUniformity,
  vortexDecay,
  warmUpTimeConstant,
} from '@cloche/engine';
import { type Adapters, type Given, Unsupported } from '../adapter.js';

const micro = 1e-6;
const litre = 1e-3;

/** The value, or the case is one that the engine refuses. */
const must = <T>(outcome: Outcome<T>): T => {
  if (outcome.ok) return outcome.value;
  throw new Unsupported(outcome.problems.map((p) => p.message).join(' '));
};

const sizeOf = (given: Given) => given.number('particle_size_um') * micro;

const limitOf = (given: Given) => classLimit(given.number('iso_class'), sizeOf(given));

const classLimitCase = (given: Given) => {
  const limit = limitOf(given);
  return limit.ok ? { limit_defined: true, limit_per_m3: limit.value } : { limit_defined: false };
};

const stateOf = (given: Given): OccupancyState => given.text('occupancy_state').replace(' ', '-') as OccupancyState;

const operatingPoint = (given: Given, filterField: string) =>
  must(
    fanOperatingPoint(given.number('fan_shutoff_pressure_Pa'), given.number('fan_coefficient_Pa_s2_per_m6'), {
      linear: given.number(filterField),
      quadratic: given.number('system_coefficient_Pa_s2_per_m6'),
    }),
  );

const lumens = (given: Given) => ({
  flux: given.number('lumens_per_strip_lm'),
  utilisationFactor: given.number('utilisation_factor'),
  maintenanceFactor: given.number('maintenance_factor'),
  area: given.number('area_m2'),
});

const heat = (given: Given) => {
  const wall = given.optionalNumber('wall_UA_W_per_K');
  return {
    heat: given.number('heat_W'),
    flow: given.number('flow_m3_per_s'),
    density: given.number('air_density_kg_per_m3'),
    specificHeat: given.number('specific_heat_J_per_kg_K'),
    ...(wall === undefined ? {} : { wallConductance: wall }),
  };
};

const duct = (given: Given, width: number, height: number) => ({
  width,
  height,
  drive: given.has('pressure_gradient_over_viscosity_per_m_s')
    ? given.number('pressure_gradient_over_viscosity_per_m_s')
    : given.number('pressure_gradient_Pa_per_m') / given.number('dynamic_viscosity_Pa_s'),
});

const ductResults = (d: ReturnType<typeof duct>) => {
  const { mean, frictionReynolds } = must(ductMean(d));
  const centre = must(ductVelocity(d, 0, 0));
  return {
    mean_velocity_m_per_s: mean,
    centre_velocity_m_per_s: centre,
    centre_to_mean: centre / mean,
    darcy_f_times_Re_Dh: frictionReynolds,
  };
};

const counted = (given: Given): number => {
  if (given.has('concentration_per_cm3')) return given.number('concentration_per_cm3') * 1e6;
  if (given.has('concentration_per_L')) return given.number('concentration_per_L') / litre;
  if (given.has('concentration_per_ft3')) return given.number('concentration_per_ft3') / cubicFoot;
  if (given.has('concentration_per_m3')) return given.number('concentration_per_m3');
  const counts = given.number('counts');
  const volume = given.has('sample_volume_ft3')
    ? given.number('sample_volume_ft3') * cubicFoot
    : given.has('sample_volume_L')
      ? given.number('sample_volume_L') * litre
      : given.number('sample_volume_m3');
  return must(countedConcentration(counts, volume));
};

const poisson = (given: Given) => {
  const counts = given.number('counts');
  const volume = given.number('sample_volume_m3');
  const upper = must(poissonUpperLimit(counts)) / volume;
  return {
    mean_per_m3: must(countedConcentration(counts, volume)),
    upper_95_per_m3: upper,
    upper_95_one_sided_per_m3: upper,
  };
};

const counter = (given: Given) => ({ flow: given.number('flow_m3_per_s'), pulseTime: given.number('pulse_time_s') });

const zoneResults = (zone: ReturnType<typeof onceThroughZone>, given: Given) => {
  const found = must(zone);
  return {
    decay_rate_per_s: found.decayRate,
    steady_concentration_per_m3: found.steady,
    concentration_at_time_per_m3: must(
      concentrationAfter(found, given.number('initial_concentration_per_m3'), given.number('time_s')),
    ),
  };
};

const gapOf = (given: Given) => ({
  area: given.number('gap_area_m2'),
  dischargeCoefficient: given.number('discharge_coefficient'),
  density: given.number('air_density_kg_per_m3'),
});

const federal = (given: Given) => {
  const size = sizeOf(given);
  const limit = must(federalLimit(given.number('fs209_class'), size));
  const iso = classLimit(limit.isoClass, size);
  return {
    ...(limit.printedPerCubicFoot === null ? {} : { table_limit_per_ft3: limit.printedPerCubicFoot }),
    formula_limit_per_ft3: limit.perCubicFoot,
    limit_per_m3: limit.perCubicMetre,
    iso_equivalent_class: limit.isoClass,
    ...(iso.ok ? { [`iso_${limit.isoClass}_limit_per_m3`]: iso.value } : {}),
  };
};

const age = (given: Given) => {
  const nominal = must(exhaustAge(given.number('volume_m3'), given.number('flow_m3_per_s')));
  const roomAge = given.optionalNumber('room_mean_age_s');
  const mixing = roomAgeOf.mixing(nominal);
  const piston = roomAgeOf.piston(nominal);
  return {
    mean_age_at_exhaust_s: nominal,
    room_mean_age_perfect_mixing_s: mixing,
    room_mean_age_piston_s: piston,
    air_exchange_efficiency_mixing: must(airExchangeEfficiency(nominal, mixing)),
    air_exchange_efficiency_piston: must(airExchangeEfficiency(nominal, piston)),
    ...(roomAge === undefined ? {} : { air_exchange_efficiency: must(airExchangeEfficiency(nominal, roomAge)) }),
  };
};

export const airAdapters: Adapters = {
  'class limit, integer class': classLimitCase,
  'class limit, intermediate class': classLimitCase,
  'class limit, intermediate particle size': classLimitCase,
  'class limit, excluded cell': classLimitCase,
  'class limit, refused input': classLimitCase,
  'class limit, occupancy state': (given) => ({
    combination_allowed: classStateAllowed(given.number('iso_class'), stateOf(given)).ok,
  }),
  'several sizes: 1.5 ratio rule': (given) => ({
    size_set_allowed: sizesAllowed(given.numbers('particle_sizes_um').map((um) => um * micro)).ok,
  }),
  'best class met by a concentration': (given) => {
    const { whole, decimal } = must(bestClass(given.number('concentration_per_m3'), sizeOf(given)));
    return { smallest_integer_class: whole, smallest_decimal_class: decimal };
  },
  'number of sampling locations (2015)': (given) => ({ locations: must(samplingLocations(given.number('area_m2'))) }),
  'number of sampling locations (1999)': (given) => ({
    locations: must(samplingLocations1999(given.number('area_m2'))),
  }),
  'single sample volume and time': (given) => {
    const limit = must(classLimit(given.number('iso_class'), given.number('largest_particle_size_um') * micro));
    const sample = must(singleSample(limit, (given.number('flow_L_per_min') * litre) / 60));
    return {
      formula_volume_L: sample.formulaVolume / litre,
      minimum_volume_L: sample.leastVolume / litre,
      minimum_time_s: sample.time,
      sampled_volume_L: sample.sampledVolume / litre,
    };
  },
  'evaluation by location averages (2015)': (given) => {
    const limit = must(limitOf(given));
    const found = must(locationAverages(given.any('samples_per_m3') as readonly (readonly number[])[], limit));
    return { location_averages_per_m3: found.averages, passes: found.passes };
  },
  '95 % upper confidence limit (1999)': (given) => {
    const limit = must(limitOf(given));
    const averages = given.numbers('location_averages_per_m3');
    const found = must(upperConfidenceLimit(averages));
    return {
      mean_per_m3: found.mean,
      standard_deviation_per_m3: found.standardDeviation,
      standard_error_per_m3: found.standardError,
      t_factor: found.factor,
      ucl_per_m3: found.limit,
      ucl_with_exact_t_per_m3: found.exactLimit,
      all_averages_pass: must(
        locationAverages(
          averages.map((a) => [a]),
          limit,
        ),
      ).passes,
      ucl_passes: found.limit <= limit,
    };
  },
  'recovery rate': (given) => {
    const rate = must(recoveryRate(given.number('c0_per_m3'), given.number('c1_per_m3'), given.number('interval_s')));
    return {
      recovery_rate_per_s: rate,
      recovery_rate_per_h: rate * 3600,
      time_100_to_1_s: must(hundredToOneTime(rate)),
    };
  },
  'recovery with a non-zero floor': (given) => {
    const first = given.number('c_initial_per_m3');
    const time = given.number('time_s');
    const zone = { decayRate: given.number('rate_per_s'), steady: given.number('c_steady_per_m3') };
    const concentration = must(concentrationAfter(zone, first, time));
    return { concentration_per_m3: concentration, naive_rate_per_s: must(recoveryRate(first, concentration, time)) };
  },
  'well-mixed zone, once-through supply': (given) =>
    zoneResults(
      onceThroughZone({
        volume: given.number('volume_m3'),
        supplyFlow: given.number('supply_flow_m3_per_s'),
        penetration: given.number('filter_penetration'),
        upstream: given.number('upstream_concentration_per_m3'),
        leakFlow: given.number('leak_in_flow_m3_per_s'),
        room: given.number('room_concentration_per_m3'),
        source: given.number('source_per_s'),
        deposition: given.optionalNumber('deposition_rate_per_s') ?? 0,
      }),
      given,
    ),
  'well-mixed zone, recirculating filter': (given) =>
    zoneResults(
      recirculatingZone({
        volume: given.number('volume_m3'),
        recirculatedFlow: given.number('recirculated_flow_m3_per_s'),
        penetration: given.number('filter_penetration'),
        leakFlow: given.number('leak_in_and_out_flow_m3_per_s'),
        room: given.number('room_concentration_per_m3'),
        source: given.number('source_per_s'),
      }),
      given,
    ),
  'clean-air rate needed for a class': (given) => ({
    supply_flow_m3_per_s: must(
      cleanAirFlow(
        given.number('source_per_s'),
        must(limitOf(given)),
        given.number('fraction_of_limit'),
        given.number('supply_concentration_per_m3'),
      ),
    ),
  }),
  'human emission': (given) => ({
    emission_per_min: must(humanEmission(given.text('clothing') as Clothing, sizeOf(given))) * 60,
  }),
  'gap leakage': (given) => {
    const gap = gapOf(given);
    const pressure = given.number('pressure_difference_Pa');
    return {
      jet_velocity_m_per_s: must(gapJetVelocity(pressure, gap.density)),
      flow_m3_per_s: must(gapFlow(gap, pressure)),
    };
  },
  'over-pressure held by a supply flow': (given) => {
    const gap = gapOf(given);
    const flow = given.number('supply_flow_m3_per_s');
    return {
      mean_gap_velocity_m_per_s: must(meanGapVelocity(flow, gap.area)),
      over_pressure_Pa: must(overPressure(gap, flow)),
    };
  },
  'largest gap that still keeps an outward velocity': (given) => {
    const area = must(
      largestGapArea(given.number('supply_flow_m3_per_s'), given.number('minimum_gap_velocity_m_per_s')),
    );
    const perimeter = given.optionalNumber('curtain_perimeter_m');
    return {
      largest_gap_area_m2: area,
      ...(perimeter === undefined ? {} : { largest_floor_gap_m: area / perimeter }),
    };
  },
  'unidirectional flow and unit count': (given) => {
    const area = given.number('clean_plane_length_m') * given.number('clean_plane_width_m');
    const found = must(unidirectionalFlow(area, given.number('velocity_m_per_s'), given.number('unit_flow_m3_per_s')));
    return { flow_m3_per_s: found.flow, unit_count: found.units };
  },
  'velocity band 0.45 m/s +/- 20 %': (given) => ({
    inside_band: given.numbers('velocities_m_per_s').map((v) => must(insideVelocityBand(v))),
  }),
  'velocity mean and non-uniformity': (given) => {
    const found = must(velocityNonUniformity(given.numbers('velocities_m_per_s')));
    return {
      mean_m_per_s: found.mean,
      standard_deviation_m_per_s: found.standardDeviation,
      relative_standard_deviation: found.nonUniformity,
    };
  },
  'air change rate': (given) => {
    const rate = must(airChangeRate(given.number('flow_m3_per_s'), given.number('volume_m3')));
    return { air_changes_per_h: rate * 3600, time_100_to_1_s: must(hundredToOneTime(rate)) };
  },
  'fan and filter operating point': (given) => {
    const { flow, pressure } = operatingPoint(given, 'filter_coefficient_Pa_s_per_m3');
    return {
      flow_m3_per_s: flow,
      filter_pressure_drop_Pa: given.number('filter_coefficient_Pa_s_per_m3') * flow,
      static_pressure_Pa: pressure,
    };
  },
  'flow loss when the filter resistance doubles': (given) => {
    const clean = operatingPoint(given, 'filter_coefficient_clean_Pa_s_per_m3').flow;
    const loaded = operatingPoint(given, 'filter_coefficient_loaded_Pa_s_per_m3').flow;
    return { flow_clean_m3_per_s: clean, flow_loaded_m3_per_s: loaded, flow_ratio: loaded / clean };
  },
  'filter class': (given) => {
    const { integralPenetration, localPenetration } = must(filterData(given.text('class')));
    return {
      integral_penetration: integralPenetration,
      integral_efficiency_percent: 100 * (1 - integralPenetration),
      ...(localPenetration === null
        ? {}
        : { local_penetration: localPenetration, local_efficiency_percent: 100 * (1 - localPenetration) }),
    };
  },
  'concentration behind a filter': (given) => {
    const { integralPenetration, localPenetration } = must(filterData(given.text('class')));
    const upstream = given.number('upstream_concentration_per_m3');
    return {
      downstream_concentration_per_m3_max: must(behindFilters(upstream, [integralPenetration])),
      ...(localPenetration === null
        ? {}
        : { behind_worst_local_leak_per_m3_max: must(behindFilters(upstream, [localPenetration])) }),
    };
  },
  'two filters in series': (given) => ({
    downstream_concentration_per_m3_max: must(
      behindFilters(given.number('upstream_concentration_per_m3'), given.numbers('penetrations')),
    ),
  }),
  'noise level addition': (given) => ({ total_dB: must(soundLevelSum(given.numbers('levels_dB'))) }),
  'noise, distance in the free field': (given) => ({
    level_at_distance_2_dB: must(
      soundLevelAt(given.number('level_dB'), given.number('distance_1_m'), given.number('distance_2_m')),
    ),
  }),
  'noise, room equation': (given) => {
    const constant = must(roomConstant(given.number('room_surface_m2'), given.number('mean_absorption')));
    return {
      room_constant_m2: constant,
      level_dB: must(
        roomSoundLevel(
          given.number('sound_power_level_dB'),
          given.number('directivity_factor'),
          given.number('distance_m'),
          constant,
        ),
      ),
    };
  },
  'noise, background correction': (given) => ({
    source_only_dB: must(soundLevelWithout(given.number('level_with_source_dB'), given.number('background_dB'))),
  }),
  'heat balance': (given) => ({ temperature_rise_K: must(temperatureRise(heat(given))) }),
  'heat balance with wall loss and time constant': (given) => {
    const balance = heat(given);
    const capacity = given.number('heat_capacity_J_per_K');
    return {
      steady_rise_K: must(temperatureRise(balance)),
      time_constant_s: must(warmUpTimeConstant(balance, capacity)),
      rise_at_time_K: must(temperatureRiseAfter(balance, capacity, given.number('time_s'))),
    };
  },
  'thermal expansion drift': (given) => ({
    length_change_m: must(
      expansionDrift(given.number('length_m'), given.number('expansion_per_K'), given.number('temperature_change_K')),
    ),
  }),
  'refractive index of dry air': (given) => {
    const found = must(
      airRefractiveIndex(
        given.number('wavelength_um') * micro,
        given.number('temperature_C') + 273.15,
        given.number('pressure_Pa'),
      ),
    );
    return { n_minus_1: found.refractivity, dn_per_K: found.perKelvin, dn_per_Pa: found.perPascal };
  },
  'beam steering by an air temperature gradient': (given) => {
    const found = must(beamBending(given.number('path_m'), given.number('gradient_K_per_m'), given.number('dn_per_K')));
    return { deflection_rad: found.angle, path_shift_m: found.shift };
  },
  'illuminance, lumen method': (given) => ({
    mean_illuminance_lx: must(meanIlluminance(lumens(given), given.number('strips'))),
  }),
  'illuminance, lumen method: strips needed': (given) => {
    const method = lumens(given);
    const strips = must(stripsNeeded(method, given.number('target_illuminance_lx')));
    return { strips_needed: strips, mean_illuminance_lx: must(meanIlluminance(method, strips)) };
  },
  'illuminance under a Lambertian line source': (given) => {
    const strip = {
      fluxPerLength: given.number('lumens_per_metre_lm_per_m'),
      height: given.number('height_m'),
      lateral: given.number('lateral_offset_m'),
    };
    return {
      illuminance_lx: must(stripIlluminance(strip, given.number('length_m'), given.number('along_from_centre_m'))),
      infinite_line_lx: must(endlessStripIlluminance(strip)),
    };
  },
  'illuminance, point source': (given) => ({
    illuminance_lx: must(
      pointIlluminance(given.number('intensity_cd'), given.number('height_m'), given.number('horizontal_offset_m')),
    ),
  }),
  'illuminance level, laboratory': (given) => ({
    maintained_illuminance_lx: must(maintainedIlluminance(given.text('room'))),
  }),
  'light-tightness': (given) => {
    const found = must(lightAttenuation(given.number('outside_illuminance_lx'), given.number('allowed_inside_lx')));
    return { attenuation_ratio: found.ratio, optical_density: found.opticalDensity };
  },
  'light-tightness through a gap': (given) => {
    const outside = given.number('outside_illuminance_lx');
    const inside = must(
      lightThroughGap(
        {
          outside,
          surface: given.number('inside_surface_m2'),
          reflectance: given.number('inside_mean_reflectance'),
        },
        given.number('gap_area_m2'),
      ),
    );
    return {
      mean_inside_illuminance_lx: inside,
      optical_density: must(lightAttenuation(outside, inside)).opticalDensity,
    };
  },
  'age of air': age,
  'age of air from a tracer decay at the exhaust': (given) => {
    const found = must(ageFromExponentialDecay(given.number('time_constant_s')));
    return {
      mean_age_at_exhaust_s: found.exhaust,
      room_mean_age_s: found.room,
      air_exchange_efficiency: must(airExchangeEfficiency(found.exhaust, found.room)),
    };
  },
  'FED-STD-209E equivalent': federal,
  'FED-STD-209E conversion': federal,
  'counter units': (given) => {
    const perCubicMetre = counted(given);
    return {
      per_m3: perCubicMetre,
      per_ft3: perCubicMetre * cubicFoot,
      per_L: perCubicMetre * litre,
      per_cm3: perCubicMetre * 1e-6,
    };
  },
  'differential to cumulative': (given) => {
    given.ignore('channel_lower_bounds_um');
    const counts = must(cumulativeCounts(given.numbers('differential_counts')));
    const volume = given.number('sample_volume_L') * litre;
    return {
      cumulative_counts: counts,
      cumulative_per_m3: counts.map((n) => must(countedConcentration(n, volume))),
    };
  },
  'zero counts, upper bound': poisson,
  'few counts, upper bound': poisson,
  'coincidence loss': (given) => {
    const found = must(coincidenceReading(counter(given), given.number('true_concentration_per_m3')));
    return { indicated_per_m3: found.indicated, loss_fraction: found.lost };
  },
  'coincidence loss, inverted': (given) => ({
    true_per_m3: must(coincidenceCorrected(counter(given), given.number('indicated_concentration_per_m3'))),
  }),
  'square duct, fully developed laminar': (given) => {
    const side = given.number('side_m');
    return ductResults(duct(given, side, side));
  },
  'rectangular duct 2:1, fully developed laminar': (given) =>
    ductResults(duct(given, given.number('width_m'), given.number('height_m'))),
  'square duct, velocity off centre': (given) => {
    const side = given.number('side_m');
    const d = duct(given, side, side);
    const u = must(ductVelocity(d, given.number('y_from_centre_m'), given.number('z_from_centre_m')));
    return { velocity_m_per_s: u, ratio_to_centre: u / must(ductVelocity(d, 0, 0)) };
  },
  'plane Poiseuille flow': (given) => {
    const found = must(
      plateFlow(
        given.number('gap_m'),
        given.number('pressure_gradient_Pa_per_m') / given.number('dynamic_viscosity_Pa_s'),
      ),
    );
    return { maximum_velocity_m_per_s: found.maximum, mean_velocity_m_per_s: found.mean };
  },
  'Taylor-Green vortex decay': (given) => {
    given.ignore('box_m');
    const found = must(
      vortexDecay(
        given.number('wave_number_per_m'),
        given.number('kinematic_viscosity_m2_per_s'),
        given.number('time_s'),
      ),
    );
    return { velocity_amplitude_ratio: found.velocity, kinetic_energy_ratio: found.energy };
  },
  'Annex 20 two-dimensional case, boundary data': (given) => {
    const found = must(
      benchmarkRoomBoundary({
        height: given.number('room_height_m'),
        inlet: given.number('h_over_H'),
        outlet: given.number('t_over_H'),
        length: given.number('L_over_H'),
        reynolds: given.number('reynolds_inlet'),
        viscosity: given.number('kinematic_viscosity_m2_per_s'),
        turbulenceIntensity: given.number('turbulence_intensity'),
      }),
    );
    return {
      inlet_height_m: found.inletHeight,
      outlet_height_m: found.outletHeight,
      room_length_m: found.roomLength,
      inlet_velocity_m_per_s: found.inletVelocity,
      inlet_k_m2_per_s2: found.turbulentEnergy,
      inlet_epsilon_m2_per_s3: found.dissipation,
    };
  },
};
