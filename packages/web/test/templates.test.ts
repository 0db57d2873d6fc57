import { readdirSync, readFileSync } from 'node:fs';
import { designFrom, valueOf } from '@cloche/engine';
import { describe, expect, test } from 'vitest';
import { briefData, withEntry, withObject } from '../src/brief/document.js';
import { type Addable, canAdd, layoutLists, needsLists, onTable, surveyLists } from '../src/brief/templates.js';
import { freshBrief } from '../src/state/fresh-brief.js';

const root = new URL('../../../', import.meta.url);
const texts = (folder: string) =>
  readdirSync(new URL(folder, root))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(new URL(`${folder}${name}`, root), 'utf8') }));
const catalogueFiles = texts('catalogue/');
const ruleTexts = Object.fromEntries(texts('rules/').map(({ name, text }) => [name.replace('.yaml', ''), text]));

/** The design of a text, or the problems as a failed test. */
const designOf = (briefText: string) => {
  const made = designFrom({ briefText, catalogueFiles, ruleTexts });
  if (!made.ok)
    throw new Error(`${made.problems.map((p) => `${p.path.join('.')}: ${p.message}`).join('\n')}\n${briefText}`);
  return made.value;
};

const added = (text: string, what: Addable, which = 0): string => {
  const data = briefData(text);
  expect(canAdd(data, what)).toBe(true);
  const entry = what.adds[which]!.entry({ data, design: designOf(text).design });
  return what.single ? withObject(text, what.list, entry) : withEntry(text, what.list, entry);
};

const withTable = added(freshBrief, surveyLists.tables);
const withWindow = added(withTable, surveyLists.windows);
const furnished = added(withWindow, layoutLists.enclosures);
const all: readonly Addable[] = [
  ...Object.values(surveyLists),
  ...Object.values(layoutLists),
  ...Object.values(needsLists),
  onTable(['tables', 0]),
];

describe('a new thing is read, composed and checked at once', () => {
  test.each(all.flatMap((what) => what.adds.map((add, i) => [add.one, what, i] as const)))('%s', (_, what, i) => {
    const twice = added(added(furnished, what, i), what.single ? surveyLists.detectors : what, what.single ? 0 : i);
    expect(designOf(twice).findings.length).toBeGreaterThan(0);
  });

  test('everything together', () => {
    const whole = all.reduce(
      (text, what) => what.adds.reduce((now, _, i) => (what.single && i > 0 ? now : added(now, what, i)), text),
      freshBrief.replace(
        'outline: [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m], [0 m, 4 m]]',
        'outline: [[0 m, 0 m], [20 m, 0 m], [20 m, 12 m], [0 m, 12 m]]',
      ),
    );
    expect(designOf(whole).design.parts.length).toBeGreaterThan(50);
  });
});

test('a table that does not fit is tried smaller', () => {
  const small = freshBrief.replaceAll('6 m', '2 m').replaceAll('4 m', '1.6 m');
  expect(designOf(added(small, surveyLists.tables)).design.tables[0]!.length).toBeLessThan(2);
});

test('what would name a thing that is not there waits', () => {
  const data = briefData(freshBrief);
  expect(canAdd(data, layoutLists.enclosures)).toBe(false);
  expect(canAdd(data, needsLists.access)).toBe(false);
  expect(canAdd(data, layoutLists.signs)).toBe(true);
});

test('a second enclosure goes round the table that has none', () => {
  const two = added(added(furnished, surveyLists.tables), layoutLists.enclosures);
  const around = valueOf(designFrom({ briefText: two, catalogueFiles, ruleTexts })).design.enclosures.map(
    (e) => e.tables,
  );
  expect(around).toEqual([['table-1'], ['table-2']]);
});
