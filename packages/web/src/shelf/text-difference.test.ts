import { expect, test } from 'vitest';
import { textDifference } from './text-difference.js';

const catalogue = (items: string, group = 'parts') => `catalogue: { group: ${group} }\nitems:\n${items}`;
const nut = '  - { id: nut, price: 1 EUR }\n';
const bolt = '  - { id: bolt, price: 2 EUR }\n';

test('items come, go and change by their id', () => {
  expect(
    textDifference('catalogue', catalogue(nut + bolt), catalogue(`${nut.replace('1 EUR', '3 EUR')}  - { id: pin }\n`)),
  ).toEqual({ added: ['pin'], removed: ['bolt'], changed: ['nut'], head: false });
});

test('comments, order and spelling change nothing', () => {
  const other = `# ours\ncatalogue:\n  group: parts\nitems:\n  - id: bolt\n    price: 2 EUR\n  - price: 1 EUR\n    id: nut\n`;
  expect(textDifference('catalogue', catalogue(nut + bolt), other)).toEqual({
    added: [],
    removed: [],
    changed: [],
    head: false,
  });
});

test('what stands above the items counts apart', () => {
  expect(textDifference('catalogue', catalogue(nut), catalogue(nut, 'offers')).head).toBe(true);
});

test('rules are told by their names, and no file has none', () => {
  const rules = 'profile: { id: eu }\nrules:\n  way.clear-width: { value: 0.9 m }\n';
  expect(textDifference('rules', rules, rules.replace('0.9', '1.2')).changed).toEqual(['way.clear-width']);
  expect(textDifference('rules', '', rules).added).toEqual(['way.clear-width']);
});
