import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const bin = join(root, 'packages/cli/bin/cloche.js');
let folder = '';

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'cloche-cli-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const cloche = (...args: readonly string[]) => {
  const { status, stdout, stderr } = spawnSync(process.execPath, [bin, ...args], { encoding: 'utf8', cwd: folder });
  return { status, stdout, stderr };
};

interface Said {
  readonly code: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
  readonly hint: string;
  readonly place?: { readonly line: number; readonly column: number };
}

const good = readFileSync(join(root, 'examples/close-enclosure.yaml'), 'utf8');

/** Writes a brief and gives what `cloche design` says of it, with the output folder that must not exist. */
function design(text: string, ...more: readonly string[]) {
  const file = join(folder, 'brief.yaml');
  const out = join(folder, 'out');
  rmSync(out, { recursive: true, force: true });
  writeFileSync(file, text);
  const run = cloche('design', file, '--out', out, '--json', ...more);
  return { ...run, out, problems: run.status === 1 ? (JSON.parse(run.stderr) as { problems: Said[] }).problems : [] };
}

const tiny = (room: string, rest = '') =>
  `cloche: 1\nproject: { name: Try, invented: true }\nroom:\n  name: Lab\n  height: 3 m\n  outline: ${room}\n${rest}`;
const square = '[[0 m, 0 m], [6 m, 0 m], [6 m, 4 m], [0 m, 4 m]]';

