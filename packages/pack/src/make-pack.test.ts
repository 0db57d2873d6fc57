import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { unitText } from '@cloche/engine';
import { parse } from 'csv-parse/sync';
import { beforeAll, describe, expect, test } from 'vitest';
import { catalogue, design, findings, issued, revision, rules } from '../test/fixture.js';
import { fonts } from '../test/fonts.js';
import { makePack } from './make-pack.js';
import type { PackFile } from './pack-file.js';
import { packNames } from './pack-names.js';
import { inReadingOrder } from './report/report.js';

const input = { design, findings, catalogue, rules, issued, fonts, revision };
let files: PackFile[];
const file = (name: string) => files.find((f) => f.name === name)!;
const textOf = (name: string) => new TextDecoder().decode(file(name).bytes);

beforeAll(async () => {
  files = await makePack(input);
});

describe('the pack', () => {
  test('holds every file once, the manifest last', () => {
    expect(files.map((f) => f.name)).toEqual([
      'design.json',
      'findings.json',
      'plan.svg',
      'elevation-box.svg',
      'plan.dxf',
      'parts.csv',
      'parts.xlsx',
      'cuts.csv',
      'cuts.xlsx',
      'report.pdf',
      'manifest.json',
    ]);
  });

  test('its names are known without making it', () => {
    expect(packNames(design).map((f) => f.name)).toEqual(files.map((f) => f.name));
  });

  test('is the same bytes for the same input', async () => {
    const again = await makePack(input);
    expect(again.map((f) => Buffer.compare(f.bytes, file(f.name).bytes))).toEqual(files.map(() => 0));
  });

  test('the manifest tells size and SHA-256 of each file, by another implementation', () => {
    const manifest = JSON.parse(textOf('manifest.json')) as {
      files: { path: string; size: number; sha256: string }[];
      revision: object;
    };
    expect(manifest.revision).toEqual(revision);
    for (const entry of manifest.files) {
      const { bytes } = file(entry.path);
      expect(entry.size).toBe(bytes.length);
      expect(entry.sha256).toBe(`sha256:${createHash('sha256').update(bytes).digest('hex')}`);
    }
    expect(manifest.files).toHaveLength(files.length - 1);
  });

  test('the model comes back from its file', () => {
    expect(JSON.parse(textOf('design.json'))).toEqual(design);
  });

  test('findings stand in reading order: what fails first', () => {
    const verdicts = (JSON.parse(textOf('findings.json')) as { verdict: string }[]).map((f) => f.verdict);
    expect(verdicts).toEqual(['fails', 'not assessed', 'attention', 'meets']);
    expect(inReadingOrder([...findings].reverse())).toEqual(inReadingOrder(findings));
  });

  test('the lines of parts.csv add up to the total of the report', () => {
    const rows = parse(textOf('parts.csv'), { columns: true }) as Record<string, string>[];
    const cents = rows.reduce((sum, r) => sum + Math.round(Number(r.linePrice || '0') * 100), 0);
    expect(cents).toBe(386_960);
    expect(rows.find((r) => r.partNumber === 'cloth-b')!.name).toBe("'=Cloth, laser barrier");
  });

  test('makes only what is asked for, and lists only that', async () => {
    const some = await makePack(input, { only: ['parts.csv'] });
    expect(some.map((f) => f.name)).toEqual(['parts.csv', 'manifest.json']);
  });

  test('a cancelled pack is no pack', async () => {
    const signal = { cancelled: false };
    const seen: string[] = [];
    const onProgress = (name: string) => {
      seen.push(name);
      signal.cancelled = seen.length === 2;
    };
    expect(await makePack(input, { signal, onProgress })).toEqual([]);
    expect(seen).toHaveLength(2);
  });

  test('progress rises to one', async () => {
    const shares: number[] = [];
    await makePack(input, { only: ['plan.svg', 'plan.dxf'], onProgress: (_, share) => shares.push(share) });
    expect(shares).toEqual([1 / 3, 2 / 3, 1]);
  });
});

/** Text of each page, by an independent reader. */
function pagesOf(bytes: Uint8Array): string[] {
  const run = spawnSync('pdftotext', ['-layout', '-', '-'], { input: Buffer.from(bytes) });
  return run.stdout
    .toString('utf8')
    .replace(/\u00a0/g, ' ')
    .split('\f');
}

