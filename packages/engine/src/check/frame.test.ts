import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { CompleteBrief } from '../brief/complete.js';
import type { Item } from '../catalogue/schema.js';
import type { Design, DesignEnclosure, RoofBeam } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { commonPractice, source } from '../floor/source.js';
import { frameCautions, standardGravity } from '../frame/index.js';
import type { RuleId } from '../rules/known.js';
import type { SiteRules } from '../rules/schema.js';
import type { CheckContext } from './context.js';
import { checkFrame } from './frame.js';

/** Values of the handbook's presets (common practice). */
const ruleValues: Partial<Record<RuleId, number>> = {
  'frame.roof-deflection': 250,
  'frame.roof-deflection-most': 0.01,
  'frame.track-deflection': 360,
  'frame.strength-factor': 2,
  'frame.push-force': 250,
  'frame.push-height': 1.5,
  'frame.push-factor': 1.5,
  'frame.tilt': Math.PI / 18,
  'frame.feet-carrying': 1,
  'frame.gap-to-table': 0.1,
  'air.gap-share-of-table-travel': 3,
};

const rules = {
  byId: Object.fromEntries(
    Object.entries(ruleValues).map(([id, value]) => [
      id,
      { id, meaning: id, value, written: String(value), source: commonPractice },
    ]),
  ),
} as unknown as SiteRules;

const square = (half: number) => [
  [-half, -half],
  [half, -half],
  [half, half],
  [-half, half],
];

const profile = {
  kind: 'profile',
  id: 'bar-40',
  name: 'Profile, 40 x 40',
  size: [0.04, 0.04],
  outline: { unit: 'mm', outer: square(20), holes: [square(17)] },
  alloy: '6060 T5',
  proofStrength: 100e6,
  proofStrengthSource: source('EN 1999-1-1:2007', 'from memory', 'Table 3.2b'),
} as unknown as Item;

const caster = {
  kind: 'caster',
  id: 'caster-80',
  name: 'Caster, 80',
  capacity: 60,
  swivelOffset: 0.03,
} as unknown as Item;

const beam = (change: Partial<RoofBeam> = {}): RoofBeam => ({
  part: 'e1-beam-1',
  mark: 'E1-B1',
  profile: 'bar-40',
  span: 1.8,
  uniform: 20,
  points: [
    { at: 0.6, load: 60 },
    { at: 1.2, load: 60 },
  ],
  carriesTrack: false,
  ...change,
});

const enclosure: DesignEnclosure = {
  id: 'e1',
  name: 'Enclosure 1',
  kind: 'walk-in',
  tables: ['t1'],
  centre: [3, 2],
  frameTop: 2.3,
  gaps: { south: 0.3, east: 0.25, north: 0.3, west: 0.25 },
  sides: [{ name: 'east', from: [4, 1.2], to: [4, 2.8] }],
  feet: 'levelling foot',
  footPoints: [
    [2, 1],
    [4, 1],
    [4, 3],
    [2, 3],
  ],
  roofBeams: [beam()],
  mass: 120,
  centreOfMass: [3.1, 2, 1.5],
} as unknown as DesignEnclosure;

interface Change {
  readonly enclosure?: Partial<DesignEnclosure>;
  readonly items?: readonly Item[];
  readonly travel?: number;
  readonly room?: object;
  readonly seismic?: boolean;
  readonly movable?: readonly string[];
  readonly footPart?: boolean;
}

function contextOf(change: Change = {}): CheckContext {
  const items = change.items ?? [profile, caster];
  return {
    rules,
    catalogue: { byId: new Map(items.map((i) => [i.id, i])) },
    brief: {
      room: change.room ?? {},
      site: change.seismic === undefined ? {} : { seismic: change.seismic },
      needs: { movable: change.movable ?? [] },
    } as unknown as CompleteBrief,
    design: {
      enclosures: [{ ...enclosure, ...change.enclosure }],
      tables: [{ id: 't1', name: 'Table 1', travel: change.travel ?? 0.05 }],
      parts: [
        {
          id: 'e1-beam-1',
          role: 'beam',
          of: 'e1',
          shape: { shape: 'bar', from: [2, 1, 2.2], to: [4, 1, 2.2], width: 0.04, height: 0.04 },
        },
        ...(change.footPart === false ? [] : [{ id: 'e1-foot-1', role: 'foot', of: 'e1', item: 'caster-80' }]),
      ],
    } as unknown as Design,
  } as unknown as CheckContext;
}

const find = (change: Change, id: string): Finding => {
  const found = checkFrame(contextOf(change)).find((f) => f.id === id);
  if (!found) throw new Error(`no finding ${id}`);
  return found;
};

