import { readdirSync, readFileSync } from 'node:fs';
import { designFrom } from '@cloche/engine';
import { expect, test } from 'vitest';
import { pictureOfDesign } from '../src/projects/picture.js';

const folder = (name: string) => new URL(`../../../${name}/`, import.meta.url);
const yaml = (name: string) =>
  readdirSync(folder(name))
    .filter((file) => file.endsWith('.yaml'))
    .map((file) => ({ name: file, text: readFileSync(new URL(file, folder(name)), 'utf8') }));
const ruleTexts = Object.fromEntries(yaml('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));

function design(example: string) {
  const briefText = readFileSync(new URL(example, folder('examples')), 'utf8');
  const made = designFrom({ briefText, catalogueFiles: yaml('catalogue'), ruleTexts });
  if (!made.ok) throw new Error('the example does not compute');
  return made.value.design;
}

const count = (text: string, what: RegExp) => [...text.matchAll(what)].length;

test.each(['close-enclosure.yaml', 'three-tables.yaml', 'amplifier-bay.yaml'])(
  'the picture of %s holds walls and tables, no script and nothing from elsewhere, and is small',
  (example) => {
    const drawn = design(example);
    const svg = pictureOfDesign(drawn);
    expect(svg).toMatch(/^<svg [^>]*viewBox="[-\d. ]+"/);
    expect(svg).not.toMatch(/<script|on\w+=|href|url\(|@import|NaN|undefined/);
    expect(svg.length).toBeLessThan(300_000);
    // A ring each, and a wall of two.
    const rings = (line: string) => count(new RegExp(`class="${line}" d="([^"]*)"`).exec(svg)?.[1] ?? '', /Z/g);
    expect(rings('wall')).toBe(2);
    expect(rings('table')).toBe(drawn.tables.length);
  },
);

test('a plan with more lines than the list takes is drawn without its parts', () => {
  const drawn = design('three-tables.yaml');
  const parts = Array.from({ length: 400 }, () => drawn.parts).flat();
  const svg = pictureOfDesign({ ...drawn, parts });
  expect(svg.length).toBeLessThan(300_000);
  expect(svg).toContain('class="table"');
});
