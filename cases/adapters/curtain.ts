import {
  cheapestSupports,
  cornerGeometry,
  curtainDrop,
  fewestSupports,
  type Outcome,
  overlapRay,
  type PanelAim,
  panelWidthBand,
  runnersOf,
  selectPanels,
  supportLoads,
  supportWindows,
  type TrackAim,
  trackPieces,
} from '@cloche/engine';
import { type Adapter, type Adapters, type Given, Unsupported } from '../adapter.js';

const degrees = (radians: number): number => (radians * 180) / Math.PI;

function valueOrUnsupported<T>(outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Unsupported(outcome.problems.map((p) => p.message).join(' '));
}

function records(given: Given, name: string): readonly Readonly<Record<string, unknown>>[] {
  const value = given.any(name) ?? [];
  if (!Array.isArray(value)) throw new Unsupported(`field ${name} is no list`);
  return value;
}

function numberOf(record: Readonly<Record<string, unknown>>, name: string): number {
  const value = record[name];
  if (typeof value !== 'number') throw new Unsupported(`field ${name} is missing`);
  return value;
}

/** Words of an objective like `min price, then joints, then off-cut` in their order. */
function aims<A extends string>(text: string, words: Readonly<Record<string, A>>): A[] {
  return text.split(',').map((part) => {
    const word = part.replace(/^\s*(?:then\s+)?(?:(?:min|minimum|least|fewest|lowest|shortest)\s+)?/, '').trim();
    const aim = words[word];
    if (aim === undefined) throw new Unsupported(`objective "${part.trim()}" is not known`);
    return aim;
  });
}

const stockOf = (given: Given, size: string) =>
  records(given, 'stock').map((s) => ({ length: numberOf(s, size), price: numberOf(s, 'price') }));

function supportDemand(given: Given) {
  const length = given.number('track_length_m');
  const optional = (name: string) => (given.has(name) ? given.numbers(name) : []);
  const forbidden = given.has('forbidden_open_intervals_m') ? given.any('forbidden_open_intervals_m') : [];
  if (!Array.isArray(forbidden)) throw new Unsupported('field forbidden_open_intervals_m is no list');
  const windows = supportWindows({
    length,
    endDistance: given.number('end_distance_max_m'),
    joints: optional('joints_at_m'),
    jointDistance: given.optionalNumber('joint_support_within_m') ?? 0,
    required: optional('required_support_at_m'),
  });
  return {
    length,
    spacing: given.number('max_spacing_m'),
    windows: valueOrUnsupported(windows),
    forbidden: (forbidden as [number, number][]).map(([from, to]) => ({ from, to })),
  };
}

const isInfeasible = (outcome: Outcome<unknown>): boolean =>
  !outcome.ok && outcome.problems.every((p) => p.code === 'curtain/no-support-place');

const supportPlacement: Adapter = (given) => {
  const found = fewestSupports(supportDemand(given));
  if (isInfeasible(found)) return { feasible: false, min_supports: null, positions_m: null };
  const places = valueOrUnsupported(found);
  return { feasible: true, min_supports: places.length, positions_m: places };
};

const pricedSupports: Adapter = (given) => {
  const candidates = records(given, 'candidates').map((c) => ({
    at: numberOf(c, 'at_m'),
    price: numberOf(c, 'price'),
  }));
  const found = cheapestSupports(candidates, supportDemand(given));
  if (isInfeasible(found)) return { feasible: false, min_price: null, example_positions_m: null, optimal_sets: 0 };
  const { price, places, choices } = valueOrUnsupported(found);
  return { feasible: true, min_price: price, example_positions_m: places, optimal_sets: choices };
};

const bandOf = (given: Given) => ({ extraLow: given.number('extra_low'), extraHigh: given.number('extra_high') });

const panelRule: Adapter = (given) => {
  const { least, most } = valueOrUnsupported(panelWidthBand(given.number('track_length_m'), bandOf(given)));
  return { min_total_width_m: least, max_total_width_m: most };
};

const panelWords: Readonly<Record<string, PanelAim>> = {
  price: 'price',
  panels: 'panels',
  seams: 'panels',
  'total width': 'width',
  width: 'width',
};

const panelSelection: Adapter = (given) => {
  const selection = valueOrUnsupported(
    selectPanels({
      length: given.number('track_length_m'),
      ...bandOf(given),
      stock: stockOf(given, 'width_m'),
      jointLoss: given.optionalNumber('joint_loss_m') ?? 0,
      aims: aims(given.text('objective'), panelWords),
    }),
  );
  const nearest = {
    nearest_total_below_m: selection.below?.totalWidth ?? null,
    nearest_total_above_m: selection.above?.totalWidth ?? null,
  };
  const { choice } = selection;
  if (!choice)
    return { feasible: false, price: null, panels: null, seams: null, counts: null, total_width_m: null, ...nearest };
  return {
    feasible: true,
    price: choice.price,
    panels: choice.panels,
    seams: choice.seams,
    counts: choice.counts,
    total_width_m: choice.totalWidth,
    ...nearest,
  };
};

