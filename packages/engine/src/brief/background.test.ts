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

test('a design keeps its revision with a background or without', () => {
  const catalogueFiles = readdirSync(new URL('catalogue/', root))
    .filter((name) => name.endsWith('.yaml'))
    .map((name) => ({ name, text: readFileSync(new URL(`catalogue/${name}`, root), 'utf8') }));
  const ruleTexts = { eu: readFileSync(new URL('rules/eu.yaml', root), 'utf8') };
  const revisionOf = (briefText: string) => valueOf(designFrom({ briefText, catalogueFiles, ruleTexts })).revision;
  expect(revisionOf(text + background)).toBe(revisionOf(text));
  expect(revisionOf(text.replace('name: Clean', 'name: Cleaner'))).not.toBe(revisionOf(text));
});
