import { coveredLength, runnerCount } from '../curtain/index.js';
import { lightCautions, runnerRuleSource, wayCautions } from '../curtain/tables.js';
import type { DesignRun, DesignTable } from '../design/types.js';
import { type CalculationStep, calculation, fromStep, val } from '../floor/calculation.js';
import type { Finding } from '../floor/finding.js';
import { boundaryDistance, contains } from '../floor/geometry/polygon.js';
import { millimetreText, numberText } from '../floor/number-text.js';
import { commonPractice, geometrySource, source } from '../floor/source.js';
import type { RuleId } from '../rules/known.js';
import { ruleNumber } from '../rules/schema.js';
import { assessed, notAssessed, type RunFacts } from './curtain-facts.js';

const mm = (metres: number, name: string, origin: string) => val(metres * 1000, 'mm', name, origin);
const nothing = 1e-6;

/** Ends of a stretch at which its panels lap over others: all but the open ends of the track. */
function laps(run: DesignRun, stretch: DesignRun['stretches'][number]): number {
  if (run.closed) return 2;
  return (stretch.from > nothing ? 1 : 0) + (stretch.to < run.pathLength - nothing ? 1 : 0);
}

/** Extra width of the panels of each stretch against the band that the rules ask for: its distance from the middle of the band. */
export function fullnessFindings({ context, run }: RunFacts): Finding[] {
  const low = ruleNumber(context.rules, 'curtain.fullness-low');
  const high = ruleNumber(context.rules, 'curtain.fullness-high');
  const overlap = ruleNumber(context.rules, 'curtain.overlap');
  const band = `${numberText(low * 100)} % to ${numberText(high * 100)} %`;
  return run.stretches.map((stretch, i) => {
    const n = laps(run, stretch);
    const covered = coveredLength(stretch.to - stretch.from, n, overlap);
    const extra = stretch.flatWidth / covered - 1;
    const percent = numberText(extra * 100);
    const common = {
      id: `curtain/fullness/${run.id}/${i + 1}`,
      subject: run.id,
      rule: (extra < (low + high) / 2 ? 'curtain.fullness-low' : 'curtain.fullness-high') as RuleId,
      requirement: `Panels ${band} wider than the track that they cover.`,
      source: commonPractice,
      decider: 'group' as const,
      cautions: lightCautions,
      at: run.line[0],
    };
    if (!(high > low))
      return notAssessed(context, {
        ...common,
        message: `Not assessed: the rules allow ${band} extra width, which leaves no band to be in.`,
      });
    const track: CalculationStep = {
      symbol: 'L',
      name: 'track covered, laps included',
      expression: 'b - a + n * v / 2',
      values: {
        a: mm(stretch.from, 'start of the stretch', 'design'),
        b: mm(stretch.to, 'end of the stretch', 'design'),
        n: val(n, '1', 'ends that lap'),
        v: mm(overlap, 'overlap', 'rule curtain.overlap'),
      },
      result: covered * 1000,
      unit: 'mm',
      source: geometrySource,
    };
    const width: CalculationStep = {
      symbol: 'x',
      name: 'extra width',
      expression: 'b / L - 1',
      values: { b: mm(stretch.flatWidth, 'flat width of the panels, joints taken off', 'design'), L: fromStep(track) },
      result: extra,
      unit: '1',
      source: geometrySource,
    };
    const half = (high - low) / 2;
    const off = Math.abs(extra - (low + high) / 2);
    const use: CalculationStep = {
      symbol: 'u',
      name: 'distance from the middle of the band over half the band',
      expression: 'abs(x - (low + high) / 2) / ((high - low) / 2)',
      values: {
        x: fromStep(width),
        low: val(low, '1', 'least extra width', 'rule curtain.fullness-low'),
        high: val(high, '1', 'largest extra width', 'rule curtain.fullness-high'),
      },
      // Both ends of the band belong to it; rounding of sums must not push a width off its end.
      result: Math.abs(off / half - 1) < 1e-6 ? 1 : off / half,
      unit: '1',
      source: commonPractice,
    };
    return assessed(
      context,
      {
        ...common,
        message: stretch.fits
          ? `The panels of stretch ${i + 1} of ${run.name} are ${percent} % wider than their track; ${band} are asked for.`
          : `No standard panels fit stretch ${i + 1} of ${run.name}: the nearest are ${percent} % wider than their track, where ${band} are asked for. Order a panel made to measure, or move an opening.`,
      },
      {
        demand: off,
        capacity: half,
        unit: '1',
        calculation: calculation('Fullness', [track, width, use], { cautions: lightCautions }),
      },
    );
  });
}

