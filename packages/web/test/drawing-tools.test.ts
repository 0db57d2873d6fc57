import { bounds, distance2, type Ring, readBrief, type Vec2 } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { briefData } from '../src/brief/document.js';
import { listAt, valueAt } from '../src/brief/path.js';
import { edited } from '../src/drawing/edit.js';
import { sceneOf } from '../src/drawing/scene.js';
import { after, begun, type DrawingEvent, fieldsOf, type Outcome, placeOf, shownOf } from '../src/drawing/session.js';
import { tapeEdit } from '../src/drawing/tape/tape-edit.js';
import { spreadCorners, traverse } from '../src/drawing/tape/traverse.js';
import { allTools } from '../src/drawing/tools/all.js';
import { designOf } from './design-of.js';

const room = `cloche: 1
project: { name: Draw, units: metric }
room:
  name: Room
  outline: [[0 m, 0 m], [8 m, 0 m], [8 m, 6 m], [0 m, 6 m]]
  height: 3 m
  doors:
    - { id: door-1, wall: 0, at: 0.5 m, width: 1 m, height: 2.1 m, swing: out, hinge: left, exit: true }
  windows:
    - { id: window-1, wall: 2, at: 2 m, width: 1.2 m, height: 1.2 m, sill: 0.9 m }
tables:
  - { id: table-1, at: [4 m, 3 m], turn: 90 deg, length: 2.4 m, width: 1.2 m, height: 0.9 m }
`;

/** Points by where they are set; numbers as they are typed. */
type Act = Vec2 | 'turn' | { readonly type: string; readonly value: number } | 'back' | 'put';

/** What a tool makes of a row of acts, as the page would send them. */
function draw(tool: string, acts: readonly Act[], text = room) {
  const scene = sceneOf(briefData(text), designOf(text));
  const found = allTools.find(({ id }) => id === tool)!;
  let out: Outcome = { session: begun(found, [4, 3]) };
  const happen = (event: DrawingEvent) => {
    expect(out.session).not.toBeNull();
    out = after(out.session!, event, scene);
  };
  for (const act of acts) {
    if (act === 'back') happen({ kind: 'back' });
    else if (act === 'turn') happen({ kind: 'turn' });
    else if (act === 'put') happen({ kind: 'put', near: 1e-4 });
    else if ('type' in act) happen({ kind: 'type', field: act.type, value: act.value });
    else {
      happen({ kind: 'aim', at: act, reasons: [] });
      happen({ kind: 'put', near: 1e-4 });
    }
  }
  const after_ = out.edit ? edited(text, out.edit) : text;
  return { ...out, text: after_, data: briefData(after_), scene };
}

const last = (data: unknown, ...path: readonly (string | number)[]) => listAt(data, path).at(-1);