const printed = (value: number): number => Number(value.toPrecision(6));

const changes: readonly Change[] = [
  {},
  { enclosure: { feet: 'caster' }, room: { floor: { pointLoad: 2000 } } },
  { enclosure: { roofBeams: [beam({ carriesTrack: true, points: [] })], centreOfMass: [4.2, 2, 1.5] } },
  { enclosure: { feet: 'caster', mass: 260, roofBeams: [beam({ uniform: 300 })] } },
];

describe('every finding can be read and re-computed', () => {
  test.each(changes)('context %#', (change) => {
    const findings = checkFrame(contextOf(change));
    expect(new Set(findings.map((f) => f.id)).size).toBe(findings.length);
    for (const f of findings) {
      expect(f.message).not.toMatch(/NaN|undefined|null/);
      if (f.verdict === 'not assessed') {
        expect([f.demand, f.capacity, f.utilisation, f.calculation]).toEqual([null, null, null, null]);
        continue;
      }
      expect(f.calculation!.steps.length).toBeGreaterThan(0);
      for (const step of f.calculation!.steps) {
        const scope = Object.fromEntries(Object.entries(step.values).map(([n, v]) => [n, printed(v.value)]));
        const got = evaluate(step.expression, scope) as number;
        expect(Math.abs(got - printed(step.result)), `${f.id} ${step.symbol}`).toBeLessThanOrEqual(
          2e-5 * Math.abs(step.result) + 1e-9,
        );
      }
      const last = f.calculation!.steps.at(-1)!;
      if (f.utilisation !== null) expect(last.result).toBeCloseTo(f.utilisation, 9);
    }
  });
});

describe('roof beams', () => {
  // 40 x 40 tube with 3 mm walls: I = (40^4 - 34^4)/12 mm4, W = I/20; beam tables for uniform load and two equal loads.
  const i = (40 ** 4 - 34 ** 4) / 12;
  const sag = (5 * 0.02 * 1800 ** 4) / (384 * 70000 * i) + (23 * 60 * 1800 ** 3) / (648 * 70000 * i);
  const moment = (0.02 * 1800 ** 2) / 8 + 60 * 600;

  test('sag as the beam tables say, against the span by the rule and the largest deflection', () => {
    const bySpan = find({}, 'frame/roof-deflection/e1/E1-B1');
    expect(bySpan.demand).toBeCloseTo(sag, 9);
    expect(bySpan.capacity).toBeCloseTo(1800 / 250, 9);
    expect(bySpan.verdict).toBe('meets');
    expect(bySpan.rule?.id).toBe('frame.roof-deflection');
    expect(bySpan.at).toEqual([3, 1]);
    expect(bySpan.cautions).toContain(frameCautions.engineer);
    expect(find({}, 'frame/roof-deflection-most/e1/E1-B1').capacity).toBeCloseTo(10, 12);
  });

  test('bend to M/W, against proof strength by the factor', () => {
    const stress = find({}, 'frame/roof-stress/e1/E1-B1');
    expect(stress.demand).toBeCloseTo(moment / (i / 20), 9);
    expect(stress.capacity).toBeCloseTo(50, 9);
    expect(stress.utilisation).toBeCloseTo(moment / (i / 20) / 50, 9);
  });

  test('only beams with track are held against the rule for track', () => {
    const ids = (carriesTrack: boolean) =>
      checkFrame(contextOf({ enclosure: { roofBeams: [beam({ carriesTrack })] } })).map((f) => f.id);
    expect(ids(false)).not.toContain('frame/track-deflection/e1/E1-B1');
    expect(ids(true)).toContain('frame/track-deflection/e1/E1-B1');
  });

  test('of equal pieces the most loaded speaks, and too much load fails', () => {
    const roofBeams = [beam(), beam({ uniform: 400 }), beam({ mark: 'E1-B2', points: [] })];
    const governing = find({ enclosure: { roofBeams } }, 'frame/roof-deflection/e1/E1-B1');
    expect(governing.demand).toBeGreaterThan(sag);
    expect(governing.verdict).toBe('fails');
    expect(governing.message).toContain('most loaded of 2');
    expect(find({ enclosure: { roofBeams } }, 'frame/roof-deflection/e1/E1-B2').verdict).toBe('meets');
  });

  test('a beam whose profile is unknown or unusable stays open, and so does its mark', () => {
    const missing = find({ items: [caster] }, 'frame/roof-stress/e1/E1-B1');
    expect(missing.verdict).toBe('not assessed');
    expect(missing.required).toBe(true);
    const bow = {
      ...profile,
      outline: {
        unit: 'mm',
        outer: [
          [0, 0],
          [40, 40],
          [40, 0],
          [0, 40],
        ],
        holes: [],
      },
    } as Item;
    expect(find({ items: [bow, caster] }, 'frame/roof-stress/e1/E1-B1').message).toContain('cross or touch');
    const empty = find({ enclosure: { roofBeams: [beam({ span: 0 })] } }, 'frame/roof-deflection/e1/E1-B1');
    expect(empty.verdict).toBe('not assessed');
  });
});

