import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../floor/finding.js';
import { rectangle } from '../floor/geometry/polygon.js';
import { knownRules, type RuleId } from '../rules/known.js';
import { checkAir } from './air.js';
import type { CheckContext } from './context.js';

/** Rule values of the test; no site's. */
const ruleValues: Partial<Record<RuleId, number>> = {
  'air.unidirectional-velocity': 0.3,
  'air.unidirectional-from-class': 5,
  'air.limit-share': 0.5,
  'air.background': 1e7,
  'air.induced-leak': 0.005,
  'air.gap-velocity': 0.2,
  'air.discharge-coefficient': 0.6,
  'air.coverage': 0.8,
  'air.noise-limit': 55,
  'air.temperature-rise': 1,
  'air.recovery': 900,
};

const rules = {
  byId: Object.fromEntries(
    Object.entries(ruleValues).map(([id, value]) => [
      id,
      {
        id,
        value,
        written: String(value),
        meaning: knownRules[id as RuleId].meaning,
        source: { work: 'test', mark: 'invented' },
      },
    ]),
  ),
};

const unit = {
  id: 'fan-test',
  kind: 'fan filter unit',
  face: [1.1, 0.55],
  filterClass: 'H14',
  curve: [
    { flow: 500 / 3600, pressure: 150 },
    { flow: 1000 / 3600, pressure: 60 },
    { flow: 1200 / 3600, pressure: 0 },
  ],
  soundPower: 58,
  power: 120,
};
const light = { id: 'light-test', kind: 'light strip', flux: 2400, power: 20 };

const enclosure = {
  id: 'enc',
  name: 'Enclosure 1',
  kind: 'close',
  tables: ['table-1'],
  centre: [3, 2],
  clearHeight: 2.1,
  insideLength: 2.6,
  insideWidth: 1.4,
  unit: 'fan-test',
  unitCount: 4,
  unitAreas: [],
  volume: 7.6,
  cleanArea: 2.88,
  openings: [{ what: 'hem gap', area: 0.4 }],
  sides: [{ closure: 'curtain' }],
};

interface Change {
  readonly needs?: object;
  readonly enclosure?: object;
  readonly unit?: object;
  readonly design?: object;
  readonly lasers?: readonly object[];
}

function context(change: Change = {}): CheckContext {
  const needs = { cleanliness: [], darkness: [], light: [], temperature: [], hazards: [], ...change.needs };
  const device = {
    id: 'laser-psu',
    name: 'Supply',
    outline: rectangle([3, 2], 0.4, 0.3),
    bottom: 0.9,
    top: 1.1,
    heat: 350,
    noise: null,
  };
  const items = [{ ...unit, ...change.unit }, light, { id: 'counter', kind: 'sensor', measures: 'particles' }];
  return {
    brief: {
      needs,
      room: { meanAbsorption: 0.15 },
      tables: [{ id: 'table-1', equipment: [{ id: 'laser-psu', heat: 350 }] }],
      lasers: change.lasers ?? [],
      assumptions: [],
    },
    design: {
      room: { outline: rectangle([3, 2.5], 6, 5), height: 3, airTerminals: [] },
      enclosures: [{ ...enclosure, ...change.enclosure }],
      tables: [{ id: 'table-1', equipment: [device] }],
      equipment: [],
      lasers: [],
      devices: [],
      parts: [],
      ...change.design,
    },
    catalogue: { byId: new Map(items.map((item) => [item.id, item])) },
    rules,
  } as unknown as CheckContext;
}

const run = (change: Change = {}): Record<string, Finding> =>
  Object.fromEntries(checkAir(context(change)).map((f) => [f.id, f]));

const iso = (isoClass: number, extra: object = {}) => ({
  cleanliness: [{ where: 'enc', isoClass, size: 0.5e-6, state: 'at-rest', ...extra }],
});
const measured = { background: { concentration: 2e6, size: 0.5e-6, measured: true } };