/** Open height under a laser barrier at the low point of the floor. */
export function hemFinding({ context, run, cloth }: RunFacts): Finding[] {
  if (cloth.purpose !== 'laser barrier') return [];
  const fall = run.hung === 'shelf' ? 0 : (context.brief.room.floor?.fall ?? 0);
  const limit = ruleNumber(context.rules, 'curtain.hem-gap-most');
  const gap: CalculationStep = {
    symbol: 'h',
    name: 'largest open height under the curtain',
    expression: 'g + f',
    values: { g: mm(run.hemGap, 'hem gap', 'design'), f: mm(fall, 'fall of the floor', 'brief') },
    result: (run.hemGap + fall) * 1000,
    unit: 'mm',
    source: geometrySource,
  };
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'h / limit',
    values: { h: fromStep(gap), limit: mm(limit, 'largest hem gap', 'rule curtain.hem-gap-most') },
    result: (run.hemGap + fall) / limit,
    unit: '1',
    source: geometrySource,
  };
  return [
    assessed(
      context,
      {
        id: `curtain/hem-gap/${run.id}`,
        subject: run.id,
        rule: 'curtain.hem-gap-most',
        requirement: `Open height under a laser barrier at most ${millimetreText(limit)}.`,
        message: `Under ${run.name} up to ${millimetreText(run.hemGap + fall)} stay open${fall > 0 ? ` where the floor is ${millimetreText(fall)} lower` : ''}; ${millimetreText(limit)} are allowed.`,
        source: context.rules.byId['curtain.hem-gap-most'].source,
        decider: 'laser safety officer',
        cautions: lightCautions,
        at: run.line[0],
      },
      {
        demand: run.hemGap + fall,
        capacity: limit,
        unit: 'm',
        calculation: calculation('Gap under the curtain', [gap, use], {
          assumptions: ['Whether light leaves through the gap is a question of sightlines, checked elsewhere.'],
          cautions: lightCautions,
        }),
      },
    ),
  ];
}

/** Distance from a track line to a table; 0 where the line crosses or lies over it. */
function distanceTo(run: DesignRun, table: DesignTable) {
  const over = run.line.find((p) => contains(table.outline, p));
  if (over) return { distance: 0, at: over };
  let best = { distance: Number.POSITIVE_INFINITY, at: run.line[0]! };
  for (let i = 1; i < run.line.length; i++) {
    const found = boundaryDistance([run.line[i - 1]!, run.line[i]!], table.outline);
    if (found.distance < best.distance) best = { distance: found.distance, at: found.a };
  }
  return best;
}

/** Curtain to the nearest table edge, so that it cannot sweep over the optics. */
export function tableFinding({ context, run }: RunFacts): Finding[] {
  const tables = context.design.tables.filter((t) => t.id !== run.on);
  if (tables.length === 0) return [];
  const near = tables
    .map((table) => ({ table, ...distanceTo(run, table) }))
    .reduce((a, b) => (b.distance < a.distance ? b : a));
  const limit = ruleNumber(context.rules, 'curtain.to-table');
  const least = 1e-3;
  const shown = Math.max(near.distance, least);
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'limit / d',
    values: {
      limit: mm(limit, 'least distance', 'rule curtain.to-table'),
      d: mm(
        shown,
        near.distance < least ? 'distance to the table edge: touching, counted as 1 mm' : 'distance to the table edge',
        'design',
      ),
    },
    result: limit / shown,
    unit: '1',
    source: geometrySource,
  };
  const short = limit - near.distance;
  return [
    assessed(
      context,
      {
        id: `curtain/table-distance/${run.id}`,
        subject: run.id,
        rule: 'curtain.to-table',
        requirement: `Curtain at least ${millimetreText(limit)} from every table edge.`,
        message:
          near.distance <= nothing
            ? `${run.name} runs across ${near.table.name}.`
            : short > nothing
              ? `${run.name} is ${millimetreText(short)} too close to ${near.table.name}: ${millimetreText(near.distance)} instead of ${millimetreText(limit)}.`
              : `${run.name} keeps ${millimetreText(near.distance)} to ${near.table.name}; ${millimetreText(limit)} are asked for.`,
        source: context.rules.byId['curtain.to-table'].source,
        decider: 'group',
        at: near.at,
      },
      { demand: limit, capacity: near.distance, unit: 'm', calculation: calculation('Distance to the table', [use]) },
    ),
  ];
}

