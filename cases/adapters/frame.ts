import {
  baseTransmissibility,
  boltPreload,
  boxThinWallTorsion,
  circularHollowSection,
  combinedStress,
  ellipseSection,
  footLoads,
  groovePanel,
  memberBuckling,
  type Outcome,
  outlineTorsionConstant,
  rectangularHollowSection,
  type SectionOutline,
  sectionProperties,
  thermalGrowth,
  tipOver,
  tubeThinWallTorsion,
} from '@cloche/engine';
import { type Adapter, type Adapters, type Given, Unsupported } from '../adapter.js';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

/** The value, or the engine's refusal as the reason why the case is not supported. */
function need<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Unsupported(outcome.problems.map((p) => p.message).join(' '));
}

type Points = readonly (readonly [number, number])[];

function drawnSection(given: Given, wanted: ReadonlySet<string>): Record<string, number> {
  const outline: SectionOutline = {
    outer: given.any('outer_m') as Points,
    holes: (given.any('holes_m') as readonly Points[] | undefined) ?? [],
  };
  const s = need(sectionProperties(outline));
  return {
    A_m2: s.area,
    cx_m: s.centroid[0],
    cy_m: s.centroid[1],
    Ix_m4: s.ix,
    Iy_m4: s.iy,
    Ixy_m4: s.ixy,
    I1_m4: s.i1,
    I2_m4: s.i2,
    theta_deg: degrees(s.theta),
    Wx_m3: s.wx,
    Wy_m3: s.wy,
    ix_m: s.radiusX,
    iy_m: s.radiusY,
    perimeter_m: s.perimeter,
    ...(wanted.has('J_m4') ? { J_m4: need(outlineTorsionConstant(outline)) } : {}),
  };
}

const shapes: Readonly<Record<string, (given: Given) => Record<string, number>>> = {
  ellipse: (given) => {
    const s = need(
      ellipseSection(given.number('a_m'), given.number('b_m'), given.optionalNumber('inner_over_outer') ?? 0),
    );
    return {
      A_m2: s.area,
      Ix_m4: s.ix,
      Iy_m4: s.iy,
      Ixy_m4: 0,
      Wx_m3: s.wx,
      Wy_m3: s.wy,
      J_m4: s.torsionConstant,
    };
  },
  'circular hollow': (given) => {
    const s = need(circularHollowSection(given.number('D_m'), given.number('t_m')));
    return {
      A_m2: s.area,
      Ix_m4: s.ix,
      Iy_m4: s.iy,
      Ixy_m4: 0,
      Wx_m3: s.wx,
      Wy_m3: s.wy,
      J_m4: s.torsionConstant,
      It_m4: s.torsionConstant,
      Ct_m3: s.torsionModulus,
    };
  },
  'rectangular hollow': (given) => {
    const method = given.optionalText('method') ?? 'standard formula';
    if (method !== 'standard formula') throw new Unsupported(`method ${method} needs finite elements`);
    const s = need(
      rectangularHollowSection({
        height: given.number('H_m'),
        width: given.number('B_m'),
        thickness: given.number('T_m'),
        outerRadius: given.number('Ro_m'),
        innerRadius: given.number('Ri_m'),
      }),
    );
    return {
      A_m2: s.area,
      Ix_m4: s.ix,
      Iy_m4: s.iy,
      Ixy_m4: 0,
      Wx_m3: s.wx,
      Wy_m3: s.wy,
      It_m4: s.torsionConstant,
      Ct_m3: s.torsionModulus,
    };
  },
};

const section: Adapter = (given, wanted) => {
  if (given.has('outer_m')) return drawnSection(given, wanted);
  const shape = given.text('shape');
  const known = shapes[shape];
  if (!known) throw new Unsupported(`shape ${shape} is not known`);
  return known(given);
};

const thinWall: Adapter = (given) => {
  const shape = given.text('shape');
  if (shape === 'circular tube, thin-wall theory') {
    const s = need(tubeThinWallTorsion(given.number('D_m'), given.number('t_m')));
    return { J_m4: s.constant, tau_for_1Nm_Pa: 1 / s.modulus };
  }
  if (shape === 'single-cell box, thin-wall Bredt') {
    const s = need(
      boxThinWallTorsion({
        width: given.number('B_m'),
        height: given.number('H_m'),
        flange: given.number('t_flange_m'),
        web: given.number('t_web_m'),
      }),
    );
    return { J_m4: s.constant, tau_for_1Nm_in_web_Pa: s.webStress, tau_for_1Nm_in_flange_Pa: s.flangeStress };
  }
  throw new Unsupported(`shape ${shape} is not known`);
};

