import { evaluate } from 'mathjs';
import { describe, expect, test } from 'vitest';
import type { Finding } from '../floor/finding.js';
import { rectangle } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { source } from '../floor/source.js';
import type { CheckContext } from './context.js';
import { checkRoom } from './room.js';
import { wayFindings } from './room-ways.js';

const values: Readonly<Record<string, number>> = {
  'way.clear-width': 0.9,
  'way.exit-width': 1.0,
  'way.service-width': 0.6,
  'way.headroom': 2.0,
  'way.door-clear-width': 0.81,
  'fire.sprinkler-plane': 0.45,
  'fire.sprinkler-obstruction-width': 1.2,
  'electric.board-depth-low': 0.9,
  'electric.board-depth': 1.07,
  'electric.board-width': 0.76,
  'electric.board-height': 2.0,
};
const invented = source('invented for this test', 'invented');
const rules = {
  byId: Object.fromEntries(
    Object.entries(values).map(([id, value]) => [
      id,
      { id, meaning: id, value, written: `${value} m`, source: invented },
    ]),
  ),
};

const box = (id: string, x: number, y: number, w: number, h: number, top = 0.9) => ({
  id,
  name: id,
  outline: rectangle([x + w / 2, y + h / 2], w, h),
  centre: [x + w / 2, y + h / 2] as Vec2,
  turn: 0,
  length: w,
  width: h,
  height: top,
  bottom: 0,
  top,
});

const side = (name: string, closure: string, from: Vec2, to: Vec2) => ({ name, closure, from, to });

const enclosure = (id: string, x: number, y: number, w: number, h: number, tables: readonly string[]) => ({
  ...box(id, x, y, w, h, 2.4),
  kind: 'close',
  tables,
  inside: rectangle([x + w / 2, y + h / 2], w - 0.1, h - 0.1),
  clearHeight: 2.1,
  top: 2.4,
  unitCount: 0,
  sides: [side('south', 'curtain', [x, y], [x + w, y])],
});

const run = (id: string, line: readonly Vec2[], over: object = {}) => ({
  id,
  name: id,
  kind: 'partition',
  closed: false,
  on: null,
  line,
  pathLength: line.slice(1).reduce((sum, p, i) => sum + Math.hypot(p[0] - line[i]![0], p[1] - line[i]![1]), 0),
  trackHeight: 2.3,
  curtainTop: 2.28,
  hemGap: 0.02,
  openings: [],
  ...over,
});

const door = {
  id: 'door-a',
  name: 'Door A',
  wall: 0,
  from: [0.5, 0] as Vec2,
  to: [1.5, 0] as Vec2,
  inward: [0, 1] as Vec2,
  width: 1,
  bottom: 0,
  top: 2.1,
  swing: 'in',
  exit: true,
  leaves: [{ hinge: [0.5, 0] as Vec2, leaf: 1, closed: 0, open: Math.PI / 2 }],
};

/** A room of 8 m by 6 m, 3 m high, with one table of 3 m by 1.5 m in its middle; invented. */
function context(over: { room?: object; design?: object; needs?: object; brief?: object } = {}): CheckContext {
  const list = { access: [], ways: [] };
  return {
    rules,
    brief: {
      room: { name: 'room', outline: rectangle([4, 3], 8, 6), diagonals: [], ...over.brief },
      needs: { ...list, ...over.needs },
    },
    design: {
      room: {
        name: 'room',
        outline: rectangle([4, 3], 8, 6),
        height: 3,
        doors: [door],
        boards: [],
        columns: [],
        beams: [],
        obstructions: [],
        sprinklers: [],
        detectors: [],
        exitSigns: [],
        ...over.room,
      },
      tables: [box('t1', 2.5, 2.25, 3, 1.5)],
      equipment: [],
      enclosures: [],
      runs: [],
      parts: [],
      ...over.design,
    },
  } as unknown as CheckContext;
}

const check = (over: Parameters<typeof context>[0] = {}): Finding[] => {
  const findings = [...checkRoom(context(over)), ...wayFindings(context(over))];
  expect(new Set(findings.map((f) => f.id)).size).toBe(findings.length);
  for (const f of findings) expectHonest(f);
  return findings;
};

