import { describe, expect, test } from 'vitest';
import { catalogue, design, issued, revision } from '../../../test/fixture.js';
import { sheetFacts } from '../../make-pack.js';
import { sheetSvg } from '../svg.js';
import type { Mark, Sheet } from '../types.js';
import { planDrawing } from './plan-drawing.js';
import { planView } from './view.js';

const plan = planDrawing(design, { catalogue, facts: sheetFacts({ design, revision, issued }, 1) });
const svg = sheetSvg(plan);
const layer = (sheet: Sheet, id: string) => sheet.layers.find((l) => l.id === id)!;
const texts = (marks: readonly Mark[]) => marks.flatMap((m) => (m.mark === 'text' ? [m] : []));

/** Names of elements that open, close or stand alone; throws when they do not nest. */
function nested(xml: string): number {
  const open: string[] = [];
  let count = 0;
  for (const [, close, name, alone] of xml.replace(/<\?.*?\?>/g, '').matchAll(/<(\/?)([a-zA-Z]+)[^<>]*?(\/?)>/g)) {
    count++;
    if (close) expect(open.pop()).toBe(name);
    else if (!alone) open.push(name!);
  }
  expect(open).toEqual([]);
  return count;
}

describe('the plan sheet', () => {
  test('is A2 in true millimetres: one user unit is one millimetre', () => {
    expect(svg).toContain('width="594mm" height="420mm" viewBox="0 0 594 420"');
  });

  test('is drawn at a scale of ISO 5455', () => {
    expect(plan.scale).toBe(20);
    expect(svg).toContain('>1:20<');
  });

  test('is well-formed XML whatever the names hold', () => {
    expect(nested(svg)).toBeGreaterThan(300);
    expect(svg).toContain('Demo laser room &lt;A &amp; B&gt;');
    expect(svg).not.toMatch(/NaN|undefined|Infinity/);
  });

  test('prints the whole room in millimetres, and chains that add up to it', () => {
    const numbers = texts(layer(plan, 'dimensions').marks).map((m) => Number(m.text.replace(/\s/g, '')));
    expect(numbers).toContain(7200);
    expect(numbers).toContain(5400);
    // Two chains along each side (tables; what is built) and the room itself.
    expect(numbers.reduce((a, b) => a + b, 0)).toBe(3 * 7200 + 3 * 5400);
  });

  test('says that it is not approved, on the stamp and in the title block', () => {
    expect(texts(layer(plan, 'aids').marks).map((m) => m.text)).toContain('NOT APPROVED');
    expect(texts(layer(plan, 'title-block').marks).map((m) => m.text)).toContain('NOT APPROVED');
  });

  // Handbook of deliverables 1.4 (published table): 2.5 mm on A4 to A1.
  test('has no lettering under 2.5 mm', () => {
    const heights = plan.layers.flatMap((l) => texts(l.marks)).map((m) => m.height);
    expect(Math.min(...heights)).toBeGreaterThanOrEqual(2.5);
  });

  test('keeps everything inside the trimmed sheet', () => {
    for (const mark of plan.layers.flatMap((l) => l.marks)) {
      const points =
        mark.mark === 'text'
          ? [mark.at]
          : [...mark.d.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])] as const);
      for (const [x, y] of points) {
        expect(x).toBeGreaterThanOrEqual(0);
        expect(x).toBeLessThanOrEqual(594);
        expect(y).toBeGreaterThanOrEqual(0);
        expect(y).toBeLessThanOrEqual(420);
      }
    }
  });

  test('names the laser with its wavelength along the beam', () => {
    expect(svg).toContain('Laser A  1064 nm  class 4');
  });

  test('explains in its legend only what it draws', () => {
    const words = texts(layer(plan, 'strip').marks).map((m) => m.text);
    expect(words).toContain('sprinkler');
    expect(words).not.toContain('return air');
    const bare = planDrawing(
      { ...design, lasers: [] },
      { catalogue, facts: sheetFacts({ design, revision, issued }, 1) },
    );
    expect(texts(layer(bare, 'strip').marks).map((m) => m.text)).not.toContain('laser beam');
  });

  // A2 leaves 496 x 290 mm for the room, A3 322 x 167 mm (sheet less frame, strip and dimensions): which scale fits is plain division.
  test.each([
    [6, 3, 'A3', 20],
    [9, 5.5, 'A2', 20],
    [11, 7.5, 'A3', 50],
    [11, 7, 'A2', 25],
    [24, 13, 'A2', 50],
  ] as const)('a room of %d by %d m stands on %s at 1:%i', (length, width, paper, scale) => {
    const outline = [
      [0, 0],
      [length, 0],
      [length, width],
      [0, width],
    ] as const;
    const sheet = planDrawing(
      { ...design, room: { ...design.room, outline, doors: [] } },
      { catalogue, facts: sheetFacts({ design, revision, issued }, 1) },
    );
    expect([sheet.paper, sheet.scale]).toEqual([paper, scale]);
  });

  // A room of 26 ft by 20 ft would fit A2 at 1:20 (396 x 305 mm); its leaf of 3 ft (46 mm there) reaches into the strip below.
  test.each([
    ['in', 20],
    ['out', 25],
  ] as const)('a leaf that swings %s in the south wall stands clear of the strip, at 1:%i', (swing, scale) => {
    const ft = 0.3048;
    const outline = [
      [0, 0],
      [26 * ft, 0],
      [26 * ft, 20 * ft],
      [0, 20 * ft],
    ] as const;
    const door = design.room.doors[0]!;
    const open = ((swing === 'in' ? 1 : -1) * Math.PI) / 2;
    const leaves = [{ hinge: [2 * ft, 0] as const, leaf: 3 * ft, closed: 0, open }];
    const view = planView({ ...design, room: { ...design.room, outline, doors: [{ ...door, swing, leaves }] } });
    expect([view.paper, view.scale]).toEqual(['A2', scale]);
    const [, tip] = view.to([2 * ft, 3 * ft * Math.sin(open)]);
    // The strip is as high as the title block, 44 mm over the frame at 10 mm from the edge of 420 mm.
    expect(tip).toBeLessThan(420 - 10 - 44);
  });
});