describe('what is printed can be re-computed', () => {
  test.each([
    ['nothing asked', {}],
    [
      'ISO 6 in operation',
      {
        needs: {
          ...iso(6, { state: 'operational', people: 1, recoveryWithin: 600 }),
          ...measured,
          noise: { limit: 50, at: [1, 1] },
        },
      },
    ],
    [
      'ISO 5 at 0.3 um, background assumed',
      { needs: { cleanliness: [{ where: 'table-1', isoClass: 5, size: 0.3e-6, state: 'operational' }] } },
    ],
    [
      'fume',
      {
        needs: { hazards: ['fume'], light: [{ where: 'enc', illuminance: 500 }] },
        design: { parts: [{ of: 'enc', role: 'light', item: 'light-test', count: 3 }] },
      },
    ],
  ] as const)('%s', (_, change) => {
    for (const finding of checkAir(context(change))) {
      if (finding.verdict !== 'not assessed') expect(finding.calculation, finding.id).not.toBeNull();
      for (const s of finding.calculation?.steps ?? []) {
        const scope = Object.fromEntries(Object.entries(s.values).map(([k, v]) => [k, Number(v.value.toPrecision(6))]));
        const got = evaluate(s.expression, scope) as number;
        expect(Math.abs(got - s.result), `${finding.id} ${s.symbol}`).toBeLessThanOrEqual(1e-4 * Math.abs(s.result));
      }
    }
  });
});

test('the working point lies on the fan curve and on the gap law', () => {
  const steps = run()['air/flow/enc']!.calculation!.steps;
  const value = (symbol: string) => steps.find((s) => s.symbol === symbol)!.result;
  // Straight line between the last two points of the curve of the test unit: 60 Pa at 1000 m3/h, 0 Pa at 1200 m3/h.
  expect(value('dp')).toBeCloseTo(60 - (60 / 200) * (value('q') - 1000), 6);
  // Orifice equation: dp = rho/2 (Q/(Cd A))^2.
  expect(value('dp')).toBeCloseTo(0.6 * (value('Q') / (0.6 * 0.4)) ** 2, 9);
});

test('the air over a clean area smaller than its filters is not faster than at their faces', () => {
  const steps = run({ needs: iso(5), enclosure: { cleanArea: 0.5 } })['air/velocity/enc']!.calculation!.steps;
  const value = (symbol: string) => steps.find((s) => s.symbol === symbol)!.result;
  expect(value('v')).toBeCloseTo(value('vf'), 12);
});

test('a tighter hem raises the pressure and lowers the flow', () => {
  const wide = run()['air/flow/enc']!;
  const tight = run({ enclosure: { openings: [{ what: 'hem gap', area: 0.2 }] } })['air/flow/enc']!;
  expect(tight.demand!).toBeGreaterThan(wide.demand!);
});

