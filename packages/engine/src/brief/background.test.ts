import { readdirSync, readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { designFrom } from '../design-from.js';
import { valueOf } from '../floor/problem.js';
import { readBrief } from './read.js';

const root = new URL('../../../../', import.meta.url);
const text = readFileSync(new URL('examples/close-enclosure.yaml', root), 'utf8');
const background = `background:
  file: ${'0123456789abcdef'.repeat(4)}
  name: room.png
  at: [0 m, 0 m]
  width: 6 m
  turn: 90 deg
  shown: false
`;

test('a background is read with its place', () => {
  expect(valueOf(readBrief(text + background)).background).toMatchObject({ at: [0, 0], width: 6, turn: Math.PI / 2 });
});

test('a background without its file, or with no width, is a problem', () => {
  for (const wrong of [background.replace(/file: .*/, 'file: room.png'), background.replace('6 m', '0 m')]) {
    const read = readBrief(text + wrong);
    expect(read.ok ? [] : read.problems.map((p) => p.path[0])).toEqual(['background']);
  }
});

const distances = `distances:
  - { id: distance-1, from: { of: table-1, at: [0.5 m, 0 m] }, to: { at: [0 m, 2 m] } }
`;

test('kept distances are read with their ends, and an end without its place is a problem', () => {
  expect(valueOf(readBrief(text + distances)).distances).toEqual([
    { id: 'distance-1', from: { of: 'table-1', at: [0.5, 0] }, to: { at: [0, 2] } },
  ]);
  const read = readBrief(text + distances.replace('at: [0 m, 2 m]', 'of: table-1'));
  expect(read.ok ? [] : read.problems.map((p) => p.path)).toEqual([['distances', 0, 'to', 'at']]);
});

test('a design keeps its revision with background and kept distances or without', () => {
  const catalogueFiles = readdirSync(new URL('catalogue/', root))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ name, text: readFileSync(new URL(`catalogue/${name}`, root), 'utf8') }));
  const ruleTexts = { eu: readFileSync(new URL('rules/eu.yaml', root), 'utf8') };
  const revisionOf = (briefText: string) => valueOf(designFrom({ briefText, catalogueFiles, ruleTexts })).revision;
  expect(revisionOf(text + background)).toBe(revisionOf(text));
  expect(revisionOf(text + distances)).toBe(revisionOf(text));
  expect(revisionOf(text.replace('name: Clean', 'name: Cleaner'))).not.toBe(revisionOf(text));
});
