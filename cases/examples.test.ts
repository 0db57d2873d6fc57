import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { contentHash, type Design, type DesignResult, designFrom, type Finding, numberText } from '@cloche/engine';
import { describe, expect, test } from 'vitest';
import { manyTables } from '../bench/many-tables.js';

const root = fileURLToPath(new URL('..', import.meta.url));
const texts = (folder: string) =>
  readdirSync(join(root, folder))
    .filter((f) => f.endsWith('.yaml'))
    .sort()
    .map((name) => ({ name, text: readFileSync(join(root, folder, name), 'utf8') }));

const catalogueFiles = texts('catalogue');
const ruleTexts = Object.fromEntries(texts('rules').map(({ name, text }) => [name.replace('.yaml', ''), text]));

function made(briefText: string): DesignResult {
  const result = designFrom({ briefText, catalogueFiles, ruleTexts });
  if (!result.ok) throw new Error(result.problems.map((p) => `${p.path.join('.')}: ${p.message}`).join('\n'));
  return result.value;
}

const use = (f: Finding): string => (f.utilisation === null ? '-' : numberText(f.utilisation, 2));

/** What a person compares when an example changed: pieces with their sizes, and findings with verdict and utilisation. */
function summary({ design, findings }: DesignResult): string {
  const pieces = new Map<string, number>();
  for (const p of design.parts) {
    const size = [p.length, p.width].filter((s) => s !== undefined).map((s) => `${numberText(s * 1000, 5)} mm`);
    const key = [p.group, p.mark ?? p.item, ...size].join(' ');
    pieces.set(key, (pieces.get(key) ?? 0) + p.count);
  }
  return [
    ...[...pieces].sort().map(([key, n]) => `${String(n).padStart(5)} ${key}`),
    '',
    ...findings.map((f) => `${f.verdict.padEnd(13)} ${use(f).padStart(8)} ${f.id}`).sort(),
    '',
  ].join('\n');
}

const groupOf = (p: Design['parts'][number]) => p.placed.rule;

describe.each(texts('examples'))('$name', ({ name, text }) => {
  const result = made(text);
  const { design, findings } = result;

  test('is as it was when someone last looked (change alarm)', async () => {
    await expect(summary(result)).toMatchFileSnapshot(`golden/${name.replace('.yaml', '.txt')}`);
  });

  test('comes out the same twice', () => {
    const again = made(text);
    expect(again.revision).toBe(result.revision);
    expect(contentHash(again.findings)).toBe(contentHash(findings));
  });

  test('every part names the rule that placed it, with its reason, and is in the catalogue', () => {
    for (const part of design.parts) {
      expect(groupOf(part)).toMatch(/^compose\./);
      expect(part.placed.because).toMatch(/\.$/);
      expect(result.catalogue.byId.has(part.item)).toBe(true);
      expect(part.mass).toBeGreaterThanOrEqual(0);
      expect(part.count).toBeGreaterThan(0);
    }
    expect(new Set(design.parts.map((p) => p.id)).size).toBe(design.parts.length);
  });

  test('one piece mark is never two lengths', () => {
    const byMark = new Map<string, string>();
    for (const p of design.parts) {
      if (!p.mark) continue;
      const size = `${p.item} ${p.length?.toFixed(4)} ${p.width?.toFixed(4)}`;
      expect(byMark.get(p.mark) ?? size).toBe(size);
      byMark.set(p.mark, size);
    }
  });

  test('track pieces of each straight add up to its length', () => {
    for (const run of design.runs) {
      const pieces = design.parts.filter((p) => p.of === run.id && p.role === 'track');
      const straights = run.segments.filter((s) => s.kind === 'straight').reduce((sum, s) => sum + s.length, 0);
      expect(pieces.reduce((sum, p) => sum + (p.length ?? 0) * p.count, 0)).toBeCloseTo(straights, 9);
    }
  });

  test('every discipline that applies has an assessed finding, and what is open says why', () => {
    for (const discipline of ['laser', 'curtain', 'room'] as const)
      expect(
        findings.filter((f) => f.discipline === discipline && f.verdict !== 'not assessed').length,
      ).toBeGreaterThan(0);
    for (const f of findings) {
      expect(f.message.length).toBeGreaterThan(20);
      if (f.verdict === 'not assessed') expect(f.utilisation).toBeNull();
      if (f.utilisation !== null && f.utilisation > 1 + 1e-9) expect(f.verdict).not.toBe('meets');
    }
  });

  test('no example fails a check', () => {
    expect(findings.filter((f) => f.verdict === 'fails').map((f) => f.id)).toEqual([]);
  });
});

describe('a turned room', () => {
  /** The same brief with room and tables turned a quarter to the left and moved so that it lies in the same quadrant. */
  const turned = (text: string, width: number): string =>
    text
      .replace(
        /outline: \[\[0 m, 0 m\], \[([\d.]+) m, 0 m\], \[[\d.]+ m, ([\d.]+) m\], \[0 m, [\d.]+ m\]\]/,
        'outline: [[0 m, 0 m], [$2 m, 0 m], [$2 m, $1 m], [0 m, $1 m]]',
      )
      .replace(
        /at: \[([\d.]+) m, ([\d.]+) m\], length/g,
        (_, x: string, y: string) => `at: [${width - Number(y)} m, ${x} m], turn: 90 deg, length`,
      );

  test('has the same parts and the same verdicts', () => {
    const text = manyTables(2);
    const plain = made(text);
    const quarter = made(turned(text, 5));
    const verdicts = (r: DesignResult) =>
      r.findings
        .filter((f) => f.discipline !== 'room')
        .map((f) => `${f.id} ${f.verdict} ${use(f)}`)
        .sort();
    const parts = (r: DesignResult) =>
      r.design.parts.map((p) => `${p.id} ${p.mark ?? ''} ${(p.length ?? 0).toFixed(6)}`);
    expect(quarter.design.tables[0]!.turn).toBeCloseTo(Math.PI / 2, 12);
    expect(parts(quarter)).toEqual(parts(plain));
    expect(verdicts(quarter)).toEqual(verdicts(plain));
  });
});
