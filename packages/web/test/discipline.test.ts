import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import {
  calculate,
  type DesignResult,
  type Discipline,
  designFrom,
  type Finding,
  heavyFindings,
  lightFindings,
  valueOf,
} from '@cloche/engine';
import { makePack } from '@cloche/pack';
import { beforeAll, expect, test, vi } from 'vitest';
import { overlayMarks, prepare } from '../src/engine/compute.js';
import { catalogueFiles, exampleText, ruleTexts } from './design-of.js';

/** A discipline is added to the list of disciplines, and nowhere else. */
vi.mock('../../engine/src/discipline/list.js', async (original) => {
  const { sound } = await import('./sound-discipline.js');
  const { disciplines } = await original<{ readonly disciplines: readonly Discipline[] }>();
  return { disciplines: [...disciplines, sound] };
});

const find = createRequire(import.meta.url);
const font = (weight: string) =>
  new Uint8Array(readFileSync(find.resolve(`@expo-google-fonts/fira-sans/${weight}.ttf`)));
const fonts = { regular: font('400Regular/FiraSans_400Regular'), medium: font('500Medium/FiraSans_500Medium') };

const briefText = exampleText('close-enclosure.yaml');
let made: DesignResult;
beforeAll(() => {
  made = valueOf(designFrom({ briefText, catalogueFiles, ruleTexts }));
});

test('a listed discipline is among the findings, what is slow with what is slow', () => {
  const own = (findings: readonly Finding[]) => findings.filter((f) => f.discipline === 'sound').map((f) => f.id);
  expect(own(made.findings)).toEqual(['sound/echo/room', 'sound/slow-echo/room']);
  expect(own(lightFindings(made))).toEqual(['sound/echo/room']);
  expect(own(heavyFindings(made))).toEqual(['sound/slow-echo/room']);
});

test('the page is offered its title, and its overlay with key and legend', () => {
  const shelf = prepare(catalogueFiles, ruleTexts);
  expect(shelf.disciplines.at(-1)).toEqual({ id: 'sound', title: 'Acoustics' });
  expect(shelf.overlays.at(-1)).toEqual({
    id: 'sound/echo',
    discipline: 'sound',
    title: 'Echo',
    key: 'E',
    legend: [{ style: 'reach', means: 'where it echoes' }],
    limits: 'Invented.',
  });
  expect(overlayMarks(briefText, 'sound/echo')).toEqual([
    { mark: 'circle', style: 'reach', centre: [1, 1], radius: 2 },
  ]);
});

test('no two overlays share a key', () => {
  const keys = prepare(catalogueFiles, ruleTexts).overlays.flatMap((o) => o.key ?? []);
  expect(keys.length).toBeGreaterThan(5);
  expect(new Set(keys).size).toBe(keys.length);
});

test('its calculation stands without a project', () => {
  expect(valueOf(calculate('echo-time', {})).title).toBe('Echo of the room');
});

test.skipIf(spawnSync('pdftotext', ['-v']).status !== 0)('the report has a chapter for it', async () => {
  const { design, findings, catalogue, rules } = made;
  const pack = await makePack(
    {
      design,
      findings,
      catalogue,
      rules,
      issued: '2026-03-09T00:00:00Z',
      fonts,
      revision: { name: 'A', hash: made.revision },
    },
    { only: ['report.pdf'] },
  );
  const pdf = pack[0]!;
  const words = spawnSync('pdftotext', ['-layout', '-', '-'], { input: Buffer.from(pdf.bytes) }).stdout.toString();
  expect(words).toMatch(/^\s*Acoustics\s*$/m);
  expect(words).toContain('Echo of the room');
});