/** Not assessed without numbers; everything else with a calculation that a general-purpose evaluator repeats. */
function expectHonest(f: Finding): void {
  if (f.verdict === 'not assessed') {
    expect([f.utilisation, f.calculation]).toEqual([null, null]);
    return;
  }
  expect(f.calculation, f.id).not.toBeNull();
  for (const step of f.calculation!.steps) {
    const scope = Object.fromEntries(Object.entries(step.values).map(([n, v]) => [n, Number(v.value.toPrecision(6))]));
    expect(Number(evaluate(step.expression, scope)), f.id).toBeCloseTo(step.result, 4);
  }
}

const find = (findings: readonly Finding[], id: string): Finding => {
  const found = findings.find((f) => f.id === id);
  if (!found) throw new Error(`no finding ${id} among ${findings.map((f) => f.id).join(', ')}`);
  return found;
};

describe('sides to reach', () => {
  test('the long sides of a table are assumed when nobody asked', () => {
    const findings = check();
    const south = find(findings, 'room/access/t1/south');
    expect(south).toMatchObject({ verdict: 'meets', required: false, capacity: 2.25 });
    expect(south.calculation!.assumptions.join()).toContain('assumed');
    expect(findings.some((f) => f.id === 'room/access/t1/east')).toBe(false);
  });

  test('a shortfall names the move that cures it', () => {
    const low = box('t1', 2.5, 0.85, 3, 1.5);
    const south = find(check({ design: { tables: [low] } }), 'room/access/t1/south');
    expect(south.verdict).toBe('fails');
    expect(south.capacity).toBeCloseTo(0.85, 9);
    expect(south.message).toContain('50 mm north');
    expect(south.rule!.id).toBe('way.clear-width');
  });

  test('a width of the brief goes before the rule, and is required', () => {
    const needs = { access: [{ to: 't1', sides: ['east'], width: 2.6 }] };
    const east = find(check({ needs }), 'room/access/t1/east');
    expect(east).toMatchObject({ verdict: 'fails', required: true, demand: 2.6 });
    expect(east.rule).toBeUndefined();
  });

  test('an enclosure round the table is measured from its outside', () => {
    const design = { enclosures: [enclosure('e1', 2.2, 1.95, 3.6, 2.1, ['t1'])] };
    expect(find(check({ design }), 'room/access/e1/south').capacity).toBeCloseTo(1.95, 9);
  });

  test('inside a walk-in enclosure the way ends at its inside', () => {
    const walkIn = { ...enclosure('e1', 1.5, 1.25, 5, 3.5, ['t1']), kind: 'walk-in' };
    const south = find(check({ design: { enclosures: [walkIn] } }), 'room/access/t1/south');
    expect(south.capacity).toBeCloseTo(0.95, 9);
  });

  test('a closed curtain counts as a wall', () => {
    const design = {
      runs: [
        run('r1', [
          [0, 1.5],
          [8, 1.5],
        ]),
      ],
    };
    const south = find(check({ design }), 'room/access/t1/south');
    expect(south.verdict).toBe('fails');
    expect(south.message).toContain('r1');
  });

  test('access to something unknown is said', () => {
    const needs = { access: [{ to: 'ghost', sides: ['east'] }] };
    expect(find(check({ needs }), 'room/access/ghost')).toMatchObject({ verdict: 'not assessed', required: true });
  });
});

describe('doors', () => {
  test('a free swing meets, a column in it fails with its place', () => {
    expect(find(check(), 'room/door-swing/door-a').verdict).toBe('meets');
    const blocked = check({ room: { columns: [box('c1', 0.9, 0.5, 0.3, 0.3, 3)] } });
    const swing = find(blocked, 'room/door-swing/door-a');
    expect(swing.verdict).toBe('fails');
    expect(swing.at).toEqual([expect.closeTo(0.9, 9), expect.closeTo(0.5, 9)]);
  });

  test('a door that swings out is not assessed', () => {
    const room = { doors: [{ ...door, swing: 'out' }] };
    expect(find(check({ room }), 'room/door-swing/door-a').verdict).toBe('not assessed');
  });

  test('a narrow exit fails', () => {
    const room = { doors: [{ ...door, width: 0.7 }] };
    expect(find(check({ room }), 'room/door-width/door-a')).toMatchObject({ verdict: 'fails', required: true });
  });

  test('without an exit the ways out are not assessed, and that is required', () => {
    const findings = check({ room: { doors: [] } });
    expect(find(findings, 'room/exits')).toMatchObject({ verdict: 'not assessed', required: true });
    expect(findings.some((f) => f.id.startsWith('room/exit-way'))).toBe(false);
  });
});

