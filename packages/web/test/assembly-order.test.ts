import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { assemblySteps } from '../src/solid/assembly-order.js';
import { boxesOf, cornersOf } from '../src/solid/boxes.js';
import { exampleDesigns } from './example-designs.js';

const designs = exampleDesigns();
const ids = (parts: readonly { readonly id: string }[]) => parts.map((p) => p.id).sort();

describe.each(designs)('%s', (_, design) => {
  const steps = assemblySteps(design);
  const stepOf = new Map(steps.flatMap((step, i) => step.parts.map((part) => [part.id, i] as const)));

  test('every part stands in exactly one step', () => {
    expect(ids(steps.flatMap((s) => s.parts))).toEqual(ids(design.parts));
    expect(steps.every((s) => s.parts.length > 0)).toBe(true);
  });

  test('no two steps are the same stage of the same thing', () => {
    const keys = steps.map((s) => `${s.of} ${s.stage}`);
    expect(new Set(keys).size).toBe(keys.length);
  });

  // What carries stands before what it carries: written here by hand, role by role, from below and from above.
  test.each([
    ['foot', 'post'],
    ['post', 'beam'],
    ['beam', 'cross beam'],
    ['post', 'rail'],
    ['cross beam', 'roof panel'],
    ['cross beam', 'fan filter unit'],
    ['beam', 'light'],
    ['rail', 'side panel'],
    ['beam', 'track'],
    ['support', 'track'],
    ['track', 'runner'],
    ['track curve', 'runner'],
    ['runner', 'curtain panel'],
    ['curtain panel', 'hem weight'],
    ['runner', 'end stop'],
  ] as const)('%s comes before %s of the same thing', (carrier, carried) => {
    const place = (id: string) =>
      stepOf.get(id)! * 10_000 + steps[stepOf.get(id)!]!.parts.findIndex((p) => p.id === id);
    for (const of of new Set(design.parts.map((p) => p.of))) {
      const all = (role: string) => design.parts.filter((p) => p.of === of && p.role === role).map((p) => place(p.id));
      const [under, over] = [all(carrier), all(carried)];
      if (under.length > 0 && over.length > 0) expect(Math.max(...under)).toBeLessThan(Math.min(...over));
    }
  });

  test('every upright part stands on the floor or on a part that is there already', () => {
    const heights = (id: string) =>
      boxesOf(design.parts.find((p) => p.id === id)!.shape)
        .flatMap(cornersOf)
        .map((c) => c[2]);
    for (const post of design.parts.filter((p) => p.role === 'post')) {
      const low = Math.min(...heights(post.id));
      const under = design.parts.filter((p) => p.role === 'foot' && Math.abs(Math.max(...heights(p.id)) - low) < 1e-6);
      expect(under.length).toBeGreaterThan(0);
      for (const foot of under.filter((f) => f.of === post.of))
        expect(stepOf.get(foot.id)!).toBeLessThan(stepOf.get(post.id)!);
    }
  });

  test('runs that hang on a frame come after the whole frame', () => {
    for (const run of design.runs.filter((r) => design.enclosures.some((e) => e.id === r.on))) {
      const of = (id: string) => steps.flatMap((s, i) => (s.of === id ? [i] : []));
      expect(Math.max(...of(run.on!))).toBeLessThan(Math.min(...of(run.id)));
    }
  });

  test('the order does not depend on the order of the list of parts', () => {
    const before = steps.map((s) => [s.of, s.stage, ids(s.parts)]);
    fc.assert(
      fc.property(fc.shuffledSubarray([...design.parts], { minLength: design.parts.length }), (parts) => {
        expect(assemblySteps({ ...design, parts }).map((s) => [s.of, s.stage, ids(s.parts)])).toEqual(before);
      }),
      { numRuns: 10 },
    );
  });
});

test('a joint is made together with the member that it fixes last', () => {
  const design = designs.find(([name]) => name === 'close-enclosure.yaml')![1];
  const steps = assemblySteps(design);
  const stage = (rule: string) =>
    new Set(steps.filter((s) => s.parts.some((p) => p.placed.rule === rule)).map((s) => s.stage));
  expect([...stage('compose.enclosure.beam-bracket')]).toEqual(['cross beams', 'mullions and transoms']);
  expect(stage('compose.enclosure.post-bracket').has('upper perimeter')).toBe(true);
  expect(stage('compose.enclosure.post-bracket').has('feet')).toBe(false);
});

test('nothing gives no step', () => {
  expect(assemblySteps({ enclosures: [], runs: [], parts: [] })).toEqual([]);
});