describe('the room', () => {
  test('is drawn corner by corner and closed by the first; doors and windows stay on their walls', () => {
    const drawn = draw('draw-room', [
      [0, 0],
      [8.02, 0],
      [8.02, 6],
      [4, 6],
      [4, 7],
      [0, 7],
      [0, 0],
    ]);
    expect(listAt(drawn.data, ['room', 'outline'])).toHaveLength(6);
    expect(valueAt(drawn.data, ['room', 'doors', 0, 'wall'])).toBe(0);
    // The window was 4.8 m to 6 m from the west: on the north wall at y = 6, from (8.02, 6) westward.
    expect(valueAt(drawn.data, ['room', 'windows', 0])).toMatchObject({ id: 'window-1', wall: 2, at: '2.02 m' });
    expect(drawn.told).toEqual([]);
    expect(drawn.session).toBeNull();
    expect(designOf(drawn.text).room.outline).toHaveLength(6);
  });

  test('takes typed lengths, with a direction by angle', () => {
    const leg = (value: number, angle: number): Act[] => [
      { type: 'length', value },
      { type: 'angle', value: angle },
      'put',
    ];
    const turn = Math.PI / 2;
    const acts: Act[] = [[0, 0], ...leg(9, 0), ...leg(7, turn), ...leg(9, 2 * turn), [0, 0]];
    const { data, text } = draw('draw-room', acts);
    expect(listAt(data, ['room', 'outline'])).toEqual([
      ['0 m', '0 m'],
      ['9 m', '0 m'],
      ['9 m', '7 m'],
      ['0 m', '7 m'],
    ]);
    expect(designOf(text).room.outline).toHaveLength(4);
  });

  test('keeps what no longer fits, and tells it', () => {
    const small = draw('draw-room', [
      [2, 1],
      [7, 1],
      [7, 5.5],
      [2, 5.5],
      [2, 1],
    ]);
    // The door stood west of where the south wall now begins.
    expect(small.told!.join(' ')).toContain('door-1');
    expect(valueAt(small.data, ['room', 'doors', 0, 'id'])).toBe('door-1');
    expect(designOf(small.text).room.doors).toHaveLength(1);
  });

  test('takes the last corner back, and gives up a typed length first', () => {
    const { session } = draw('draw-room', [[0, 0], [4, 0], { type: 'length', value: 2 }, 'back', 'back']);
    expect(session!.typed).toEqual({});
    expect(session!.state).toEqual({ corners: [[0, 0]] });
  });

  test('refuses walls that cross, and loses nothing', () => {
    const { session, edit } = draw('draw-room', [
      [0, 0],
      [4, 4],
      [4, 0],
      [0, 4],
      [0, 0],
    ]);
    expect(edit).toBeUndefined();
    expect(session!.refused).toBe(true);
    expect(session!.state).toMatchObject({ corners: { length: 4 } });
  });

  test('comes from a tape list with its error spread, and reads back', () => {
    const scene = sceneOf(briefData(room), designOf(room));
    const drawn = traverse([8, 6, 7.98, 6].map((length) => ({ length, turn: Math.PI / 2 })));
    const { edit } = tapeEdit(spreadCorners(drawn), [{ from: 0, to: 2, measured: 10 }], scene);
    const text = edited(room, edit);
    expect(listAt(briefData(text), ['room', 'diagonals'])).toEqual([{ from: 0, to: 2, measured: '10 m' }]);
    expect(designOf(text).room.outline).toHaveLength(4);
  });
});

describe('what is in a wall', () => {
  test.each(['put-door', 'put-window', 'put-board'])('%s slides along the wall under the pointer', (tool) => {
    const { data, text, session } = draw(tool, [[7.9, 4]]);
    const list = tool === 'put-door' ? 'doors' : tool === 'put-window' ? 'windows' : 'boards';
    expect(last(data, 'room', list)).toMatchObject({ wall: 1 });
    // Ready for the next one.
    expect(session).not.toBeNull();
    designOf(text);
  });

  test('a typed distance is from the first corner of the wall', () => {
    const { data } = draw('put-door', [{ type: 'near', value: 2.5 }, [7.9, 4]]);
    expect(last(data, 'room', 'doors')).toMatchObject({ wall: 1, at: '2.5 m' });
  });

  test('a distance that does not fit is told, not made to fit', () => {
    const { edit, session } = draw('put-door', [{ type: 'near', value: 5.5 }, [7.9, 4]]);
    expect(edit).toBeUndefined();
    expect(session!.says).toContain('6000 mm');
  });
});