describe('ways', () => {
  test('the way to an exit is as wide as its narrowest place', () => {
    // The table leaves 1.05 m to the east wall of a corridor; a bench closes the west side.
    const design = {
      equipment: [box('bench', 0, 3.9, 7, 0.5)],
      tables: [box('t1', 2, 4.4 + 0.2, 3, 1)],
    };
    const way = find(check({ design }), 'room/exit-way/t1');
    expect(way.capacity).toBeCloseTo(1.0, 6);
    expect(way).toMatchObject({ verdict: 'attention', required: true, decider: 'fire authority' });
  });

  test('a closed curtain shuts the way, a marked opening lets people through', () => {
    const needs = { ways: [{ from: 'door-a', to: [4, 5] }] };
    const line: Vec2[] = [
      [0, 1.8],
      [8, 1.8],
    ];
    const shut = find(check({ needs, design: { runs: [run('r1', line)] } }), 'room/way/1');
    expect(shut).toMatchObject({ verdict: 'fails', capacity: 0 });
    const open = run('r1', line, { openings: [{ at: 1, width: 1.2 }] });
    const way = find(check({ needs, design: { runs: [open] } }), 'room/way/1');
    expect(way.capacity).toBeCloseTo(1.2, 6);
    expect(way.message).toContain('r1');
  });

  test('a way into a walk-in enclosure is not searched', () => {
    const walkIn = { ...enclosure('e1', 1.8, 1.6, 4.4, 2.8, ['t1']), kind: 'walk-in' };
    const needs = { ways: [{ from: 'door-a', to: 't1' }] };
    expect(find(check({ needs, design: { enclosures: [walkIn] } }), 'room/way/1').verdict).toBe('not assessed');
  });
});

test('a gap that people might take for a way is called to attention; one beside a wall is not', () => {
  const tables = [box('t1', 1, 2.25, 2, 1.5), box('t2', 3.7, 2.25, 2, 1.5), box('t3', 7.6, 2.25, 0.2, 1.5)];
  const findings = check({ design: { tables } });
  expect(find(findings, 'room/gap/x/t1/t2')).toMatchObject({ verdict: 'attention', capacity: expect.closeTo(0.7, 9) });
  expect(findings.some((f) => f.id.startsWith('room/gap') && f.id.includes('wall') && f.id.includes('t3'))).toBe(false);
});

describe('overhead', () => {
  test('a low track and a low roof fail for headroom', () => {
    const walkIn = { ...enclosure('e1', 1.8, 1.6, 4.4, 2.8, ['t1']), kind: 'walk-in', clearHeight: 1.9 };
    const design = {
      enclosures: [walkIn],
      runs: [
        run(
          'r1',
          [
            [0, 5],
            [8, 5],
          ],
          { trackHeight: 1.95 },
        ),
      ],
    };
    const findings = check({ design });
    expect(find(findings, 'room/headroom/e1').verdict).toBe('fails');
    expect(find(findings, 'room/headroom/r1').verdict).toBe('fails');
    expect(find(findings, 'room/headroom/room').verdict).toBe('meets');
  });

  const head = (x: number, y: number, deflector: number) => ({ id: 'h1', at: [x, y] as Vec2, deflector });

  test('a roof in the free plane under a head fails; a wide roof below it is for the fire authority', () => {
    const design = { enclosures: [enclosure('e1', 2.2, 1.95, 3.6, 2.1, ['t1'])] };
    const high = check({ design, room: { sprinklers: [head(4, 3, 2.7)] } });
    expect(find(high, 'room/sprinkler/h1/e1')).toMatchObject({ verdict: 'fails', capacity: expect.closeTo(0.3, 9) });
    const low = check({ design, room: { sprinklers: [head(4, 3, 2.95)] } });
    expect(find(low, 'room/sprinkler/h1/e1').verdict).toBe('meets');
    expect(find(low, 'room/sprinkler-roof/e1').verdict).toBe('attention');
  });

  test('a curtain near a head may pass by the table, only to attention', () => {
    // NFPA 13 (2016), Table 8.6.5.2.2 (from memory): 12 in away, 6 in (152 mm) below the deflector; further away, more.
    const near = run(
      'r1',
      [
        [0, 3.3],
        [8, 3.3],
      ],
      { curtainTop: 2.7, trackHeight: 2.72 },
    );
    const sprinkler = (y: number) => ({ room: { sprinklers: [head(1, y, 2.9)] }, design: { runs: [near] } });
    expect(find(check(sprinkler(3)), 'room/sprinkler/h1/r1').verdict).toBe('attention');
    expect(find(check(sprinkler(2)), 'room/sprinkler/h1/r1').verdict).toBe('fails');
  });

  test('detectors and exit signs are said to be not assessed', () => {
    const bay = run(
      'r1',
      [
        [1, 1],
        [7, 1],
        [7, 5],
        [1, 5],
      ],
      { closed: true, kind: 'bay' },
    );
    const room = {
      detectors: [{ id: 'd1', at: [4, 3], kind: 'smoke' }],
      exitSigns: [{ id: 's1', at: [1, 0], height: 2.2 }],
    };
    const findings = check({ room, design: { runs: [bay] } });
    expect(find(findings, 'room/detector/d1')).toMatchObject({ verdict: 'not assessed', required: true });
    expect(find(findings, 'room/exit-sign/s1').verdict).toBe('not assessed');
  });
});

