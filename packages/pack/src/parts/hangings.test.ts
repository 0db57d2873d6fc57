import { expect, test } from 'vitest';
import { catalogue, design } from '../../test/fixture.js';
import { hangings } from './hangings.js';

const all = hangings(design, catalogue);

test('a run hangs with everything that belongs to it, each piece counted', () => {
  const run = design.runs[0]!;
  const own = design.parts.filter((p) => p.of === run.id);
  const hanging = all.find((h) => h.id === run.id)!;
  const counted = (pieces: readonly { readonly count: number }[]) => pieces.reduce((sum, p) => sum + p.count, 0);
  const inGroup = (...groups: string[]) =>
    own.filter((p) => groups.includes(p.group)).reduce((sum, p) => sum + p.count, 0);
  expect(counted(hanging.panels) + counted(hanging.track) + counted(hanging.fittings)).toBe(
    inGroup('curtains', 'track', 'runners'),
  );
  expect([hanging.name, hanging.trackHeight, hanging.hemGap]).toEqual([run.name, run.trackHeight, run.hemGap]);
});

test('supports stand along the track in rising order, from where the track begins', () => {
  const side = {
    name: 'south',
    closure: 'curtain',
    item: 'cloth-b',
    from: [1, 2],
    to: [5, 2],
    bottom: 0,
    top: 2,
  } as const;
  const box = design.enclosures[0]!;
  const support = (n: number, x: number) => ({
    ...design.parts[0]!,
    ...{
      id: `${box.id}-south.support-${n}`,
      of: box.id,
      group: 'track supports',
      role: 'support',
      mark: 'S1',
      count: 1,
    },
    shape: { shape: 'box', centre: [x, 2, 2.1], length: 0.1, width: 0.1, height: 0.1, turn: 0 },
  });
  const found = hangings(
    {
      ...design,
      enclosures: [{ ...box, sides: [side] }],
      parts: [support(1, 4.9), support(2, 1.1)],
    } as unknown as typeof design,
    catalogue,
  );
  expect(found.map((h) => [h.name, h.start])).toEqual([[`${box.name}, south side`, [1, 2]]]);
  expect(found[0]!.supports[0]!.at).toEqual([expect.closeTo(0.1, 9), expect.closeTo(3.9, 9)]);
});
