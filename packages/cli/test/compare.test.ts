import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Comparison } from '@cloche/engine';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const bin = join(root, 'packages/cli/bin/cloche.js');
const example = readFileSync(join(root, 'examples/three-tables.yaml'), 'utf8');
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'cloche-compare-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Runs `cloche compare` on the example and what becomes of it. */
function compare(after: string, ...more: readonly string[]) {
  const [a, b] = [join(folder, 'a.yaml'), join(folder, 'b.yaml')];
  writeFileSync(a, example);
  writeFileSync(b, after);
  // Some machines ask for colours even where nobody looks.
  const env = { ...process.env, NO_COLOR: '1' };
  return spawnSync(process.execPath, [bin, 'compare', a, b, ...more], { encoding: 'utf8', env });
}

const nearer = example.replace('at: [2.1 m, 1.55 m]', 'at: [2.1 m, 1.65 m]');
const south = example.replace('at: [7.6 m, 3.6 m]', 'at: [7.6 m, 3.4 m]');

describe('cloche compare', () => {
  test('a brief does not differ from itself', () => {
    const { status, stdout, stderr } = compare(example);
    expect([status, stderr]).toEqual([0, '']);
    expect(stdout).toContain('Nothing differs.');
  });

  test('tells a move with its length and direction, and gives 0 while nothing new stands in the way', () => {
    const { status, stdout } = compare(south);
    expect(stdout).toMatch(/table +table-3 +moved 200 mm south/);
    expect(stdout).toContain('along with it: amplifier-2, laser-harmonic, laser-pulsed');
    expect(status).toBe(0);
  });

  test('gives 2 when something fails that did not before, and says what', () => {
    const { status, stdout } = compare(nearer);
    expect(status).toBe(2);
    expect(stdout).toMatch(/fails +0\.98 \u2192 1\.10 +table-1: .*\(was attention\)/);
    expect(stdout).toContain('Something stands in the way that did not before.');
  });

  test('gives 0 the other way round: what failed is cured', () => {
    const [a, b] = [join(folder, 'a.yaml'), join(folder, 'b.yaml')];
    writeFileSync(a, nearer);
    writeFileSync(b, example);
    expect(spawnSync(process.execPath, [bin, 'compare', a, b]).status).toBe(0);
  });

  test('tells parts with their cost and mass', () => {
    const { stdout } = compare(
      example
        .replace('    - { id: cover-1, over: window-1, item: cover-blackout-large }\n', '')
        .replace('  covers:\n', '')
        .replace(', cover-1]', ']'),
    );
    // The catalogue prices the cover at 310.00 EUR.
    expect(stdout).toMatch(/Cover, blackout roller.* removed 1 +\u2212310\.00 EUR/);
    expect(stdout).toMatch(/pieces +608 \u2192 607 +\u22121/);
    expect(stdout.split('\n').some((line) => line !== line.trimEnd())).toBe(false);
  });

  test('gives everything as JSON', () => {
    const { status, stdout } = compare(nearer, '--json');
    expect(status).toBe(2);
    const comparison = JSON.parse(stdout) as Comparison;
    expect(comparison.worse).toBe(true);
    expect(comparison.geometry.find((g) => g.id === 'table-1')!.moved!.map((v) => Math.round(v * 1e6))).toEqual([
      0, 100_000, 0,
    ]);
  });

  test('problems of both briefs come at once, with exit code 1', () => {
    const [a, b] = [join(folder, 'a.yaml'), join(folder, 'b.yaml')];
    writeFileSync(a, example.replace('height: 3.1 m', 'height: 3.1'));
    writeFileSync(b, `${example}tabels: []\n`);
    const { status, stdout, stderr } = spawnSync(process.execPath, [bin, 'compare', a, b, '--json'], {
      encoding: 'utf8',
    });
    expect([status, stdout]).toEqual([1, '']);
    const { problems } = JSON.parse(stderr) as { problems: { code: string; file: string }[] };
    expect(problems.map((p) => [p.code, p.file])).toEqual([
      ['units/bare-number', a],
      ['brief/unknown-field', b],
    ]);
  });

  test('what is wrong with the catalogue is told once', () => {
    const { status, stderr } = compare(south, '--catalogue', join(folder, 'no-such'), '--json');
    expect(status).toBe(1);
    expect((JSON.parse(stderr) as { problems: unknown[] }).problems).toHaveLength(1);
  });

  test('help says what the exit codes mean', () => {
    const { status, stdout } = spawnSync(process.execPath, [bin, 'compare', '--help'], { encoding: 'utf8' });
    expect(status).toBe(0);
    expect(stdout).toContain('Exit code 2');
  });
});