describe('bad input gives its problem with place and hint, exit code 1, and nothing half written', () => {
  test.each([
    ['an empty file', '', 'brief/empty', ''],
    ['a wrong version', good.replace(/^cloche: 1/m, 'cloche: 7'), 'brief/wrong-version', 'cloche'],
    ['an unknown field', tiny(square, 'tabels: []\n'), 'brief/unknown-field', 'tabels'],
    ['a bare number', tiny(square).replace('3 m', '3'), 'units/bare-number', 'room.height'],
    ['an impossible unit', tiny(square).replace('3 m', '5 kg'), 'units/wrong-unit', 'room.height'],
    [
      'a room that crosses itself',
      tiny('[[0 m, 0 m], [6 m, 4 m], [6 m, 0 m], [0 m, 4 m]]'),
      'brief/room-crosses-itself',
      'room.outline',
    ],
    [
      'a table outside the room',
      tiny(square, 'tables: [{ id: t, at: [9 m, 2 m], length: 2 m, width: 1 m, height: 0.9 m }]\n'),
      'brief/outside-room',
      'tables.0',
    ],
    [
      'a catalogue item that is missing',
      tiny(
        square,
        'tables: [{ id: t, at: [3 m, 2 m], length: 2 m, width: 1 m, height: 0.9 m }]\nlayout: { enclosures: [{ id: box, kind: close, around: [t], gap: 0.1 m, profile: no-such }] }\n',
      ),
      'compose/item-missing',
      'layout.enclosures.0.profile',
    ],
  ])('%s', (_name, text, code, path) => {
    const { status, problems, out, stdout } = design(text);
    expect(status).toBe(1);
    const said = problems.find((p) => p.code === code);
    expect(problems.map((p) => p.code)).toContain(code);
    expect(said!.path.join('.').startsWith(path)).toBe(true);
    expect(said!.message).not.toBe('');
    expect(said!.hint).not.toBe('');
    expect(existsSync(out)).toBe(false);
    expect(stdout).toBe('');
  });

  test('problems of YAML say line and column', () => {
    const { problems } = design(tiny(square).replace('3 m', '3'));
    expect(problems[0]!.place).toEqual({ line: 5, column: 11 });
  });

  test('all problems come at once', () => {
    const { problems } = design(tiny(square, 'tabels: []\n').replace('3 m', '3'));
    expect(problems.map((p) => p.code)).toEqual(expect.arrayContaining(['brief/unknown-field', 'units/bare-number']));
  });

  test('a negative price in a catalogue', () => {
    const catalogue = mkdtempSync(join(folder, 'catalogue-'));
    for (const name of readdirSync(join(root, 'catalogue')))
      writeFileSync(
        join(catalogue, name),
        readFileSync(join(root, 'catalogue', name), 'utf8').replace(/price: "?(\d)/, 'price: -$1'),
      );
    const { status, problems, out } = design(good, '--catalogue', catalogue);
    expect(status).toBe(1);
    expect(problems.map((p) => p.code)).toContain('catalogue/negative-price');
    expect(existsSync(out)).toBe(false);
  });

  test('10 MB of junk', () => {
    const { status, problems, out } = design('\u0007junk {[: '.repeat(1024 * 1024));
    expect(status).toBe(1);
    expect(problems[0]!.code).toBe('cli/too-large');
    expect(existsSync(out)).toBe(false);
  });

  test('3 MB of junk, below the size that is refused unread', () => {
    const { status, problems } = design('junk {[: \n'.repeat(300 * 1024));
    expect(status).toBe(1);
    expect(problems[0]!.code).toBe('brief/too-large');
  });

  test('a file that is not there', () => {
    const { status, stderr } = cloche('check', join(folder, 'no-such.yaml'));
    expect(status).toBe(1);
    expect(stderr).toContain('cli/cannot-read');
  });

  test('an output folder that cannot be written', () => {
    writeFileSync(join(folder, 'a-file'), '');
    const file = join(folder, 'brief.yaml');
    writeFileSync(file, good);
    const { status, stderr } = cloche('design', file, '--no-pdf', '--out', join(folder, 'a-file', 'out'), '--json');
    expect(status).toBe(1);
    expect(stderr).toContain('cli/cannot-write');
  });

  test('a file in the output folder that is not ours stays as it is', () => {
    const out = mkdtempSync(join(folder, 'theirs-'));
    writeFileSync(join(out, 'parts.csv'), 'my own list');
    const file = join(folder, 'brief.yaml');
    writeFileSync(file, good);
    const { status, stderr } = cloche('design', file, '--no-pdf', '--out', out);
    expect(status).toBe(1);
    expect(stderr).toContain('cli/not-ours');
    expect(readFileSync(join(out, 'parts.csv'), 'utf8')).toBe('my own list');
    expect(readdirSync(out)).toEqual(['parts.csv']);
  });
});

describe('cloche design', () => {
  test('writes the same bytes twice, and replaces its own files', () => {
    const file = join(folder, 'brief.yaml');
    writeFileSync(file, good);
    const out = join(folder, 'twice');
    const read = () =>
      readdirSync(out)
        .sort()
        .map((name) => [name, readFileSync(join(out, name)).toString('base64')]);
    expect(cloche('design', file, '--out', out, '--issued', '2026-03-09').stderr).toBe('');
    const first = read();
    expect(first.map(([name]) => name)).toEqual(
      expect.arrayContaining([
        'design.json',
        'findings.json',
        'plan.svg',
        'plan.dxf',
        'parts.csv',
        'parts.xlsx',
        'cuts.csv',
        'cuts.xlsx',
        'report.pdf',
        'manifest.json',
      ]),
    );
    cloche('design', file, '--out', out, '--issued', '2026-03-09');
    expect(read()).toEqual(first);
  });
});

describe('cloche calc', () => {
  test('gives a calculation with its steps', () => {
    const { status, stdout } = cloche('calc', 'exposure-limit', 'wavelength=1064 nm', 'duration=10 s');
    expect(status).toBe(0);
    expect(stdout).toContain('W/m2');
  });

  test('suggests the name that was meant', () => {
    const { status, stderr } = cloche('calc', 'exposure-limits');
    expect(status).toBe(1);
    expect(stderr).toContain('exposure-limit');
  });
});

test('what is not built yet says so and gives 1', () => {
  const { status, stderr } = cloche('prove', 'log.csv');
  expect(status).toBe(1);
  expect(stderr).toContain('not built yet');
});

test('help is complete', () => {
  const { status, stdout } = cloche('--help');
  expect(status).toBe(0);
  for (const command of ['design', 'check', 'calc', 'compare', 'prove', 'serve']) expect(stdout).toContain(command);
});