describe('enclosures in the room', () => {
  const walkIn = (sides: readonly object[], over: object = {}) => ({
    ...enclosure('e1', 2, 1.75, 4, 2.5, ['t1']),
    kind: 'walk-in',
    sides,
    ...over,
  });
  const beam = (from: Vec2, to: Vec2) => ({
    of: 'e1',
    role: 'beam',
    shape: { shape: 'bar', from: [...from, 2.2], to: [...to, 2.2] },
  });
  const south = (closure: string) => side('south', closure, [2, 1.75], [6, 1.75]);

  test('all sides rigid: no way in fails, and a close one is left open for the group', () => {
    const none = find(check({ design: { enclosures: [walkIn([south('rigid panel')])] } }), 'room/entry/e1');
    expect(none).toMatchObject({ verdict: 'fails', utilisation: null, decider: 'fire authority', required: true });
    expect(none.message).toContain('no way into');
    const close = walkIn([south('rigid panel')], { kind: 'close' });
    expect(find(check({ design: { enclosures: [close] } }), 'room/entry/e1').verdict).toBe('not assessed');
  });

  test('the widest bay between posts of a side that opens counts', () => {
    const parts = [beam([2, 1.73], [4.2, 1.73]), beam([4.24, 1.73], [6, 1.73]), beam([6.02, 1.75], [6.02, 4.25])];
    const way = find(check({ design: { enclosures: [walkIn([south('strip')])], parts } }), 'room/entry/e1');
    expect(way).toMatchObject({ verdict: 'meets', demand: 1 });
    expect(way.capacity).toBeCloseTo(2.2, 9);
    expect(way.message).toContain('strips may hang');
    const narrow = [beam([2, 1.73], [2.99, 1.73])];
    const tight = find(check({ design: { enclosures: [walkIn([south('curtain')])], parts: narrow } }), 'room/entry/e1');
    expect(tight.verdict).toBe('fails');
  });

  test('the top stays under the ceiling and under ducts over it', () => {
    const over = { enclosures: [walkIn([south('curtain')], { top: 2.9, unitCount: 1 })] };
    expect(find(check({ design: over }), 'room/under-ceiling/e1').verdict).toBe('attention');
    const duct = { ...box('duct', 3, 1, 0.4, 4, 3), bottom: 2.7 };
    const low = find(check({ design: over, room: { beams: [duct] } }), 'room/under-ceiling/e1');
    expect(low.verdict).toBe('fails');
    expect(low.message).toContain('duct');
    const away = { ...box('duct', 7, 1, 0.4, 4, 3), bottom: 2.7 };
    expect(find(check({ design: over, room: { beams: [away] } }), 'room/under-ceiling/e1').verdict).toBe('attention');
  });
});

