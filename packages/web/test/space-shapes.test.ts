import { distance2 } from '@cloche/engine';
import { describe, expect, test } from 'vitest';
import { apart, centresOf } from '../src/solid/apart.js';
import { assemblySteps } from '../src/solid/assembly-order.js';
import { cornersOf } from '../src/solid/boxes.js';
import { isMarked } from '../src/solid/marked.js';
import { movedPiece, piecesOf } from '../src/solid/pieces.js';
import { shownPieces } from '../src/solid/shown-pieces.js';
import { wallBlocks } from '../src/solid/walls.js';
import { exampleDesigns } from './example-designs.js';

const designs = exampleDesigns();
const shown = { curtains: true, panels: true, barriers: false, beams: true, ceiling: false };

describe.each(designs)('%s', (_, design) => {
  const pieces = piecesOf(design);
  const centre = centresOf(design);

  test('every table and every part that has a shape is drawn once', () => {
    const ids = pieces.map((p) => p.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const { id } of [...design.tables, ...design.parts.filter((p) => p.shape.shape !== 'loose')])
      expect(ids).toContain(id);
  });

  // The faces of the walls are the walls less their doors and windows.
  test('walls leave doors and windows open', () => {
    const { outline, height, doors, windows } = design.room;
    const around = outline.reduce((sum, a, i) => {
      const b = outline[(i + 1) % outline.length]!;
      return sum + Math.hypot(b[0] - a[0], b[1] - a[1]);
    }, 0);
    // A pane in a door takes nothing more from the wall.
    const panes = windows.filter((w) => !doors.some((d) => d.wall === w.wall && distance2(d.from, w.from) < d.width));
    const open = [...doors, ...panes].reduce((sum, o) => sum + o.width * (Math.min(o.top, height) - o.bottom), 0);
    const faces = wallBlocks(design.room).reduce((sum, { face: [a, b, c] }) => {
      return sum + Math.hypot(b[0] - a[0], b[1] - a[1]) * (c[2] - b[2]);
    }, 0);
    expect(faces).toBeCloseTo(around * height - open, 6);
  });

  test('pulled apart by nothing, nothing moves; pulled apart, panels go outward and the roof up', () => {
    for (const part of design.parts) {
      expect(Math.hypot(...apart(part, centre(part), 0))).toBe(0);
      const [x, y, z] = apart(part, centre(part), 1);
      const enclosure = design.enclosures.find((e) => e.id === part.of);
      if (!enclosure || part.shape.shape !== 'plate') continue;
      const { corners } = part.shape;
      const mid = (k: 0 | 1) => corners.reduce((sum, c) => sum + c[k], 0) / corners.length;
      const middle = [mid(0), mid(1)] as const;
      const away = (middle[0] - enclosure.centre[0]) * x + (middle[1] - enclosure.centre[1]) * y;
      if (part.role === 'side panel') expect(away).toBeGreaterThan(0);
      if (part.role === 'roof panel') expect([x, y, z > 0]).toEqual([0, 0, true]);
    }
  });

  test('what lies on what is not mixed up: units are pulled above roof panels, those above beams', () => {
    const rise = (role: string) => design.parts.filter((p) => p.role === role).map((p) => apart(p, centre(p), 1)[2]);
    const order = ['post', 'beam', 'cross beam', 'roof panel', 'fan filter unit'].map(rise).filter((r) => r.length > 0);
    for (let i = 1; i < order.length; i++) expect(Math.min(...order[i]!)).toBeGreaterThan(Math.max(...order[i - 1]!));
  });

  test('a thing in hand marks all its pieces, a catalogue item those made of it', () => {
    const none = { selected: null, pointed: new Set<string>(), subject: null };
    expect(pieces.some((p) => isMarked(p, none))).toBe(false);
    for (const { id } of [...design.enclosures, ...design.runs]) {
      const marked = pieces.filter((p) => isMarked(p, { ...none, selected: id }));
      expect(marked.map((p) => p.id).sort()).toEqual(
        design.parts
          .filter((p) => p.of === id && p.shape.shape !== 'loose')
          .map((p) => p.id)
          .sort(),
      );
    }
    const item = design.parts.find((p) => p.role === 'track')!.item;
    const marked = pieces.filter((p) => isMarked(p, { ...none, subject: item }));
    expect(marked.length).toBe(design.parts.filter((p) => p.item === item && p.shape.shape !== 'loose').length);
  });

  test('each step shows what was set up before and its own parts, the last one everything', () => {
    const steps = assemblySteps(design);
    const ids = (step: number | null) =>
      new Set(shownPieces(design, pieces, steps, { apart: 0, step, shown }).map((p) => p.id));
    const all = ids(null);
    expect(ids(steps.length - 1)).toEqual(all);
    const drawn = (step: number) => steps[step]!.parts.filter((p) => p.shape.shape !== 'loose').map((p) => p.id);
    for (let i = 0; i < steps.length; i++) {
      const now = ids(i);
      expect(drawn(i).every((id) => now.has(id))).toBe(true);
      for (let later = i + 1; later < steps.length; later++) expect(drawn(later).some((id) => now.has(id))).toBe(false);
      expect(design.tables.every((t) => now.has(t.id))).toBe(true);
    }
  });

  test('what is not to be shown is left out, and nothing else', () => {
    const of = (change: Partial<typeof shown>) =>
      shownPieces(design, pieces, [], { apart: 0, step: null, shown: { ...shown, ...change } });
    expect(of({}).filter((p) => p.ceiling)).toEqual([]);
    expect(of({ ceiling: true }).length).toBe(pieces.length);
    expect(of({ curtains: false }).map((p) => p.id)).toEqual(
      of({})
        .filter((p) => p.kind !== 'cloth')
        .map((p) => p.id),
    );
    expect(of({ beams: false }).some((p) => p.kind === 'beam')).toBe(false);
    expect(of({ panels: false }).some((p) => p.part?.shape.shape === 'plate')).toBe(false);
  });

  test('plates are boxes of their own size', () => {
    for (const piece of pieces) {
      if (piece.part?.shape.shape !== 'plate') continue;
      const { corners } = piece.part.shape;
      const drawn = cornersOf(piece.boxes[0]!);
      for (const k of [0, 1, 2] as const) {
        expect(Math.abs(Math.min(...drawn.map((c) => c[k])) - Math.min(...corners.map((c) => c[k])))).toBeLessThan(
          0.02,
        );
        expect(Math.abs(Math.max(...drawn.map((c) => c[k])) - Math.max(...corners.map((c) => c[k])))).toBeLessThan(
          0.02,
        );
      }
    }
  });
});

test('a piece that is moved keeps its size', () => {
  const piece = piecesOf(designs[0]![1])[0]!;
  const there = movedPiece(piece, [1, 2, 3]);
  expect(cornersOf(there.boxes[0]!)).toEqual(
    cornersOf(piece.boxes[0]!).map((c) => [
      expect.closeTo(c[0] + 1, 9),
      expect.closeTo(c[1] + 2, 9),
      expect.closeTo(c[2] + 3, 9),
    ]),
  );
});
