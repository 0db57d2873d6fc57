import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import { briefData } from '../src/brief/document.js';
import { idsOf, namedOf, namesOf } from '../src/brief/references.js';

const data = briefData(readFileSync(new URL('../../../examples/close-enclosure.yaml', import.meta.url), 'utf8'));

test('what may be chosen is what the brief holds, by name', () => {
  expect(namedOf(data, ['tables', 'room'])).toEqual([
    { id: 'table-1', name: 'Clock table' },
    { id: 'room', name: 'the room' },
  ]);
  expect(idsOf(data, 'doors', 'windows')).toEqual(['door-1', 'window-1']);
});

// Counted by hand in the example.
test('every place that names a thing is found: alone, in a list, as an end of a way', () => {
  expect(
    namesOf(data, 'table-1')
      .map((path) => path.join('.'))
      .sort(),
  ).toEqual(['lasers.0.table', 'lasers.1.table', 'layout.enclosures.0.around.0', 'needs.ways.0.from']);
  expect(namesOf(data, 'enclosure-1').map((path) => path.join('.'))).toContain('needs.movable.0');
  expect(namesOf(data, 'nothing')).toEqual([]);
});
