import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type SingleSpan, singleSpan, singleSpanAt, valueOf } from '@cloche/engine';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

/**
 * Deflections of single spans against Z88, a finite-element program by other authors (Debian package z88, element
 * "beam No. 2", exact Euler-Bernoulli). It knows nodal loads only, so point loads stand on nodes.
 */
const memoryFile = '/usr/share/z88/z88.dyn';
const installed =
  spawnSync('z88f', [], { stdio: 'ignore', cwd: tmpdir() }).error === undefined && existsSync(memoryFile);

if (!installed)
  console.warn(
    [
      '',
      '!'.repeat(78),
      'THE REFERENCE SOLVER z88f IS NOT INSTALLED: deflections are NOT compared with it.',
      'Install the Debian package z88 (apt-get install z88) and run again.',
      '!'.repeat(78),
      '',
    ].join('\n'),
  );

const shearModulus = 27e9;
const area = 9e-4;

/** Degrees of freedom 1 to 6 of Z88 that an end holds: ux uy uz rx ry rz. */
const held: Readonly<Record<SingleSpan['ends'], readonly [readonly number[], readonly number[]]>> = {
  simple: [
    [1, 2, 3, 4],
    [2, 3],
  ],
  'fixed and simple': [
    [1, 2, 3, 4, 5, 6],
    [2, 3],
  ],
  fixed: [
    [1, 2, 3, 4, 5, 6],
    [1, 2, 3, 4, 5, 6],
  ],
  cantilever: [[1, 2, 3, 4, 5, 6], []],
};

interface Deck {
  readonly structure: string;
  readonly conditions: string;
}

/** The span as a 3D frame along x, loads downward along z, nodes at `places` [m]. */
function deckOf(span: SingleSpan, places: readonly number[]): Deck {
  const count = places.length;
  const members = places.slice(1).map((_, i) => i + 1);
  const poisson = span.elasticity / (2 * shearModulus) - 1;
  const section = `${span.elasticity} ${poisson} 1 ${area} ${span.secondMoment} 0.02 1e-7 0.02 2e-8 1e-5`;
  const structure = [
    `3 ${count} ${members.length} ${6 * count} ${members.length} 0 1 0 0`,
    ...places.map((x, i) => `${i + 1} 6 ${x} 0 0`),
    ...members.flatMap((m) => [`${m} 2`, `${m} ${m + 1}`]),
    ...members.map((m) => `${m} ${m} ${section}`),
  ];
  const [first, last] = held[span.ends];
  const conditions = [
    ...first.map((dof) => [1, dof, 2, 0] as const),
    ...last.map((dof) => [count, dof, 2, 0] as const),
    ...span.points.map((p) => [places.indexOf(p.at) + 1, 3, 1, -p.load] as const),
  ].sort((a, b) => a[0] - b[0] || a[1] - b[1]);
  return {
    structure: `${structure.join('\n')}\n`,
    conditions: `${conditions.length}\n${conditions.map((c) => c.join(' ')).join('\n')}\n`,
  };
}

/** Downward deflection at each node, from the result table of displacements (node ux uy uz rx ry rz). */
function solve(folder: string, deck: Deck): number[] {
  writeFileSync(join(folder, 'z88i1.txt'), deck.structure);
  writeFileSync(join(folder, 'z88i2.txt'), deck.conditions);
  execFileSync('z88f', ['-c'], { cwd: folder, stdio: 'ignore' });
  return readFileSync(join(folder, 'z88o2.txt'), 'latin1')
    .split('\n')
    .map((line) => line.trim().split(/\s+/))
    .filter((words) => words.length === 7 && /^\d+$/.test(words[0]!))
    .map((words) => -Number(words[3]));
}

describe.skipIf(!installed)('deflections agree with the reference solver', () => {
  let folder = '';
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'reference-'));
    copyFileSync(memoryFile, join(folder, 'z88.dyn'));
    writeFileSync(join(folder, 'z88i3.txt'), '1 0 0\n');
    writeFileSync(join(folder, 'z88i5.txt'), '0\n');
  });
  afterAll(() => rmSync(folder, { recursive: true }));

  const loads = [
    { at: 0.5, load: 120 },
    { at: 1.1, load: 80 },
    { at: 2, load: 45 },
  ];

  test.each<[SingleSpan['ends'], readonly SingleSpan['points'][number][]]>([
    ['simple', [{ at: 1.2, load: 150 }]],
    ['simple', loads],
    ['fixed and simple', loads],
    ['fixed', loads],
    ['cantilever', loads],
  ])('%s span with point loads %o', (ends, points) => {
    const span: SingleSpan = { ends, span: 2.4, elasticity: 70e9, secondMoment: 1.4e-7, uniform: 0, points };
    const largest = valueOf(singleSpan(span)).deflection;
    const places = [...new Set([0, ...points.map((p) => p.at), largest.at, 0.3, 1.7, 2.4])].sort((a, b) => a - b);
    const found = solve(folder, deckOf(span, places));
    expect(found).toHaveLength(places.length);
    places.forEach((x, i) => {
      const ours = valueOf(singleSpanAt(span, x)).deflection;
      expect(Math.abs(ours - found[i]!), `at ${x} m`).toBeLessThanOrEqual(1e-6 * Math.abs(largest.value));
    });
  });
});
