import fc from 'fast-check';
import { expect, test } from 'vitest';
import { arrangedText } from '../../src/arrange/arranged.js';
import { angleTo, closely, lengthTo } from '../../src/arrange/exact.js';
import { groupOf, idsLike, unitsOf } from '../../src/arrange/members.js';
import { shifted } from '../../src/arrange/shifted.js';
import { briefData } from '../../src/brief/document.js';
import { briefs, threeTables } from './briefs.js';

const moved = (text: string, ids: readonly string[], by: readonly [number, number]) =>
  arrangedText(text, shifted(briefData(text), ids, by));
const straight = /turn: (30.5 deg|-45 deg|0.25 rad)/;

test('a move and the same move back leave the same text', () => {
  const mm = fc.integer({ min: -3000, max: 3000 }).map((n) => n / 1000);
  fc.assert(
    fc.property(briefs, fc.tuple(mm, mm), ({ text, ids }, by) => {
      const all = [...ids, 'run-1', 'column-1', 'door-1'];
      const back = moved(moved(text, all, by), all, [-by[0], -by[1]]);
      expect(back).toBe(text);
    }),
    { numRuns: 30 },
  );
});

test('what stands on a table is moved on the table, by the same way in the room and back', () => {
  fc.assert(
    fc.property(
      briefs.filter(({ text }) => !straight.test(text)),
      ({ text }) => {
        const there = moved(text, ['part-1', 'laser-1'], [0.05, 0.1]);
        expect(there).not.toBe(text);
        expect(moved(there, ['part-1', 'laser-1'], [-0.05, -0.1])).toBe(text);
      },
    ),
    { numRuns: 20 },
  );
});

test('a thing that is carried by another in hand is moved once', () => {
  const data = briefData(threeTables);
  const ids = ['enclosure-1', 'table-1', 'microscope-1', 'laser-fibre'];
  expect(groupOf(data, ids).members.map(({ id }) => id)).toEqual(['table-1', 'table-2']);
  expect(unitsOf(data, ids)).toEqual(['enclosure-1']);
  expect(shifted(data, ids, [0.1, 0]).changes).toEqual([
    [['tables', 0, 'at', 0], '2.2 m'],
    [['tables', 1, 'at', 0], '2.2 m'],
  ]);
});

test('a door moves only along its wall, and a sign with its door: both are told', () => {
  const { changes, told } = shifted(briefData(threeTables), ['door-1', 'sign-1'], [0, 1]);
  expect(changes).toEqual([]);
  expect(told.map((sentence) => sentence.split(' ')[0])).toEqual(['sign-1', 'door-1']);
});

test('lengths keep their unit and form', () => {
  expect(lengthTo('4 ft 6 in', 1.397, closely)).toBe('4 ft 7 in');
  expect(lengthTo('120 mm', 0.13, closely)).toBe('130 mm');
  expect(lengthTo('60 in', 1, closely)).toBe('39.3701 in');
  expect(lengthTo('1 m', -0, closely)).toBe('0 m');
  expect([angleTo('90 deg', -Math.PI), angleTo('0.5 rad', 0.25), angleTo(undefined, Math.PI / 6)]).toEqual([
    '180 deg',
    '0.25 rad',
    '30 deg',
  ]);
});

test('all of a kind are the tables, or what stands on tables; without a kind everything that has a place', () => {
  const data = briefData(threeTables);
  expect(idsLike(data, 'table-2')).toEqual(['table-1', 'table-2', 'table-3']);
  expect(idsLike(data, 'microscope-1')).toEqual(['microscope-1', 'amplifier-2']);
  const all = idsLike(data, null);
  expect(all).toContain('partition-1');
  expect(all).not.toContain('sign-1');
});