/** Heaviest load of one runner: a full pitch of the panel that weighs most for its runners. */
export function runnerFinding({ context, run, parts, runner, hanging }: RunFacts): Finding[] {
  if (!runner) return [];
  const panels = parts.filter((p) => p.role === 'curtain panel');
  if (panels.length === 0 || hanging.length === 0) return [];
  const hem = parts.find((p) => p.role === 'hem weight');
  const hemPerLength = hem?.length ? hem.mass / hem.length : 0;
  const heaviest = panels
    .map((panel) => {
      const width = panel.width ?? 0;
      return { panel, mass: panel.mass + hemPerLength * width, gaps: runnerCount(width, runner.pitch) - 1 };
    })
    .reduce((a, b) => (b.mass / b.gaps > a.mass / a.gaps ? b : a));
  const load: CalculationStep = {
    symbol: 'm',
    name: 'mass on one runner between the edges',
    expression: 'M / n',
    values: {
      M: val(heaviest.mass, 'kg', 'panel with its hem', 'design'),
      n: val(heaviest.gaps, '1', 'gaps between runners', 'design'),
    },
    result: heaviest.mass / heaviest.gaps,
    unit: 'kg',
    source: runnerRuleSource,
  };
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'm / C',
    values: { m: fromStep(load), C: val(runner.capacity, 'kg', 'capacity of a runner', `catalogue ${runner.id}`) },
    result: load.result / runner.capacity,
    unit: '1',
    source: source('catalogue', 'entered'),
  };
  return [
    assessed(
      context,
      {
        id: `curtain/runner-load/${run.id}`,
        subject: run.id,
        required: true,
        requirement: `At most ${numberText(runner.capacity)} kg on each runner.`,
        message: `A runner of ${run.name} carries up to ${numberText(load.result)} kg; it may carry ${numberText(runner.capacity)} kg.`,
        source: runnerRuleSource,
        decider: 'facilities',
        at: run.line[0],
      },
      {
        demand: load.result,
        capacity: runner.capacity,
        unit: 'kg',
        calculation: calculation('Load on a runner', [load, use]),
      },
    ),
  ];
}

/** Stretches that end and start at a place of the track. */
function besides(run: DesignRun, at: number): readonly [number, number] | null {
  const meets = (a: number) =>
    Math.abs(a - at) < nothing || (run.closed && Math.abs(Math.abs(a - at) - run.pathLength) < nothing);
  const before = run.stretches.findIndex((s) => meets(s.to));
  const after = run.stretches.findIndex((s) => meets(s.from));
  return before >= 0 && after >= 0 ? [before, after] : null;
}

/** At every opening: do the panels lap, and is there track to push them clear of it? */
export function openingFindings(facts: RunFacts): Finding[] {
  return facts.run.openings.flatMap((_, i) => [...overlapFinding(facts, i), ...parkingFinding(facts, i)]);
}

function overlapFinding({ context, run }: RunFacts, index: number): Finding[] {
  const opening = run.openings[index]!;
  const pair = besides(run, opening.at);
  if (!pair) return [];
  const asked = ruleNumber(context.rules, 'curtain.overlap');
  const side = (i: number) => {
    const stretch = run.stretches[i]!;
    const n = laps(run, stretch);
    return { flat: stretch.flatWidth, covered: coveredLength(stretch.to - stretch.from, n, asked), n };
  };
  const [a, b] = [side(pair[0]), side(pair[1])];
  const lap: CalculationStep = {
    symbol: 'v',
    name: 'lap of the panels when pulled flat',
    expression: 'v_0 + (b_1 - L_1) / n_1 + (b_2 - L_2) / n_2',
    values: {
      v_0: mm(asked, 'overlap that the panels were chosen for', 'rule curtain.overlap'),
      b_1: mm(a.flat, 'flat width before the opening', 'design'),
      L_1: mm(a.covered, 'covered track before', 'design'),
      n_1: val(a.n, '1', 'laps before'),
      b_2: mm(b.flat, 'flat width after the opening', 'design'),
      L_2: mm(b.covered, 'covered track after', 'design'),
      n_2: val(b.n, '1', 'laps after'),
    },
    result: (asked + (a.flat - a.covered) / a.n + (b.flat - b.covered) / b.n) * 1000,
    unit: 'mm',
    source: geometrySource,
  };
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: 'v_min / max(v, 1)',
    values: { v_min: mm(asked, 'least overlap', 'rule curtain.overlap'), v: fromStep(lap) },
    result: (asked * 1000) / Math.max(lap.result, 1),
    unit: '1',
    source: geometrySource,
  };
  return [
    assessed(
      context,
      {
        id: `curtain/overlap/${run.id}/${index + 1}`,
        subject: run.id,
        rule: 'curtain.overlap',
        requirement: `Panels lap by at least ${millimetreText(asked)} at an opening.`,
        message: `At the opening at ${millimetreText(opening.at)} of ${run.name} the panels can lap by ${millimetreText(lap.result / 1000)}; ${millimetreText(asked)} are asked for.`,
        source: context.rules.byId['curtain.overlap'].source,
        decider: 'laser safety officer',
        cautions: lightCautions,
      },
      {
        demand: asked,
        capacity: lap.result / 1000,
        unit: 'm',
        calculation: calculation('Overlap at an opening', [lap, use], { cautions: lightCautions }),
      },
    ),
  ];
}

