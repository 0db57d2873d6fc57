import { describe, expect, test } from 'vitest';
import { fittingOf } from '../src/fitting/fitting.js';
import { fittingFile } from '../src/fitting/fitting-file.js';
import { exampleResults } from './example-designs.js';

describe.each([...exampleResults()])('the sheet for fitters of %s', (_, { design, revision }) => {
  const fitting = fittingOf(design, revision, {});
  const lines = fitting.steps.flatMap((step) => step.lines);

  test('loses no piece and doubles none', () => {
    const sum = (list: readonly { readonly count: number }[]) => list.reduce((n, each) => n + each.count, 0);
    expect(sum(lines)).toBe(sum(design.parts));
    expect(new Set(lines.map((line) => line.key)).size).toBe(lines.length);
  });

  test('finds every mark of the design, with the step at which it goes in', () => {
    const marks = new Set(design.parts.flatMap((part) => part.mark ?? []));
    expect(new Set(fitting.pieces.map((piece) => piece.mark))).toEqual(marks);
    for (const piece of fitting.pieces)
      expect(fitting.steps[piece.step - 1]!.lines.map((line) => line.key)).toContain(piece.key);
  });

  test('weighs what the design weighs', () => {
    const mass = lines.reduce((sum, line) => sum + line.mass * line.count, 0);
    expect(mass).toBeCloseTo(
      design.parts.reduce((sum, part) => sum + part.mass, 0),
      6,
    );
  });
});

describe('the sheet as a file', () => {
  const { design, revision } = exampleResults().get('close-enclosure.yaml')!;
  const fitting = fittingOf(design, revision, {});

  test('asks nothing of any network and cannot be broken out of by a name', () => {
    const bad = { ...fitting, project: '</script><img src=http://example.org/x>', revision: '</script>' };
    const page = fittingFile(bad, [{ title: 'Plan', svg: '<svg xmlns="http://www.w3.org/2000/svg"/>' }], new Set());
    expect(page).toContain("default-src 'none'");
    expect(page.match(/<\/script>/g)).toHaveLength(1);
    expect([...page.matchAll(/\b(?:src|href)="([^"]*)"/g)].every(([, to]) => to!.startsWith('data:'))).toBe(true);
  });
});
