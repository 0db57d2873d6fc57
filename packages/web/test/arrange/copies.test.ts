import { readBrief } from '@cloche/engine';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clippingOf, pasted } from '../../src/arrange/clipping.js';
import { copied } from '../../src/arrange/copies.js';
import { briefData } from '../../src/brief/document.js';
import { idsInUse, pathOfThing } from '../../src/brief/find.js';
import { valueAt } from '../../src/brief/path.js';
import { freshBrief } from '../../src/state/fresh-brief.js';
import { briefs, threeTables } from './briefs.js';

const problemsOf = (text: string) => {
  const read = readBrief(text);
  return read.ok ? [] : read.problems.map(({ code, message }) => `${code}: ${message}`);
};
const entryOf = (text: string, id: string) => valueAt(briefData(text), pathOfThing(briefData(text), id) ?? ['nothing']);
const everything = [
  'table-1',
  'table-2',
  'table-3',
  'run-1',
  'column-1',
  'lamp-1',
  'laser-2',
  'enclosure-1',
  'part-1',
  'door-1',
];

describe('a copy', () => {
  test('has no id twice and names nothing that is not there', () => {
    fc.assert(
      fc.property(
        briefs,
        fc.subarray(everything, { minLength: 1 }),
        fc.integer({ min: 1, max: 3 }),
        ({ text }, ids, times) => {
          const { text: after, ids: copies } = copied(text, ids, [0, 0], times);
          expect(problemsOf(after).filter((p) => /same-id|unknown-reference|unknown-field/.test(p))).toEqual([]);
          expect(new Set(copies).size).toBe(copies.length);
          for (const id of copies) expect(idsInUse(briefData(text)).has(id)).toBe(false);
        },
      ),
      { numRuns: 15 },
    );
  });
  test('of a table brings its lasers, which stand on the copy', () => {
    const { text, ids } = copied(threeTables, ['table-3'], [0, 1.6]);
    expect(ids).toEqual(['table-4', 'laser-pulsed-1', 'laser-harmonic-1']);
    expect(valueAt(entryOf(text, 'table-4'), ['at'])).toEqual(['7.6 m', '5.2 m']);
    expect(valueAt(entryOf(text, 'laser-pulsed-1'), ['table'])).toBe('table-4');
    expect(valueAt(entryOf(text, 'laser-pulsed-1'), ['at'])).toEqual(['-0.6 m', '-0.4 m']);
    expect(problemsOf(text)).toEqual([]);
  });
  test('of an enclosure stands around copies of its tables', () => {
    const { text, ids } = copied(threeTables, ['enclosure-1'], [0, 0]);
    expect(valueAt(entryOf(text, 'enclosure-2'), ['around'])).toEqual(['table-4', 'table-5']);
    expect(ids).toContain('laser-fibre-1');
  });
  test('of a sign without its door is not made, and told', () => {
    const { text, told } = copied(threeTables, ['sign-1'], [1, 0]);
    expect(text).toBe(threeTables);
    expect(told[0]).toContain('sign-1');
  });
  test('in a row stands at equal steps', () => {
    const { text, ids } = copied(threeTables, ['column-1'], [0.5, 0], 3);
    expect(ids.map((id) => valueAt(entryOf(text, id), ['at', 0]))).toEqual(['5.7 m', '6.2 m', '6.7 m']);
  });
});

describe('a clipping', () => {
  const here = { inHand: [], middle: [3, 2] as const };
  const clip = (...ids: string[]) => clippingOf(briefData(threeTables), ids).text;
  test('is brief text that another project takes in, with its references', () => {
    const { text, ids, told } = pasted(freshBrief, clip('enclosure-1'), here)!;
    expect(ids).toEqual(['table-1', 'table-2', 'laser-fibre', 'laser-scanner', 'enclosure-1']);
    expect(problemsOf(text)).toEqual([]);
    expect(told).toEqual([]);
    expect(valueAt(entryOf(text, 'table-1'), ['at'])).toEqual(['2.1 m', '1.55 m']);
  });
  test('in the same project takes free ids beside the first', () => {
    const { text, ids } = pasted(threeTables, clip('table-3'), here)!;
    expect(ids).toEqual(['table-4', 'laser-pulsed-1', 'laser-harmonic-1']);
    expect(valueAt(entryOf(text, 'table-4'), ['at'])).toEqual(['7.9 m', '3.3 m']);
    expect(problemsOf(text)).toEqual([]);
  });
  test('of a laser alone goes onto the table in hand, and is not taken in without one', () => {
    const without = pasted(freshBrief, clip('laser-fibre'), here)!;
    expect(without.text).toBe(freshBrief);
    expect(without.told[0]).toContain('laser-fibre');
    const { text } = pasted(threeTables, clip('laser-fibre'), { ...here, inHand: ['table-3'] })!;
    expect(valueAt(entryOf(text, 'laser-fibre-1'), ['table'])).toBe('table-1');
  });
  test('of equipment goes back onto its table under a free id', () => {
    const { text, ids } = pasted(threeTables, clip('microscope-1'), here)!;
    expect(ids).toEqual(['microscope-2']);
    expect(pathOfThing(briefData(text), 'microscope-2')!.slice(0, 3)).toEqual(['tables', 0, 'equipment']);
  });
  test('whose places lie outside the room comes to lie in the middle of what is seen', () => {
    const { text } = pasted(freshBrief, clip('table-3'), here)!;
    expect(valueAt(entryOf(text, 'table-3'), ['at'])).toEqual(['3 m', '2 m']);
  });
  test('other text is none', () => {
    for (const text of ['hello', '- 1', 'a: {', 'tables: 3', 'tables: [{ at: 1 }]', ''])
      expect(pasted(freshBrief, text, here)).toBeNull();
  });
});