describe('class forecasts', () => {
  test('ISO 7 with a measured background meets and still says that a measurement decides', () => {
    const finding = run({ needs: { ...iso(7), ...measured } })['air/class/enc']!;
    expect(finding.verdict).toBe('meets');
    expect(finding.capacity).toBe(176_000);
    expect(finding.asks).toEqual([]);
    expect(finding.message).toContain('Only a measurement proves a class.');
    expect(finding.cautions).toHaveLength(1);
  });
  test('an assumed background never lets it meet, and asks', () => {
    const finding = run({ needs: iso(7) })['air/class/enc']!;
    expect(finding.verdict).toBe('attention');
    expect(finding.asks).toEqual(['needs.background']);
  });
  test('people count in operation', () => {
    const rest = run({ needs: { ...iso(6), ...measured } })['air/class/enc']!;
    const work = run({ needs: { ...iso(6, { state: 'operational', people: 2, clothing: 'indoor' }), ...measured } })[
      'air/class/enc'
    ]!;
    expect(work.verdict).toBe('fails');
    // Two people at 2 130 000 per minute (Whyte and Hejab 2007) in the flow of the units with its leak.
    const flow = work.calculation!.steps.find((s) => s.symbol === 'Q')!.result * 1.005;
    expect(work.demand! - rest.demand!).toBeCloseTo((2 * 2_130_000) / 60 / flow, 3);
  });
  test('the clean core of unidirectional flow is called to attention, never met', () => {
    const finding = run({ needs: { ...iso(5), ...measured } })['air/class/enc']!;
    expect(finding.verdict).toBe('attention');
    // H14 passes at most 5e-5 (EN 1822-1:2019) of 2e6 per m3.
    expect(finding.demand).toBeCloseTo(100, 9);
  });
  test('with too little coverage the mixed model decides', () => {
    const found = run({ needs: { ...iso(5), ...measured }, enclosure: { unitCount: 2 } });
    expect(found['air/coverage/enc']!.verdict).toBe('fails');
    expect(found['air/class/enc']!.verdict).toBe('fails');
  });
  test('a class without a limit, and class 9 at rest, are not assessed but required', () => {
    const empty = run({ needs: { cleanliness: [{ where: 'enc', isoClass: 5, size: 5e-6, state: 'at-rest' }] } })[
      'air/class/enc'
    ]!;
    expect([empty.verdict, empty.required]).toEqual(['not assessed', true]);
    expect(run({ needs: iso(9) })['air/class/enc']!.verdict).toBe('not assessed');
  });
  test('a class for the room is not assessed but required', () => {
    const room = run({ needs: { cleanliness: [{ where: 'room', isoClass: 7, size: 0.5e-6, state: 'at-rest' }] } })[
      'air/class/room'
    ]!;
    expect([room.verdict, room.required, room.calculation]).toEqual(['not assessed', true, null]);
  });
  test('a wait that is too short fails, one that never ends fails without a time', () => {
    const short = run({ needs: { ...iso(6, { recoveryWithin: 5 }), ...measured } })['air/clean-up/enc']!;
    expect(short.verdict).toBe('fails');
    expect(short.unit).toBe('s');
    const never = run({ needs: { ...iso(6, { state: 'operational', people: 9, recoveryWithin: 600 }), ...measured } })[
      'air/clean-up/enc'
    ]!;
    expect(never.verdict).toBe('fails');
    expect(never.unit).toBe('1/m3');
  });
  test('sampling is told, not met: 3.64 m2 need two locations (ISO 14644-1:2015, Table A.1)', () => {
    const finding = run({ needs: iso(6) })['air/sampling/enc']!;
    expect([finding.verdict, finding.required, finding.demand]).toEqual(['attention', false, 2]);
  });
  test('two needs of one enclosure have two names', () => {
    const cleanliness = [7, 6].map((isoClass) => ({ where: 'enc', isoClass, size: 0.5e-6, state: 'at-rest' }));
    expect(Object.keys(run({ needs: { cleanliness } }))).toEqual(
      expect.arrayContaining(['air/class/enc', 'air/class/enc/2']),
    );
  });
});

describe('an enclosure whose air cannot be told', () => {
  test.each([
    ['no units', { enclosure: { unit: null, unitCount: 0 } }],
    ['no gaps', { enclosure: { openings: [] } }],
    [
      'a curve that ends too early',
      { unit: { curve: unit.curve.slice(0, 2) }, enclosure: { openings: [{ what: 'open side', area: 5 }] } },
    ],
  ])('%s', (_, change) => {
    const found = run({ ...change, needs: iso(7) });
    for (const id of ['air/flow/enc', 'air/class/enc'])
      expect([found[id]!.verdict, found[id]!.required, found[id]!.utilisation]).toEqual(['not assessed', true, null]);
  });
});

describe('heat', () => {
  test('all heat sources count and the rule limits the rise', () => {
    const finding = run()['air/heat/enc']!;
    const steps = finding.calculation!.steps;
    const flow = steps.find((s) => s.symbol === 'Q')!.result;
    // 350 W of equipment and four units of 120 W in air of 1.2 kg/m3 and 1005 J/(kg K).
    expect(finding.demand).toBeCloseTo((350 + 480) / (1.2 * 1005 * flow), 9);
    expect(finding.verdict).toBe('meets');
  });
  test('a laser without heat in the brief is named and takes back the verdict', () => {
    const finding = run({ lasers: [{ id: 'laser-a', table: 'table-1' }] })['air/heat/enc']!;
    expect(finding.verdict).toBe('attention');
    expect(finding.message).toContain('laser-a');
  });
  test('the brief may ask for less', () => {
    const finding = run({ needs: { temperature: [{ where: 'enc', rise: 0.2 }] } })['air/heat/enc']!;
    expect([finding.verdict, finding.capacity, finding.rule]).toEqual(['fails', 0.2, undefined]);
  });
});