describe('standing', () => {
  // Rigid-body statics: 120 kg, 900 mm from the east edge, pushed with 250 N at 1.5 m.
  test('the push is taken about the weakest edge', () => {
    const push = find({}, 'frame/tipping-push/e1');
    const factor = (120 * standardGravity * 0.9) / (250 * 1.5);
    expect(push.capacity).toBeCloseTo(factor, 9);
    expect(push.utilisation).toBeCloseTo(1.5 / factor, 9);
    expect(push.at).toEqual([4, 2]);
  });

  test('a low frame is pushed at its top', () => {
    const factor = (120 * standardGravity * 0.9) / (250 * 1.2);
    expect(find({ enclosure: { frameTop: 1.2 } }, 'frame/tipping-push/e1').capacity).toBeCloseTo(factor, 9);
  });

  test('a light frame fails and is told what helps', () => {
    const push = find({ enclosure: { mass: 40 } }, 'frame/tipping-push/e1');
    expect(push.verdict).toBe('fails');
    expect(push.message).toContain('ballast');
  });

  test('a frame that falls by itself fails without a ratio', () => {
    const push = find({ enclosure: { centreOfMass: [4.2, 2, 1.5] } }, 'frame/tipping-push/e1');
    expect([push.verdict, push.utilisation]).toEqual(['fails', null]);
    const tilt = find({ enclosure: { feet: 'caster', centreOfMass: [4.2, 2, 1.5] } }, 'frame/tipping-tilt/e1');
    expect([tilt.verdict, tilt.utilisation]).toEqual(['fails', null]);
  });

  test('casters take their swivel offset from the lever, and must stand a tilt', () => {
    const change: Change = { enclosure: { feet: 'caster' } };
    expect(find(change, 'frame/tipping-push/e1').capacity).toBeCloseTo((120 * standardGravity * 0.87) / 375, 9);
    const tilt = find(change, 'frame/tipping-tilt/e1');
    expect(tilt.capacity).toBeCloseTo((Math.atan(0.87 / 1.5) * 180) / Math.PI, 9);
    expect(tilt.demand).toBeCloseTo(10, 9);
    expect(tilt.cautions).toContain(frameCautions.casters);
    expect(checkFrame(contextOf()).some((f) => f.id === 'frame/tipping-tilt/e1')).toBe(false);
  });

  test('without a swivel offset, tipping on casters stays open', () => {
    const plain = { ...caster, swivelOffset: undefined } as unknown as Item;
    for (const id of ['frame/tipping-push/e1', 'frame/tipping-tilt/e1']) {
      const finding = find({ enclosure: { feet: 'caster' }, items: [profile, plain] }, id);
      expect([finding.verdict, finding.required]).toEqual(['not assessed', true]);
    }
  });

  // Four feet 2 m apart, 120 kg, 0.1 m east of the middle: W/4 (1 + 0.1) on the east feet.
  test('feet are loaded as a rigid frame loads them', () => {
    const load = find({}, 'frame/foot-load/e1');
    expect(load.demand).toBeCloseTo(30 * standardGravity * 1.1, 6);
    expect(load.capacity).toBeCloseTo(60 * standardGravity, 6);
    expect(load.verdict).toBe('meets');
  });

  test('on an uneven floor a third of four; statics with one foot off calls for attention', () => {
    const fine = find({}, 'frame/foot-load-uneven/e1');
    expect(fine.demand).toBeCloseTo(40 * standardGravity, 6);
    // On three feet that stand, the two on the diagonal carry half each or less: of 120 kg just the 60 kg of a foot, of 125 kg more.
    expect(fine.verdict).toBe('meets');
    const over = find({ enclosure: { mass: 125 } }, 'frame/foot-load-uneven/e1');
    expect(over.verdict).toBe('attention');
    expect(over.message).toContain('more than its capacity');
    expect(find({ enclosure: { mass: 100 } }, 'frame/foot-load-uneven/e1').verdict).toBe('meets');
    expect(find({ enclosure: { mass: 200 } }, 'frame/foot-load-uneven/e1').verdict).toBe('fails');
  });

  test('a foot that lifts off fails although its load is within capacity', () => {
    const load = find({ enclosure: { mass: 50, centreOfMass: [4.2, 2, 1.5] } }, 'frame/foot-load/e1');
    expect(load.verdict).toBe('fails');
    expect(load.utilisation).toBeLessThan(1);
    expect(load.message).toContain('lifts off');
  });

  test('feet without data, or too few of them, stay open', () => {
    expect(find({ footPart: false }, 'frame/foot-load/e1').verdict).toBe('not assessed');
    const two: Change = { enclosure: { footPoints: enclosure.footPoints.slice(0, 2) } };
    for (const id of ['foot-load', 'foot-load-uneven', 'tipping-push', 'floor-point-load'])
      expect(find(two, `frame/${id}/e1`).verdict).toBe('not assessed');
  });

  test('the floor is held against its point load when the brief gives one', () => {
    expect(find({}, 'frame/floor-point-load/e1').verdict).toBe('not assessed');
    const floor = find({ room: { floor: { pointLoad: 350 } } }, 'frame/floor-point-load/e1');
    expect(floor.demand).toBeCloseTo(40 * standardGravity, 6);
    expect(floor.verdict).toBe('fails');
    expect(floor.decider).toBe('facilities');
  });

  test('a floor that bears the shared load, but not a frame on the diagonal, is called to attention', () => {
    // Shared by three of four feet: 40 kg, 392 N. By statics with one foot off: half of 120 kg, 588 N.
    const floor = find({ room: { floor: { pointLoad: 500 } } }, 'frame/floor-point-load/e1');
    expect(floor.utilisation!).toBeLessThan(1);
    expect(floor.verdict).toBe('attention');
    expect(floor.message).toContain('588 N, more than the floor bears');
    expect(find({ room: { floor: { pointLoad: 600 } } }, 'frame/floor-point-load/e1').verdict).toBe('meets');
  });
});

