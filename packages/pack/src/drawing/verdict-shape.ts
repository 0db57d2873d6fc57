import type { Verdict } from '@cloche/engine';
import { verdictInk } from './inks.js';
import { circleData, coordinate, openData, ringData } from './marks.js';
import type { Mark, PaperPoint } from './types.js';

const polar = ([x, y]: PaperPoint, radius: number, angle: number): PaperPoint => [
  x + radius * Math.cos(angle),
  y + radius * Math.sin(angle),
];

/**
 * The shape of a verdict, `size` across, about `at`: disc with tick, triangle with sign, octagon with cross, dashed ring. Each is told
 * from the others without its colour.
 * Source: handbook of deliverables 7.2.
 */
export function verdictShape(verdict: Verdict, at: PaperPoint, size: number): Mark[] {
  const r = size / 2;
  const [x, y] = at;
  const colour = verdictInk[verdict];
  const white = { width: size * 0.12, colour: '#FFFFFF' };
  const p = (dx: number, dy: number): PaperPoint => [x + dx * r, y + dy * r];
  if (verdict === 'meets')
    return [
      { mark: 'path', d: circleData(at, r), fill: colour },
      { mark: 'path', d: openData([p(-0.45, 0.02), p(-0.1, 0.38), p(0.48, -0.34)]), pen: white },
    ];
  if (verdict === 'attention')
    return [
      {
        mark: 'path',
        d: ringData([p(0, -1), p(1.05, 0.85), p(-1.05, 0.85)]),
        fill: colour,
        pen: { width: size * 0.07, colour: '#1C2126' },
      },
      { mark: 'path', d: openData([p(0, -0.42), p(0, 0.28)]), pen: { width: size * 0.12, colour: '#1C2126' } },
      { mark: 'path', d: openData([p(0, 0.45), p(0, 0.66)]), pen: { width: size * 0.12, colour: '#1C2126' } },
    ];
  if (verdict === 'fails')
    return [
      {
        mark: 'path',
        d: ringData(Array.from({ length: 8 }, (_, i) => polar(at, r * 1.06, (Math.PI / 4) * (i + 0.5)))),
        fill: colour,
      },
      { mark: 'path', d: openData([p(-0.4, -0.4), p(0.4, 0.4)]), pen: white },
      { mark: 'path', d: openData([p(-0.4, 0.4), p(0.4, -0.4)]), pen: white },
    ];
  const dash = Number(coordinate((Math.PI * size * 0.88) / 16));
  return [{ mark: 'path', d: circleData(at, r * 0.88), pen: { width: size * 0.12, colour, dash: [dash, dash] } }];
}