describe('boards', () => {
  const board = {
    id: 'b1',
    name: 'Board',
    wall: 1,
    from: [8, 0.1] as Vec2,
    to: [8, 0.5] as Vec2,
    inward: [-1, 0] as Vec2,
    width: 0.4,
    bottom: 1,
    top: 1.8,
    voltsToGround: 230,
    opposite: 'grounded',
  };

  test('the side wall beside a board near a corner does not block it', () => {
    expect(find(check({ room: { boards: [board] } }), 'room/board/b1')).toMatchObject({ verdict: 'meets' });
  });

  test('a cabinet before it fails for the electrician', () => {
    const room = { boards: [board], obstructions: [box('cabinet', 6.6, 0, 0.5, 1)] };
    const finding = find(check({ room }), 'room/board/b1');
    expect(finding).toMatchObject({ verdict: 'fails', decider: 'electrician', required: true });
    expect(finding.capacity).toBeCloseTo(0.9, 9);
  });

  test('live parts opposite ask for more than the rule; above 600 V nothing is said', () => {
    const cabinet = [box('cabinet', 6.3, 0, 0.5, 1)];
    const live = { boards: [{ ...board, opposite: 'live' }], obstructions: cabinet };
    expect(find(check({ room: live }), 'room/board/b1').verdict).toBe('attention');
    const high = { boards: [{ ...board, voltsToGround: 1000 }] };
    expect(find(check({ room: high }), 'room/board/b1').verdict).toBe('not assessed');
  });
});

describe('standing', () => {
  test('a table through a wall and a table in another fail', () => {
    const tables = [box('t1', 6, 2, 3, 1.5), box('t2', 5, 2.5, 2, 1)];
    const findings = check({ design: { tables } });
    expect(find(findings, 'room/inside/t1')).toMatchObject({ verdict: 'fails', demand: expect.closeTo(1, 9) });
    expect(find(findings, 'room/overlap/t2').verdict).toBe('fails');
  });

  test('a table in its own enclosure, and a run from wall to wall, stand well', () => {
    const design = {
      enclosures: [enclosure('e1', 2.2, 1.95, 3.6, 2.1, ['t1'])],
      runs: [
        run('r1', [
          [0, 5],
          [8, 5],
        ]),
      ],
    };
    const findings = check({ design });
    for (const id of ['t1', 'e1', 'r1']) {
      expect(find(findings, `room/overlap/${id}`).verdict).toBe('meets');
      expect(find(findings, `room/inside/${id}`).verdict).toBe('meets');
    }
  });

  test('a curtain through a table fails', () => {
    const findings = check({
      design: {
        runs: [
          run(
            'r1',
            [
              [0, 3],
              [8, 3],
            ],
            { hemGap: 0.02 },
          ),
        ],
      },
    });
    expect(find(findings, 'room/overlap/r1').verdict).toBe('fails');
  });
});

describe('survey', () => {
  const diagonals = [{ from: 0, to: 2, measured: 10.012 }];

  test('the closing error is held against the tolerance given, else not assessed', () => {
    expect(find(check({ brief: { diagonals, tolerance: 0.01 } }), 'room/diagonal/0-2').verdict).toBe('fails');
    expect(find(check({ brief: { diagonals, tolerance: 0.02 } }), 'room/diagonal/0-2').verdict).toBe('meets');
    const open = find(check({ brief: { diagonals } }), 'room/diagonal/0-2');
    expect(open.verdict).toBe('not assessed');
    expect(open.message).toContain('12 mm');
  });

  test('a corner that does not exist is said', () => {
    const finding = find(check({ brief: { diagonals: [{ from: 0, to: 9, measured: 1 }] } }), 'room/diagonal/0-9');
    expect(finding.message).toContain('corner 9');
  });

  test('the longest piece must come through the way in', () => {
    const brief = { wayIn: { width: 0.9, height: 2, longestPiece: 2.5 } };
    const design = { parts: [{ id: 'p', item: 'bar', group: 'profiles', length: 3 }] };
    const findings = check({ brief, design });
    expect(find(findings, 'room/way-in/longest-piece').verdict).toBe('fails');
    expect(find(findings, 'room/way-in/turning').verdict).toBe('not assessed');
  });

  test('an accessible route is asked for and not assessed', () => {
    const finding = find(check({ needs: { accessibleRoute: true } }), 'room/accessible-route');
    expect(finding).toMatchObject({ verdict: 'not assessed', required: true });
  });
});