/** Track taken by half the opening and the pushed-together panels, against the stretch; by the whole opening where one stretch lies on both sides. */
function parkingFinding({ context, run, hanging }: RunFacts, index: number): Finding[] {
  const opening = run.openings[index]!;
  const pair = besides(run, opening.at);
  if (!pair) return [];
  const openShare = pair[0] === pair[1] ? 1 : 0.5;
  const worst = pair
    .map((i) => ({ stack: hanging[i]!.stack, length: run.stretches[i]!.to - run.stretches[i]!.from }))
    .map((s) => ({ ...s, use: (openShare * opening.width + s.stack) / s.length }))
    .reduce((a, b) => (b.use > a.use ? b : a));
  const use: CalculationStep = {
    symbol: 'u',
    name: 'utilisation',
    expression: '(k * w + s) / l',
    values: {
      k: val(openShare, '1', 'share of the opening on this stretch'),
      w: mm(opening.width, 'free width of the opening', 'brief'),
      s: mm(worst.stack, 'stack-back of the stretch', 'design'),
      l: mm(worst.length, 'length of the stretch', 'design'),
    },
    result: worst.use,
    unit: '1',
    source: runnerRuleSource,
  };
  const need = openShare * opening.width + worst.stack;
  return [
    assessed(
      context,
      {
        id: `curtain/stack-back/${run.id}/${index + 1}`,
        subject: run.id,
        required: true,
        requirement: `The panels park clear of the opening of ${millimetreText(opening.width)}.`,
        message: `To free the opening at ${millimetreText(opening.at)} of ${run.name}, ${millimetreText(need)} of track are needed beside it; the stretch has ${millimetreText(worst.length)}.`,
        source: runnerRuleSource,
        decider: 'group',
        cautions: wayCautions,
      },
      {
        demand: need,
        capacity: worst.length,
        unit: 'm',
        calculation: calculation('Stack-back beside an opening', [use], { cautions: wayCautions }),
      },
    ),
  ];
}

/** Whether the fire behaviour of the cloth is accepted is never decided here; without data there is nothing to decide on. */
export function fireFinding({ context, run, cloth }: RunFacts): Finding {
  const stated = [cloth.fireClass, cloth.fireTest].filter((t): t is string => t !== undefined);
  return notAssessed(context, {
    id: `curtain/fire/${run.id}`,
    subject: run.id,
    requirement: 'Fire behaviour of the cloth accepted for this room.',
    message:
      stated.length > 0
        ? `Not assessed: ${cloth.name} states ${stated.join('; ')}. Whether that is accepted here is for the fire authority; ask for the report with its date.`
        : `Not assessed: the catalogue states no fire test or class of ${cloth.name}. Ask its maker for the report.`,
    source: source('NFPA 701; EN 13773', 'read', 'scope'),
    decider: 'fire authority',
    required: stated.length === 0,
    cautions: [
      ...wayCautions,
      'A fire class says nothing about laser exposure, and a laser rating nothing about fire.',
    ],
    at: run.line[0],
  });
}

/** Seams, corners, track gap and scatter decide how dark it gets; none of them is computed. */
export function lightFinding({ context, run, cloth }: RunFacts): Finding {
  const asked = context.brief.needs.darkness.some((d) => d.where === run.id);
  const through = cloth.lightTransmittance;
  return notAssessed(context, {
    id: `curtain/light-tight/${run.id}`,
    subject: run.id,
    requirement: 'Seams, corners, head and hem closed against light.',
    message: `Not assessed: light through seams, laps, the track gap and the hem of ${run.name} is not computed${through === undefined ? '' : `; the cloth alone lets ${numberText(through * 100)} % through`}. Look at it in the dark after fitting.`,
    source: commonPractice,
    decider: 'laser safety officer',
    required: asked,
    cautions: lightCautions,
    at: run.line[0],
  });
}