const trackWords: Readonly<Record<string, TrackAim>> = {
  price: 'price',
  joints: 'joints',
  pieces: 'joints',
  cuts: 'cuts',
  'off-cut': 'off-cut',
  offcut: 'off-cut',
};

const trackSplit: Adapter = (given) => {
  const found = trackPieces({
    length: given.number('segment_length_m'),
    stock: stockOf(given, 'length_m'),
    shortestPiece: given.number('min_piece_m'),
    aims: aims(given.text('objective'), trackWords),
  });
  if (!found.ok && found.problems.every((p) => p.code === 'curtain/no-split')) return { feasible: false, price: null };
  const { price, joints, cuts, offcut, stockPieces, pieces } = valueOrUnsupported(found);
  return { feasible: true, price, joints, cuts, offcut_m: offcut, stock_pieces_m: stockPieces, pieces_m: pieces };
};

const corner: Adapter = (given) => {
  const legs = given.optionalText('legs');
  if (legs !== undefined && !legs.includes('theoretical corner')) throw new Unsupported(`legs "${legs}"`);
  const found = cornerGeometry({
    legA: given.number('leg_a_m'),
    legB: given.number('leg_b_m'),
    radius: given.number('bend_radius_centreline_m'),
    angle: (given.number('bend_angle_deg') * Math.PI) / 180,
  });
  const { straightA, straightB, bend, path, saving } = valueOrUnsupported(found);
  return {
    straight_a_m: straightA,
    straight_b_m: straightB,
    bend_length_m: bend,
    path_length_m: path,
    saving_against_sharp_corner_m: saving,
  };
};

const stack: Adapter = (given) => {
  const found = runnersOf({
    width: given.number('panel_width_m'),
    pitch: given.number('max_runner_pitch_m'),
    runnerLength: given.number('runner_length_m'),
    thickness: given.number('fabric_thickness_m'),
    endStop: given.number('end_stop_length_m'),
  });
  const { runners, gaps, pitch, stackBack } = valueOrUnsupported(found);
  return { runners, gap_count: gaps, actual_pitch_m: pitch, stack_back_m: stackBack };
};

const drop: Adapter = (given) => {
  const found = curtainDrop({
    underside: given.number('track_underside_height_m'),
    runnerDrop: given.number('runner_drop_m'),
    hemGap: given.number('floor_gap_m'),
    floorFall: given.optionalNumber('floor_fall_over_run_m') ?? 0,
  });
  const value = valueOrUnsupported(found);
  return { curtain_length_m: value.drop, floor_gap_at_low_end_m: value.lowGap };
};

const beam: Adapter = (given) => {
  const ends = given.optionalText('ends');
  if (ends !== undefined && !/free overhang.*pull both ways/.test(ends)) throw new Unsupported(`ends "${ends}"`);
  const found = supportLoads({
    length: given.number('track_length_m'),
    supports: given.numbers('supports_at_m'),
    uniform: records(given, 'uniform_loads').map((u) => ({
      from: numberOf(u, 'from_m'),
      to: numberOf(u, 'to_m'),
      load: numberOf(u, 'load_n_per_m'),
    })),
    points: records(given, 'point_loads').map((p) => ({ at: numberOf(p, 'at_m'), load: numberOf(p, 'load_n') })),
  });
  const { reactions } = valueOrUnsupported(found);
  return { reactions_n: reactions, max_reaction_n: Math.max(...reactions) };
};

const overlap: Adapter = (given) => {
  const found = valueOrUnsupported(overlapRay(given.number('overlap_m'), given.number('layer_spacing_m')));
  return {
    min_ray_angle_from_normal_deg: degrees(found.fromNormal),
    max_ray_angle_from_curtain_plane_deg: degrees(found.fromPlane),
  };
};

export const curtainAdapters: Adapters = {
  'support placement': supportPlacement,
  'support placement (priced candidates)': pricedSupports,
  'panel width rule': panelRule,
  'panel selection': panelSelection,
  'track pieces from stock': trackSplit,
  'corner geometry': corner,
  'runner count and stack-back': stack,
  'drop length': drop,
  'support loads (continuous beam)': beam,
  'overlap at an opening': overlap,
};