describe('the report', () => {
  const hasTool = spawnSync('pdftotext', ['-v']).status === 0;

  test('is a PDF with embedded fonts and the date of issue only', () => {
    const raw = Buffer.from(file('report.pdf').bytes).toString('latin1');
    expect(raw.startsWith('%PDF-1.7')).toBe(true);
    expect(raw).toContain('FiraSans-Regular');
    expect(raw).toContain('D:20260309000000Z');
    expect([...raw.matchAll(/\/Type \/Page\b/g)].length).toBeGreaterThanOrEqual(6);
  });

  // Sheet sizes in points: ISO 216 with 72/25.4 (handbook of deliverables 1.1, computed).
  test('has A4 pages and the drawings in true size', () => {
    const raw = Buffer.from(file('report.pdf').bytes).toString('latin1');
    const sizes = [...raw.matchAll(/\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/g)].map(
      (m) => `${Number(m[1]).toFixed(1)} x ${Number(m[2]).toFixed(1)}`,
    );
    expect(new Set(sizes)).toEqual(new Set(['595.3 x 841.9', '1683.8 x 1190.6']));
  });

  test.skipIf(!hasTool)('reads as it should through an independent reader', () => {
    const run = spawnSync('pdftotext', ['-layout', '-', '-'], { input: Buffer.from(file('report.pdf').bytes) });
    const words = run.stdout.toString('utf8').replace(/[\s\u00a0]+/g, ' ');
    for (const expected of [
      'NOT APPROVED',
      'fails',
      'not assessed',
      'attention',
      'meets',
      'Open questions',
      'w_sag = 5*w*L^4/(384*E*I)',
      'E = 70000 N/mm² modulus (table)',
      'overridden for this project because agreed on site',
      'laser safety officer',
      'Cautions for this chapter: Loads overhead: a licensed engineer decides.',
      '3869.60 EUR',
      'page 1 of',
    ])
      expect(words).toContain(expected);
  });

  test.skipIf(!hasTool)('the contents name the page on which each part begins', () => {
    const pages = pagesOf(file('report.pdf').bytes);
    const contents = pages[1]!.split('\n').flatMap((line) => {
      const found = /^\s*(\S.*?)[\s.]{3,}(\d+)$/.exec(line);
      return found ? [{ title: found[1]!, page: Number(found[2]) }] : [];
    });
    expect(contents.map((c) => c.title)).toEqual(
      expect.arrayContaining(['Findings', 'Setting out', 'Curtain schedule', 'Calculations', 'Frame', 'Sources']),
    );
    for (const { title, page } of contents.filter((c) => !c.title.includes(':')))
      expect(pages[page - 1]).toMatch(new RegExp(`^\\s*${title}\\s*$`, 'm'));
  });

  test('carries the chapters as bookmarks, in the order of the pages', () => {
    const raw = Buffer.from(file('report.pdf').bytes).toString('latin1');
    const titles = [...raw.matchAll(/\/Title \((.*?)\)/g)].map((m) => m[1]!);
    expect(titles.filter((t) => ['Findings', 'Setting out', 'Calculations', 'Sources'].includes(t))).toEqual([
      'Findings',
      'Setting out',
      'Calculations',
      'Sources',
    ]);
  });

  test.skipIf(!hasTool)('a message that needs no calculation stands once, in full', () => {
    const words = pagesOf(file('report.pdf').bytes).join(' ').replace(/\s+/g, ' ');
    expect(words.split('No rating covers 1064 nm at this spot')).toHaveLength(2);
  });

  // By hand from the fixture: the frame is 3600 by 2100 outside, and 3600^2 + 2100^2 = 4167.7^2.
  test.skipIf(!hasTool)('sets out the frame with its diagonal and posts', () => {
    const words = pagesOf(file('report.pdf').bytes).join(' ').replace(/\s+/g, ' ');
    expect(words).toContain('Outside of the frame 3600 × 2100, diagonal 4168');
  });

  test('units read as people write them', () => {
    const plain = ['N/mm2', '1/m3', 'mm4', 'm3/h', '1', 'W', 'um', 'uJ'];
    expect(plain.map(unitText)).toEqual(['N/mm²', '1/m³', 'mm⁴', 'm³/h', '', 'W', 'µm', 'µJ']);
  });
});