describe('what stands in the room', () => {
  const standing = ['column', 'obstruction', 'sprinkler', 'detector', 'exit-sign', 'supply', 'return', 'luminaire'];
  test.each([...standing, 'stop', 'sensor', 'table', 'equipment'])('put-%s', (name) => {
    const before = JSON.stringify(briefData(room)).length;
    const { data, text } = draw(`put-${name}`, [[2, 1.5]]);
    expect(JSON.stringify(data).length).toBeGreaterThan(before);
    designOf(text);
  });

  test('a table stands at typed distances from two walls', () => {
    const acts: Act[] = [[2, 1.5], { type: 'west', value: 0.9 }, { type: 'south', value: 1.2 }, 'put'];
    const { data, text } = draw('put-table', acts.slice(1), room);
    expect(last(data, 'tables')).toMatchObject({ at: ['2.1 m', '1.8 m'], length: '2.4 m', width: '1.2 m' });
    designOf(text);
  });

  test('the distances shown are those to the nearest two walls', () => {
    const { session, scene } = draw('put-table', [{ type: 'east', value: 0.5 }]);
    expect(fieldsOf(session!, scene).map(({ id }) => id)).toEqual(['east', 'south']);
    expect(placeOf(session!, scene)[0]).toBeCloseTo(8 - 0.5 - 1.2, 9);
  });

  test('a table through a wall is refused', () => {
    const { edit, session } = draw('put-table', [[0.5, 3]]);
    expect(edit).toBeUndefined();
    expect(session!.refused).toBe(true);
  });

  test('what is turned by a quarter covers what its ghost covered', () => {
    // A table of 2.4 m by 1.2 m turned: 0.7 m clear of the west wall it is 1.3 m east, 1.6 m from the south its middle is 2.8 m up.
    const turned = draw('put-table', ['turn', [1.3, 2.8]]);
    expect(last(turned.data, 'tables')).toMatchObject({ at: ['1.3 m', '2.8 m'], turn: '90 deg' });
    const { min, max } = bounds(designOf(turned.text).tables.at(-1)!.outline);
    for (const [got, wanted] of [
      [min[0], 0.7],
      [min[1], 1.6],
      [max[0], 1.9],
      [max[1], 4],
    ] as const)
      expect(got).toBeCloseTo(wanted, 9);
    // A luminaire has no angle in the brief: its sizes change places.
    expect(last(draw('put-luminaire', ['turn', [2, 2]]).data, 'room', 'luminaires')).toMatchObject({
      size: ['0.3 m', '1.2 m'],
    });
  });

  test.each([0, 20, 90, 160, 270])('equipment on a table turned by %d degrees stands as its ghost did', (degrees) => {
    const text = room.replace('turn: 90 deg', `turn: ${degrees} deg`);
    const found = allTools.find(({ id }) => id === 'put-equipment')!;
    const scene = sceneOf(briefData(text), designOf(text));
    const aimed = after(begun(found, [0, 0]), { kind: 'aim', at: [4.1, 3.2], reasons: [] }, scene).session!;
    const [ghost] = shownOf(aimed, scene).rings!;
    const { data, text: drawn } = draw('put-equipment', [[4.1, 3.2]], text);
    expect(listAt(data, ['tables', 0, 'equipment'])).toHaveLength(1);
    const [stands] = designOf(drawn).tables[0]!.equipment;
    const sorted = (ring: Ring) => [...ring].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
    for (const [i, corner] of sorted(stands!.outline).entries())
      expect(distance2(corner, sorted(ghost!)[i]!)).toBeLessThan(2e-4);
  });

  test('equipment over a table is measured on the table', () => {
    // Table turned by 90 degrees about (4, 3): east of its middle is across it, southward.
    const { data, text } = draw('put-equipment', [[4.3, 3.5]]);
    expect(valueAt(data, ['tables', 0, 'equipment', 0, 'at'])).toEqual(['0.5 m', '-0.3 m']);
    designOf(text);
  });
});

describe('lines', () => {
  test('a beam has two ends', () => {
    const { data, text } = draw('put-beam', [
      [0.5, 1],
      [7.5, 1],
    ]);
    expect(last(data, 'room', 'beams')).toMatchObject({ from: ['0.5 m', '1 m'], to: ['7.5 m', '1 m'] });
    designOf(text);
  });

  test.each(['put-continuous', 'put-pulsed'])('%s stands on the table, with a mirror at each corner', (tool) => {
    const { data, text } = draw(tool, [
      [4, 2],
      [4, 3.5],
      [4.4, 3.5],
      [4.4, 3.5],
    ]);
    const laser = last(data, 'lasers');
    expect(laser).toMatchObject({ table: 'table-1', at: ['-1 m', '0 m'], direction: '0 deg' });
    expect(listAt(laser, ['legs']).map((each) => valueAt(each, ['endsOn']))).toEqual(['mirror', 'beam stop']);
    expect(listAt(laser, ['legs']).map((each) => valueAt(each, ['to']))).toEqual([
      ['0.5 m', '0 m'],
      ['0.5 m', '-0.4 m'],
    ]);
    designOf(text);
  });

  test('a run is a bay when it is closed by its first corner', () => {
    const { data, text } = draw('put-run', [
      [2, 1],
      [6, 1],
      [6, 5],
      [2, 5],
      [2, 1],
    ]);
    expect(last(data, 'layout', 'runs')).toMatchObject({ kind: 'bay', closed: true, path: { length: 4 } });
    designOf(text);
  });

  test('a run is a partition when it is ended at its last corner', () => {
    const { data, text } = draw('put-run', [
      [1, 1],
      [1, 5],
      [1, 5],
    ]);
    expect(last(data, 'layout', 'runs')).toMatchObject({
      kind: 'partition',
      path: [
        ['1 m', '1 m'],
        ['1 m', '5 m'],
      ],
    });
    designOf(text);
  });

  test('a run does not cross itself', () => {
    const { edit, session } = draw('put-run', [
      [1, 1],
      [3, 3],
      [3, 1],
      [1, 3],
      [1, 1],
    ]);
    expect(edit).toBeUndefined();
    expect(session!.refused).toBe(true);
  });
});

