import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, test } from 'vitest';
import { designFrom } from '../design-from.js';
import { bounds, contains } from '../floor/geometry/polygon.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import type { OverlayMark } from '../floor/overlay.js';
import { valueOf } from '../floor/problem.js';
import { overlayMarks, overlays } from './overlays.js';

const folder = fileURLToPath(new URL('../../../../', import.meta.url));
const read = (path: string) => readFileSync(`${folder}${path}`, 'utf8');
const catalogueFiles = readdirSync(`${folder}catalogue`).map((name) => ({ name, text: read(`catalogue/${name}`) }));
const ruleTexts = { eu: read('rules/eu.yaml'), us: read('rules/us.yaml') };

const stateOf = (briefText: string) => {
  const made = valueOf(designFrom({ briefText, catalogueFiles, ruleTexts }));
  const context = { brief: made.complete, design: made.design, catalogue: made.catalogue, rules: made.rules };
  return { context, findings: made.findings, marks: (id: string) => overlayMarks(id, context, made.findings) ?? [] };
};
const example = (name: string) => stateOf(read(`examples/${name}.yaml`));
const close = example('close-enclosure');

const pointsOf = (mark: OverlayMark): readonly Vec2[] =>
  mark.mark === 'area'
    ? mark.outline
    : mark.mark === 'line'
      ? mark.points
      : [mark.mark === 'circle' ? mark.centre : mark.at];

describe.each(['close-enclosure', 'amplifier-bay', 'three-tables'])('overlays on %s', (name) => {
  const state = example(name);

  test.each(overlays.map((o) => o.id))('%s draws finite marks in styles that its legend explains', (id) => {
    const explained = new Set(overlays.find((o) => o.id === id)!.legend.map((l) => l.style));
    const marks = state.marks(id);
    expect(marks.flatMap(pointsOf).flat().every(Number.isFinite)).toBe(true);
    expect(marks.flatMap((m) => (m.mark === 'value' || explained.has(m.style) ? [] : [m.style]))).toEqual([]);
  });

  test('a writing that opens a finding carries its verdict', () => {
    const byId = new Map(state.findings.map((f) => [f.id, f]));
    const values = overlays
      .flatMap((o) => state.marks(o.id))
      .flatMap((m) => (m.mark === 'value' && m.finding ? m : []));
    expect(values.length).toBeGreaterThan(0);
    for (const value of values) expect(byId.get(value.finding!)?.verdict).toBe(value.verdict);
  });
});

test('no overlay has a name that is not known', () => {
  expect(overlayMarks('laser/unknown', close.context, close.findings)).toBeNull();
});

test('a free beam reaches along its leg, within the tilt, as far as the room goes', () => {
  const { design } = close.context;
  const laser = design.lasers.find((l) => l.id === 'laser-green')!;
  const [from, to] = [laser.legs[0]!.from, laser.legs[0]!.to];
  const reach = close.marks('laser/reach').flatMap((m) => (m.mark === 'area' ? [m.outline] : []))[0]!;
  const heading = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const box = bounds(design.room.outline);
  const diagonal = Math.hypot(box.max[0] - box.min[0], box.max[1] - box.min[1]);
  for (const p of reach.slice(1)) {
    expect(Math.hypot(p[0] - from[0], p[1] - from[1])).toBeCloseTo(diagonal, 9);
    expect(Math.abs(Math.atan2(p[1] - from[1], p[0] - from[0]) - heading)).toBeLessThanOrEqual(
      (5 * Math.PI) / 180 + 1e-9,
    );
  }
});

test('a carried beam reaches nowhere', () => {
  const text = read('examples/close-enclosure.yaml')
    .replaceAll('carried: open', 'carried: tube')
    .replaceAll(/ *- \{ to: \[0\.8 m, 0\.1 m\].*\n.*\n/g, '');
  const areas = stateOf(text)
    .marks('laser/reach')
    .filter((m) => m.mark === 'area');
  expect(areas).toEqual([]);
});

test('people can walk where the widened floor is, and nowhere inside a thing', () => {
  const { design } = close.context;
  const pass = close.marks('room/ways').flatMap((m) => (m.mark === 'area' ? [m] : []));
  const inside = (p: Vec2) =>
    pass.some((a) => contains(a.outline, p) && !(a.holes ?? []).some((h) => contains(h, p, 0)));
  expect(inside([0.8, 2.2])).toBe(true);
  expect(inside(design.enclosures[0]!.centre)).toBe(false);
  expect(inside([0.2, 2.2])).toBe(false);
});

test('spacings of supports add up to the stretch between the first and the last', () => {
  const { context, marks } = example('amplifier-bay');
  const mm = (text: string) => Number(text.replace(/[^\d.]/g, ''));
  const sum = marks('curtain/supports').reduce((s, m) => s + (m.mark === 'value' ? mm(m.text) : 0), 0);
  const spans = context.design.runs.map((r) => {
    const at = r.supports.map((s) => s.at);
    return Math.max(...at) - Math.min(...at);
  });
  const count = context.design.runs.reduce((n, r) => n + r.supports.length, 0);
  // Each writing is rounded to a millimetre.
  expect(Math.abs(sum - 1000 * spans.reduce((a, b) => a + b, 0))).toBeLessThanOrEqual(count / 2);
});
