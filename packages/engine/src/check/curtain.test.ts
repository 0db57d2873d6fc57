import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { CompleteBrief } from '../brief/complete.js';
import type { BriefRun } from '../brief/schema.js';
import { curtainCatalogue, curtainRules } from '../compose/curtain-fixture.js';
import { composeRun } from '../compose/curtain-run.js';
import type { Design, DesignRun, DesignTable } from '../design/types.js';
import { rectangle } from '../floor/geometry/polygon.js';
import { valueOf } from '../floor/problem.js';
import type { CheckContext } from './context.js';
import { checkCurtain } from './curtain.js';

const bay: BriefRun = {
  id: 'bay-1',
  kind: 'bay',
  path: [
    [0, 0],
    [4, 0],
    [4, 3],
    [0, 3],
  ],
  closed: true,
  hung: 'ceiling',
  trackHeight: 2.6,
  openings: [{ at: 1.5, width: 1 }],
};
const table = (centre: readonly [number, number]): DesignTable =>
  ({ id: 'table-1', name: 'Table 1', outline: rectangle(centre, 2, 1), height: 0.9 }) as DesignTable;

interface Setting {
  readonly run?: Partial<BriefRun>;
  readonly change?: Partial<DesignRun>;
  readonly tables?: readonly DesignTable[];
  readonly room?: object;
  readonly darkness?: readonly object[];
}

function check({ run = {}, change = {}, tables = [table([2, 1.5])], room = {}, darkness = [] }: Setting) {
  const made = valueOf(
    composeRun({ ...bay, ...run }, 0, {
      catalogue: curtainCatalogue,
      rules: curtainRules,
      roomHeight: 3,
      structureHeight: 3,
      floorFall: 0,
      tables,
      enclosures: [],
    }),
  );
  const context: CheckContext = {
    brief: { room, needs: { darkness } } as unknown as CompleteBrief,
    design: { runs: [{ ...made.run, ...change }], parts: made.parts, tables } as unknown as Design,
    catalogue: curtainCatalogue,
    rules: curtainRules,
  };
  return checkCurtain(context);
}

const named = (setting: Setting, id: string) => {
  const found = check(setting).find((f) => f.id.startsWith(`curtain/${id}/`));
  if (!found) throw new Error(`no finding ${id}`);
  return found;
};

const settings: Setting[] = [
  {},
  { run: { corner: 'connector' } },
  { run: { hung: 'floor post', trackHeight: 2.2, closed: false } },
  {
    run: {
      hung: 'shelf',
      kind: 'shelf',
      on: 'table-1',
      trackHeight: 1.5,
      path: [
        [1, 1.2],
        [3, 1.2],
      ],
      closed: false,
      openings: [],
    },
  },
];

// Every step again by a general-purpose library, from its values rounded as printed.
test('every finding can be re-computed from its sheet, and its verdict follows from it', () => {
  for (const finding of settings.flatMap(check)) {
    if (finding.verdict === 'not assessed') {
      expect([finding.utilisation, finding.calculation]).toEqual([null, null]);
      continue;
    }
    for (const step of finding.calculation!.steps) {
      const scope = Object.fromEntries(
        Object.entries(step.values).map(([k, v]) => [k, Number(v.value.toPrecision(6))]),
      );
      expect(
        Math.abs(evaluate(step.expression, scope) - step.result),
        `${finding.id} ${step.symbol}`,
      ).toBeLessThanOrEqual(1e-4 * Math.max(Math.abs(step.result), 1e-3));
    }
    expect(finding.verdict === 'fails').toBe(finding.utilisation! > 1);
  }
});

test('ids are unique and stable', () => {
  const ids = check({}).map((f) => f.id);
  expect(new Set(ids).size).toBe(ids.length);
  expect(check({}).map((f) => f.id)).toEqual(ids);
});

describe('a composed run', () => {
  test.each([
    'support-spacing',
    'support-joints',
    'support-load',
    'fullness',
    'hem-gap',
    'runner-load',
    'overlap',
    'stack-back',
  ])('keeps %s', (id) => {
    expect(['meets', 'attention']).toContain(named({}, id).verdict);
  });
});

describe('what is wrong is found', () => {
  test('a support taken away', () => {
    const run = valueOf(
      composeRun(bay, 0, {
        catalogue: curtainCatalogue,
        rules: curtainRules,
        roomHeight: 3,
        structureHeight: 3,
        floorFall: 0,
        tables: [],
        enclosures: [],
      }),
    ).run;
    const fewer = run.supports.filter((_, i) => i !== 2);
    expect(named({ change: { supports: fewer } }, 'support-spacing').verdict).toBe('fails');
  });

  test('a table 100 mm from the curtain is 50 mm too close', () => {
    const found = named({ tables: [table([2, 0.6])] }, 'table-distance');
    expect(found.verdict).toBe('fails');
    expect(found.message).toContain('50 mm too close to Table 1: 100 mm instead of 150 mm');
    expect(found.utilisation).toBeCloseTo(1.5, 9);
  });

  test('a curtain that runs across a table', () => {
    expect(named({ tables: [table([2, 0])] }, 'table-distance').message).toContain('runs across');
    expect(named({ tables: [table([2, 0])] }, 'table-distance').capacity).toBe(0);
  });

  test('a floor that falls under a barrier', () => {
    const found = named({ room: { floor: { fall: 0.02 } } }, 'hem-gap');
    expect(found.demand).toBeCloseTo(0.035, 12);
    expect(found.verdict).toBe('fails');
  });

  test('panels that standard widths do not give', () => {
    const run = {
      path: [
        [0, 0],
        [1.5, 0],
      ] as [number, number][],
      closed: false,
      openings: [],
      cloth: 'dark',
      hung: 'floor post' as const,
      trackHeight: 2.4,
    };
    const found = named({ run }, 'fullness');
    expect(found.verdict).toBe('fails');
    expect(found.message).toContain('made to measure');
  });

  test('an opening too wide to park the panels beside it', () => {
    const run = {
      path: [
        [0, 0],
        [2.4, 0],
      ] as [number, number][],
      closed: false,
      openings: [{ at: 1.2, width: 2.2 }],
    };
    expect(named({ run }, 'stack-back').verdict).toBe('fails');
  });
});

describe('what nobody knows is not assessed', () => {
  test('anchors into an unknown ceiling or a suspended grid are required and open', () => {
    const unknown = named({}, 'anchors');
    expect([unknown.verdict, unknown.required, unknown.asks]).toEqual(['not assessed', true, ['room.ceiling']]);
    expect(unknown.message).toContain('structural engineer');
    const grid = named({ room: { ceiling: { kind: 'suspended grid' } } }, 'anchors');
    expect([grid.verdict, grid.required]).toEqual(['not assessed', true]);
  });

  test('anchors into a slab stay open too', () => {
    const slab = named({ room: { ceiling: { kind: 'concrete slab' } } }, 'anchors');
    expect([slab.verdict, slab.required]).toEqual(['not assessed', false]);
  });

  test('fire behaviour is for the authority; without any data it is required', () => {
    expect([named({}, 'fire').verdict, named({}, 'fire').required]).toEqual(['not assessed', false]);
    expect(named({ run: { cloth: 'dark', trackHeight: 2.4, hung: 'floor post' } }, 'fire').required).toBe(true);
  });

  test('light-tightness is required where darkness is asked for', () => {
    expect(named({}, 'light-tight').required).toBe(false);
    expect(named({ darkness: [{ where: 'bay-1', illuminance: 0.1 }] }, 'light-tight').required).toBe(true);
  });
});
