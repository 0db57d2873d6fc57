import fc from 'fast-check';
import { expect, test } from 'vitest';
import { patchedList, patchedRecord, teller } from './patch.js';

/** As a channel between threads does: what arrives is a copy. */
const sent = <T>(value: T): T => structuredClone(value);

const thing = fc.record({ id: fc.constantFrom('a', 'b', 'c', 'd', 'e'), at: fc.array(fc.integer({ min: 0, max: 2 })) });
const record = fc.record(
  {
    name: fc.constantFrom('one', 'two'),
    room: fc.record({ height: fc.integer({ min: 2, max: 4 }) }),
    things: fc.array(thing, { maxLength: 6 }),
    parts: fc.array(thing, { maxLength: 6 }),
    note: fc.constantFrom(null, 'x'),
  },
  { requiredKeys: ['name'] },
);

test('whatever states follow each other, the other side holds the same', () => {
  fc.assert(
    fc.property(fc.array(record, { maxLength: 6 }), (states) => {
      const tell = teller();
      let there: object | null = null;
      let list: readonly object[] = [];
      for (const state of states) {
        there = patchedRecord(there, sent(tell.record('state', state)));
        list = patchedList(list, sent(tell.list('things', state.things ?? [])));
        expect(there).toEqual(state);
        expect(list).toEqual(state.things ?? []);
      }
    }),
  );
});

test('what stays keeps its identity on the other side, and is not sent', () => {
  const tell = teller();
  const state = (height: number, x: number) => ({
    room: { height },
    things: [
      { id: 'a', x: 0 },
      { id: 'b', x },
    ],
  });
  const first = patchedRecord<ReturnType<typeof state>>(null, sent(tell.record('s', state(3, 1))));
  const moved = tell.record('s', state(3, 2));
  expect(moved).toEqual({ lists: { things: [0, { is: { id: 'b', x: 2 } }] }, values: {}, gone: [] });
  const second = patchedRecord(first, sent(moved));
  expect(second.room).toBe(first.room);
  expect(second.things[0]).toBe(first.things[0]);
  expect(second.things).not.toBe(first.things);
  const third = patchedRecord(second, sent(tell.record('s', state(4, 2))));
  expect(third.things).toBe(second.things);
  expect(third.room).toEqual({ height: 4 });
});
