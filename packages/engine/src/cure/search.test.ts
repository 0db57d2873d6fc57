import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { completeBrief } from '../brief/complete.js';
import { readBrief } from '../brief/read.js';
import type { Brief } from '../brief/schema.js';
import { readCatalogue } from '../catalogue/read.js';
import { composeDesign } from '../compose/index.js';
import { checkDesign } from '../discipline/check.js';
import type { Finding } from '../floor/finding.js';
import { valueOf } from '../floor/problem.js';
import { readRules } from '../rules/read.js';
import { edited } from './edit.js';
import { type CureInput, type CureSearch, searchCures } from './search.js';

const folder = fileURLToPath(new URL('../../../../', import.meta.url));
const read = (path: string) => readFileSync(`${folder}${path}`, 'utf8');
const catalogue = valueOf(
  readCatalogue(readdirSync(`${folder}catalogue`).map((name) => ({ name, text: read(`catalogue/${name}`) }))),
);
const rules = valueOf(readRules(read('rules/eu.yaml')));
const inputOf = (text: string): CureInput => ({ brief: valueOf(readBrief(text)), catalogue, rules });

function searched(input: CureInput, id: string): CureSearch {
  const search = searchCures(input, id);
  for (;;) {
    const next = search.next();
    if (next.done) return next.value;
  }
}

function checked(brief: Brief): ReadonlyMap<string, Finding> {
  const complete = completeBrief(brief, rules);
  const design = valueOf(composeDesign(complete, catalogue, rules, 'test'));
  return new Map(checkDesign({ brief: complete, design, catalogue, rules }).map((f) => [f.id, f]));
}

/** A table in a room of 6 m by 4 m, and a bench that leaves `gap` beside it. */
const roomWith = (gap: number) => `cloche: 1
project: { name: Test }
room:
  name: Room
  outline: [[0 m, 0 m], [6 m, 0 m], [6 m, 4 m], [0 m, 4 m]]
  height: 3 m
  doors:
    - { id: door-1, wall: 0, at: 0.2 m, width: 1 m, height: 2.1 m, swing: out, hinge: left, exit: true }
tables:
  - { id: table-1, kind: optical table, at: [2.5 m, 2 m], length: 2 m, width: 1 m, height: 0.9 m }
equipment:
  - { id: bench-1, name: Bench, at: [${3.5 + gap + 0.4} m, 2 m], size: [0.8 m, 0.8 m, 0.9 m] }
needs:
  access:
    - { to: table-1, sides: [east], width: 0.9 m }
`;

describe('cures', () => {
  test.each([0.6, 0.74, 0.85])('a bench %d m from a side that needs 0.9 m is moved by what is missing', (gap) => {
    const { cures } = searched(inputOf(roomWith(gap)), 'room/access/table-1/east');
    const missing = `${Math.round((0.9 - gap) * 1000)} mm`;
    expect(cures.map((c) => c.change)).toContain(`Moving Bench ${missing} east`);
  });

  test('a cure does what it says: the edited brief is better, and what gets worse is told', () => {
    const input = inputOf(roomWith(0.6));
    const before = checked(input.brief);
    const { cures } = searched(input, 'room/access/table-1/east');
    expect(cures.length).toBeGreaterThan(1);
    for (const cure of cures) {
      const after = checked(edited(input.brief, cure.edits));
      // Moved by what is missing and no more, the need is met to the last: attention, not fails.
      expect(after.get('room/access/table-1/east')).toMatchObject({
        verdict: 'attention',
        utilisation: expect.closeTo(1, 9),
      });
      const failing = [...after.values()].filter((f) => f.verdict === 'fails' && before.get(f.id)?.verdict !== 'fails');
      expect(failing).toEqual([]);
    }
  });

  test('what meets is not searched', () => {
    expect(searched(inputOf(roomWith(1.2)), 'room/access/table-1/east')).toEqual({ cures: [], tried: 0 });
    expect(searched(inputOf(roomWith(1.2)), 'room/no/such/finding')).toEqual({ cures: [], tried: 0 });
  });

  test('a barrier without a rating for a source is cured by an item that has one', () => {
    const input = inputOf(read('examples/three-tables.yaml'));
    const { cures } = searched(input, 'laser/barrier-irradiance/enclosure-1/west/laser-harmonic');
    expect(cures.length).toBeGreaterThan(0);
    for (const { edits } of cures)
      expect(edits).toEqual([
        { path: ['layout', 'enclosures', 0, 'sides', 'west', 'item'], value: expect.any(String), as: 'name' },
      ]);
  });

  test('progress is told after each lever, up to all of them', () => {
    const search = searchCures(inputOf(roomWith(0.6)), 'room/access/table-1/east');
    const told: { done: number; of: number }[] = [];
    for (let next = search.next(); !next.done; next = search.next()) told.push(next.value);
    expect(told.map((t) => t.done)).toEqual(told.map((_, i) => i + 1));
    expect(told.at(-1)!.done).toBe(told.at(-1)!.of);
  });
});
