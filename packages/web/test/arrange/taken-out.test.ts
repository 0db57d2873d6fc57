import { readBrief } from '@cloche/engine';
import { expect, test } from 'vitest';
import { takenOut } from '../../src/arrange/taken-out.js';
import { briefData } from '../../src/brief/document.js';
import { idsInUse, pathOfThing } from '../../src/brief/find.js';
import { listAt } from '../../src/brief/path.js';
import { threeTables } from './briefs.js';

const has = (text: string, id: string) => pathOfThing(briefData(text), id) !== undefined;

test('with a table goes what stands on it and what names it; one of two tables leaves the enclosure', () => {
  const { text, told } = takenOut(threeTables, ['table-1']);
  expect(['table-1', 'microscope-1', 'laser-fibre', 'laser-scanner'].map((id) => has(text, id))).toEqual([
    false,
    false,
    false,
    false,
  ]);
  expect(has(text, 'enclosure-1')).toBe(true);
  expect(listAt(briefData(text), ['needs', 'access'])).toHaveLength(2);
  expect(readBrief(text).ok).toBe(true);
  expect(told).toEqual(['Taken out with it: laser-fibre and laser-scanner.', '1 need that named it went as well.']);
});

test('with both its tables goes the enclosure, its sensor, and the phase that was only it', () => {
  const { text } = takenOut(threeTables, ['table-1', 'table-2']);
  expect(['enclosure-1', 'particles-1', 'phase-1'].map((id) => has(text, id))).toEqual([false, false, false]);
  expect(has(text, 'phase-2')).toBe(true);
  expect(readBrief(text).ok).toBe(true);
});

test('any one thing of the example can be taken out without a name left behind', () => {
  for (const id of idsInUse(briefData(threeTables))) {
    const read = readBrief(takenOut(threeTables, [id]).text);
    expect(read.ok ? [] : read.problems.map((p) => `${id}: ${p.message}`)).toEqual([]);
  }
});
