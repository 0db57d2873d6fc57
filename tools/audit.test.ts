import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
// @ts-expect-error: a plain script of the checks, without types.
import * as script from '../scripts/audit.mjs';

const { isPermissive, judge, licenceTroubles, shipped } = script as {
  isPermissive: (expression: string) => boolean;
  judge: (report: unknown, lock: unknown) => { audited: boolean; why?: string; troubles: string[] };
  licenceTroubles: (lock: unknown) => string[];
  shipped: (lock: unknown) => string[];
};

/** A workspace with a server that ships `a` (and what that needs), and a page that bundles `b` and is built with `vite`. */
const lock = {
  packages: {
    '': { devDependencies: { tester: '1' } },
    'packages/server': { dependencies: { a: '1', '@cloche/engine': '1' } },
    'packages/web': { devDependencies: { b: '1', vite: '1', '@types/b': '1' } },
    'node_modules/@cloche/engine': { resolved: 'packages/engine', link: true },
    'node_modules/a': { license: 'MIT', version: '1.0.0', dependencies: { c: '1' } },
    'node_modules/a/node_modules/c': { license: 'GPL-3.0', version: '1.0.0' },
    'node_modules/b': { license: '(MIT OR GPL-2.0)', version: '1.0.0', optionalDependencies: { d: '1' } },
    'node_modules/c': { license: 'ISC', version: '2.0.0' },
    'node_modules/d': { version: '1.0.0' },
    'node_modules/tester': { license: 'GPL-3.0', version: '1.0.0' },
    'node_modules/vite': { license: 'MIT', version: '1.0.0', dependencies: { c: '2' } },
    'node_modules/@types/b': { license: 'MIT', version: '1.0.0' },
  },
};

test('what ships is what our packages need and what the page bundles, not what tests and builds', () => {
  expect(shipped(lock)).toEqual([
    'node_modules/a',
    'node_modules/a/node_modules/c',
    'node_modules/b',
    'node_modules/d',
  ]);
});

describe('licences', () => {
  test.each([
    ['MIT', true],
    ['MIT AND OFL-1.1', true],
    ['MIT AND GPL-3.0', false],
    ['GPL-3.0 OR MIT', true],
    ['(GPL-3.0 AND MIT) OR (ISC AND (Zlib OR GPL-2.0))', true],
    ['(GPL-3.0 OR LGPL-2.1) AND MIT', false],
    ['', false],
  ])('%s can be met with permissive ones alone: %s', (expression, expected) => {
    expect(isPermissive(expression)).toBe(expected);
  });
  test('of what ships that are not permissive, or not stated, are told', () => {
    expect(licenceTroubles(lock)).toEqual([
      'node_modules/a/node_modules/c: GPL-3.0',
      'node_modules/d: no licence stated',
    ]);
  });
  test('of this project are permissive throughout', () => {
    expect(licenceTroubles(JSON.parse(readFileSync(new URL('../package-lock.json', import.meta.url), 'utf8')))).toEqual(
      [],
    );
  });
});

describe('a report of the registry', () => {
  const report = (severity: string, path: string) => ({
    vulnerabilities: { c: { severity, nodes: [path], via: [{ title: 'Runs what it reads' }] } },
  });
  test.each(['high', 'critical'])('with a %s weakness in what ships fails', (severity) => {
    expect(judge(report(severity, 'node_modules/a/node_modules/c'), lock)).toEqual({
      audited: true,
      troubles: [`c: ${severity}: Runs what it reads`],
    });
  });
  test('with a lesser one, or one in tools, does not', () => {
    expect(judge(report('moderate', 'node_modules/a/node_modules/c'), lock).troubles).toEqual([]);
    expect(judge(report('critical', 'node_modules/c'), lock).troubles).toEqual([]);
  });
  test.each([[null], [{ message: '405 Method Not Allowed - POST somewhere' }], [{ error: { summary: 'ENOTFOUND' } }]])(
    'that is none is told as not audited: %j',
    (none) => {
      expect(judge(none, lock)).toMatchObject({ audited: false, troubles: [] });
    },
  );
});