const tipping: Adapter = (given) => {
  const tilt = given.number('tilt_deg');
  const body = {
    mass: given.number('mass_kg'),
    lever: given.number('lever_to_edge_m'),
    height: given.number('cg_height_m'),
    push: given.number('horizontal_force_N'),
    pushHeight: given.number('force_height_m'),
    tilt: (tilt * Math.PI) / 180,
  };
  const t = need(tipOver(body));
  return {
    tilt_angle_at_tipping_deg: degrees(t.tippingAngle),
    force_to_tip_N: t.forceToTip,
    safety_factor_push: t.pushFactor,
    [`lever_at_${tilt}deg_tilt_m`]: t.leverTilted,
    [`stable_at_${tilt}deg`]: t.stableTilted,
  };
};

const feet: Adapter = (given) => {
  const [x, y] = given.numbers('cg_m');
  const found = need(footLoads(given.any('feet_m') as Points, given.number('mass_kg'), [x!, y!]));
  return {
    reactions_N: found.reactions,
    required_rating_three_of_four_kg: found.massWithoutOne,
    stable: found.stable,
  };
};

const buckling: Adapter = (given) => {
  const b = need(
    memberBuckling({
      elasticity: given.number('E_Pa'),
      proofStrength: given.number('f0_Pa'),
      bucklingLength: given.number('Lcr_m'),
      secondMoment: given.number('I_m4'),
      area: given.number('A_m2'),
      imperfection: given.number('alpha'),
      limitSlenderness: given.number('lambda0'),
      partialFactor: given.number('gamma_M1'),
      weldFactor: given.optionalNumber('kappa') ?? 1,
    }),
  );
  return { Ncr_N: b.eulerLoad, lambda_bar: b.relativeSlenderness, chi: b.reduction, NbRd_N: b.resistance };
};

const stress: Adapter = (given) => {
  const s = need(
    combinedStress({
      axial: given.number('N_N'),
      momentY: given.number('My_Nm'),
      momentZ: given.number('Mz_Nm'),
      torque: given.number('T_Nm'),
      area: given.number('A_m2'),
      modulusY: given.number('Wy_m3'),
      modulusZ: given.number('Wz_m3'),
      torsionModulus: given.number('Wt_m3'),
      proofStrength: given.number('f0_Pa'),
      factor: given.number('gamma_M1'),
    }),
  );
  return { sigma_Pa: s.normal, tau_Pa: s.shear, von_mises_Pa: s.vonMises, utilisation: s.utilisation };
};

const bolt: Adapter = (given) => {
  const b = need(
    boltPreload({
      diameter: given.number('d_m'),
      torque: given.number('torque_Nm'),
      nutFactor: given.number('nut_factor'),
      friction: given.number('friction'),
      interfaces: given.number('n_interfaces'),
    }),
  );
  return { preload_N: b.preload, slip_N: b.slip };
};

const panel: Adapter = (given) => {
  const p = need(
    groovePanel({
      clearOpening: given.number('clear_opening_m'),
      grooveDepth: given.number('groove_depth_m'),
      endClearance: given.number('end_clearance_m'),
      temperatureChange: given.number('dT_K'),
      panelExpansion: given.number('alpha_panel_1_K'),
      frameExpansion: given.number('alpha_frame_1_K'),
    }),
  );
  return {
    cut_size_m: p.cutSize,
    engagement_each_side_m: p.engagement,
    growth_relative_m: p.relativeGrowth,
    min_engagement_if_pushed_to_one_side_m: p.leastEngagement,
  };
};

const thermal: Adapter = (given) => {
  const t = need(
    thermalGrowth({
      length: given.number('L_m'),
      temperatureChange: given.number('dT_K'),
      expansion: given.number('alpha_1_K'),
      elasticity: given.number('E_Pa'),
    }),
  );
  return { growth_m: t.growth, restrained_stress_Pa: t.restrainedStress };
};

const vibration: Adapter = (given) => {
  const v = need(
    baseTransmissibility({
      frequency: given.number('f_Hz'),
      naturalFrequency: given.number('fn_Hz'),
      damping: given.number('damping_ratio'),
    }),
  );
  return { transmissibility: v.ratio, static_sag_for_fn_m: v.staticSag };
};

export const frameAdapters: Adapters = {
  section,
  'section torsion (thin wall)': thinWall,
  'tip-over': tipping,
  'caster and foot loads': feet,
  'member buckling check': buckling,
  'stress check': stress,
  'bolt preload and slip': bolt,
  'panel cut size': panel,
  'thermal expansion': thermal,
  'vibration transmissibility': vibration,
};