describe('what belongs to a thing', () => {
  test.each([
    ['put-close-enclosure', [4, 3], ['layout', 'enclosures'], { kind: 'close', around: ['table-1'] }],
    ['put-walk-in-enclosure', [4, 3], ['layout', 'enclosures'], { kind: 'walk-in', around: ['table-1'] }],
    ['put-cover', [5.4, 5.9], ['layout', 'covers'], { over: 'window-1' }],
    ['put-sign', [1, 0.1], ['layout', 'signs'], { door: 'door-1' }],
    ['put-contact', [1, 0.1], ['layout', 'interlocks'], { on: 'door-1' }],
  ] as const)('%s', (tool, at, list, expected) => {
    const { data, text } = draw(tool, [at]);
    expect(last(data, ...list)).toMatchObject(expected);
    designOf(text);
  });

  test('is not put where nothing is', () => {
    const { edit, session } = draw('put-close-enclosure', [[1, 5]]);
    expect(edit).toBeUndefined();
    expect(session!.says).toContain('a table');
  });
});

test('an imperial project is written in feet and inches', () => {
  const { data, text } = draw(
    'put-column',
    [{ type: 'west', value: 36 * 0.0254 }, { type: 'south', value: 0.6096 }, 'put'],
    room.replace('units: metric', 'units: imperial'),
  );
  // Half of a column of 0.3 m stands between its middle and its edge: 0.9144 m + 0.15 m = 41.906 in.
  expect(last(data, 'room', 'columns')).toMatchObject({ at: ['41.906 in', '29.906 in'] });
  designOf(text);
});

test('every tool says what to do, has an own id, and no two share a key', () => {
  const scene = sceneOf(briefData(room), designOf(room));
  for (const tool of allTools) expect(tool.hint(tool.start, scene)).toMatch(/\.$/);
  expect(new Set(allTools.map(({ id }) => id)).size).toBe(allTools.length);
  const keys = allTools.flatMap((tool) => tool.keys ?? []);
  expect(new Set(keys).size).toBe(keys.length);
});

/** Numbers of a room of 26 ft by 20 ft: some on its walls, some anywhere, some outside. */
const place = (max: number) => fc.oneof(fc.constantFrom(0, max), fc.double({ min: -0.2, max: max + 0.2, noNaN: true }));
const imperial = room
  .replace('units: metric', 'units: imperial')
  .replace('[8 m, 0 m], [8 m, 6 m], [0 m, 6 m]', '[26 ft, 0 ft], [24 ft, 20 ft], [0 ft, 20 ft]');

test.each(allTools.filter(({ id }) => id !== 'draw-room').map(({ id }) => id))(
  '%s leaves a brief that can be read, wherever it is pointed',
  (id) => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(place(8), place(6)), { minLength: 1, maxLength: 5 }),
        fc.constantFrom(room, imperial),
        fc.boolean(),
        (points, text, closes) => {
          const tool = allTools.find((each) => each.id === id)!;
          const scene = sceneOf(briefData(text), designOf(text));
          let session = begun(tool, [4, 3]);
          for (const at of [...points, closes ? points[0]! : points.at(-1)!]) {
            const aimed = after(session, { kind: 'aim', at, reasons: [] }, scene).session!;
            const out = after(aimed, { kind: 'put', near: 1e-4 }, scene);
            if (out.edit) {
              const read = readBrief(edited(text, out.edit));
              expect(read.ok ? [] : read.problems.map(({ message }) => message)).toEqual([]);
            }
            if (!out.session) return;
            session = out.session;
          }
        },
      ),
      { numRuns: 25 },
    );
  },
);