describe('distance to the tables', () => {
  test('the narrowest side is held against the rule', () => {
    const gap = find({}, 'frame/gap-to-table/e1');
    expect([gap.demand, gap.capacity, gap.verdict]).toEqual([100, 250, 'meets']);
    expect(gap.at).toEqual([4, 2]);
  });

  test('a gap that is too small says by how much', () => {
    const gap = find({ enclosure: { gaps: { ...enclosure.gaps, west: 0.05 } } }, 'frame/gap-to-table/e1');
    expect(gap.verdict).toBe('fails');
    expect(gap.message).toContain('50 mm too close');
    expect(gap.utilisation).toBeCloseTo(2, 12);
  });

  test('without any gap there is no ratio, and it fails', () => {
    const gap = find({ enclosure: { gaps: { ...enclosure.gaps, west: 0 } } }, 'frame/gap-to-table/e1');
    expect([gap.verdict, gap.utilisation]).toEqual(['fails', null]);
  });

  test('a moving table needs a multiple of its travel; one that stands still needs none', () => {
    const travel = find({}, 'frame/table-travel/e1');
    expect(travel.demand).toBeCloseTo(150, 9);
    expect(travel.utilisation).toBeCloseTo(150 / 250, 9);
    expect(checkFrame(contextOf({ travel: 0 })).some((f) => f.id === 'frame/table-travel/e1')).toBe(false);
  });

  test('a frame without tables has no distance to keep', () => {
    expect(checkFrame(contextOf({ enclosure: { tables: [] } })).some((f) => f.id.includes('gap'))).toBe(false);
  });
});

describe('what is not computed is said', () => {
  const open = (change: Change): string[] =>
    checkFrame(contextOf({ room: { floor: { pointLoad: 5000 } }, ...change }))
      .filter((f) => f.verdict === 'not assessed')
      .map((f) => f.id.split('/')[1]!);
  const always = ['sway', 'natural-frequency', 'post-buckling', 'joint-capacity', 'thermal-movement'];

  test('for every frame, for foot plates, for casters, and where nobody spoke of earthquakes', () => {
    expect(open({ seismic: false })).toEqual(always);
    expect(open({})).toEqual([...always, 'earthquake']);
    expect(open({ seismic: false, enclosure: { feet: 'foot plate' } })).toEqual([...always, 'anchors']);
    expect(open({ seismic: false, enclosure: { feet: 'caster' } })).toEqual([...always, 'movability']);
  });

  test('moving is required when the brief asks for it', () => {
    expect(find({ movable: ['e1'] }, 'frame/movability/e1').required).toBe(true);
    expect(find({ enclosure: { feet: 'caster' } }, 'frame/movability/e1').required).toBe(false);
  });
});