describe('noise', () => {
  test('one unit straight above follows the room equation', () => {
    const finding = run({ enclosure: { unitCount: 1 } })['air/noise/enc']!;
    const R = (126 * 0.15) / 0.85;
    expect(finding.demand).toBeCloseTo(58 + 10 * Math.log10(2 / (4 * Math.PI) + 4 / R), 9);
  });
  test('the place of the brief is the one that counts', () => {
    const found = run({ needs: { noise: { limit: 80, at: [1, 1] } } });
    expect(found['air/noise/place']!.required).toBe(true);
    expect(found['air/noise/place']!.verdict).toBe('meets');
    expect(found['air/noise/enc']!.required).toBe(false);
  });
  test('a limit with nothing to compare is not assessed', () => {
    const found = run({ needs: { noise: { limit: 50 } }, enclosure: { unit: null, unitCount: 0 } });
    expect(found['air/noise/room']!.verdict).toBe('not assessed');
  });
});

describe('light', () => {
  const need = { light: [{ where: 'enc', illuminance: 500, dimmable: true }] };
  test('the lumen method', () => {
    const parts = [{ of: 'enc', role: 'light', item: 'light-test', count: 2 }];
    const finding = run({ needs: need, design: { parts } })['air/light/enc']!;
    expect(finding.capacity).toBeCloseTo((2 * 2400 * 0.5 * 0.8) / (2.6 * 1.4), 9);
    expect(finding.verdict).toBe('attention');
    expect(finding.message).toContain('dimming');
  });
  test('without lights, or elsewhere, it is not assessed', () => {
    expect(run({ needs: need })['air/light/enc']!.verdict).toBe('not assessed');
    expect(run({ needs: { light: [{ where: 'room', illuminance: 500 }] } })['air/light/room']!.verdict).toBe(
      'not assessed',
    );
  });
});

test('over-pressure with fume in the brief is called to attention for the one who decides', () => {
  const finding = run({ needs: { hazards: ['fume'] } })['air/hazard/enc']!;
  expect([finding.verdict, finding.required, finding.decider]).toEqual(['attention', true, 'facilities']);
  const without = run({ needs: { hazards: ['gas'] }, enclosure: { unit: null, unitCount: 0 } });
  expect(without['air/hazard/room']!.verdict).toBe('not assessed');
});

test('what is not computed is said', () => {
  const found = run({
    needs: {
      darkness: [{ where: 'enc', illuminance: 0.01 }],
      temperature: [{ where: 'enc', stability: 0.1 }],
      monitoring: { particles: true, pressure: false },
    },
    design: {
      devices: [{ id: 's', kind: 'sensor', item: 'counter' }],
      room: {
        outline: rectangle([3, 2.5], 6, 5),
        height: 3,
        airTerminals: [{ id: 'supply-1', kind: 'supply', at: [1, 1] }],
      },
    },
  });
  for (const id of ['air/darkness/enc', 'air/temperature/enc', 'air/monitoring/particles', 'air/terminal/supply-1'])
    expect(found[id]?.verdict, id).toBe('not assessed');
  expect(found['air/monitoring/pressure']).toBeUndefined();
  expect(found['air/monitoring/particles']!.message).toContain('1 sensor');
});

test('curtains that bulge are called to attention', () => {
  expect(run({ enclosure: { openings: [{ what: 'hem gap', area: 0.2 }] } })['air/over-pressure/enc']!.verdict).toBe(
    'attention',
  );
  expect(run({ enclosure: { sides: [{ closure: 'rigid panel' }] } })['air/over-pressure/enc']!.verdict).toBe(
    'not assessed',
  );
});
