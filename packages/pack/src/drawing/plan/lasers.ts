import type { Design, DesignLaser } from '@cloche/engine';
import { accent, chain, ink, lineWidth } from '../inks.js';
import { besideLeg, type LabelPlace, type LabelSpace } from '../labels.js';
import { arrowHead, circle, line } from '../marks.js';
import type { Mark, PaperPoint, Pen } from '../types.js';
import { readable } from './tables.js';
import type { PlanView } from './view.js';

const beamPen: Pen = { width: lineWidth.symbol, colour: accent, dash: chain(lineWidth.narrow) };
const tubePen: Pen = { width: lineWidth.wide, colour: accent };

/** Wavelength in whole nanometres up to 2000, in micrometres above. */
export const wavelengthText = (metres: number): string =>
  metres < 2e-6 ? `${Math.round(metres * 1e9)} nm` : `${(metres * 1e6).toFixed(2).replace(/\.?0+$/, '')} µm`;

/** Beams as chain lines with an arrow at the end of the way, a filled bar where a stop ends it. */
export function beamMarks(design: Design, view: PlanView): Mark[] {
  return design.lasers.flatMap((laser) => {
    const legs = laser.legs.filter((leg) => leg.carried !== 'fibre');
    return [
      ...legs.flatMap((leg) => {
        const [a, b] = [view.to([leg.from[0], leg.from[1]]), view.to([leg.to[0], leg.to[1]])];
        if (Math.hypot(b[0] - a[0], b[1] - a[1]) < 0.2) return [];
        return [line(a, b, leg.carried === 'tube' ? tubePen : beamPen), ...endMarks(leg.endsOn, a, b)];
      }),
      ...(laser.path[0] ? [circle(view.to([laser.path[0][0], laser.path[0][1]]), 1, undefined, accent)] : []),
    ];
  });
}

function endMarks(endsOn: string, a: PaperPoint, b: PaperPoint): Mark[] {
  const size = Math.hypot(b[0] - a[0], b[1] - a[1]);
  const u: PaperPoint = [(b[0] - a[0]) / size, (b[1] - a[1]) / size];
  if (endsOn === 'mirror' || endsOn === 'splitter' || endsOn === 'lens' || endsOn === 'crystal')
    return [circle(b, 0.8, { width: lineWidth.narrow, colour: accent }, '#FFFFFF')];
  const head = size > 4 ? [arrowHead(b, u, 3, accent)] : [];
  if (endsOn !== 'beam stop') return head;
  return [
    ...head,
    line([b[0] - u[1] * 2, b[1] + u[0] * 2], [b[0] + u[1] * 2, b[1] - u[0] * 2], { width: 1, colour: ink }),
  ];
}

/** Name and wavelength written along a leg, the longest first; a fibre-coupled source is named beside its place. */
export function beamLabels(design: Design, view: PlanView, space: LabelSpace): Mark[] {
  return design.lasers.flatMap((laser) => {
    const legs = laser.legs
      .map((leg) => ({ a: view.to([leg.from[0], leg.from[1]]), b: view.to([leg.to[0], leg.to[1]]) }))
      .sort((p, q) => size(q) - size(p));
    const along = legs.slice(0, 3).flatMap((leg) => {
      const turn = readable(Math.atan2(-(leg.b[1] - leg.a[1]), leg.b[0] - leg.a[0]));
      return besideLeg(leg.a, leg.b, turn, 2.5, 1.4, [0.5, 0.3, 0.7]);
    });
    const start = laser.path[0];
    const [x, y] = start ? view.to([start[0], start[1]]) : [0, 0];
    const beside: LabelPlace[] = start
      ? [{ at: [x + 2, y + 1.25] }, { at: [x - 2, y + 1.25], anchor: 'end' }, { at: [x, y + 5], anchor: 'middle' }]
      : [];
    return space.place({
      words: beamWords(laser),
      height: 2.5,
      style: { colour: accent, medium: true },
      places: [...along, ...beside],
      leaderTo: [
        ...legs
          .filter((leg) => size(leg) > 2)
          .slice(0, 2)
          .map(middleOf),
        ...(start ? [[x, y] as const] : []),
      ],
    });
  });
}

type PaperLeg = { readonly a: PaperPoint; readonly b: PaperPoint };
const middleOf = ({ a, b }: PaperLeg): PaperPoint => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
const size = ({ a, b }: PaperLeg) => Math.hypot(b[0] - a[0], b[1] - a[1]);

function beamWords(laser: DesignLaser): string {
  const declared = laser.declaredClass ? `  class ${laser.declaredClass}` : '';
  return `${laser.name}  ${wavelengthText(laser.wavelength)}${declared}`;
}

export const usesStops = (design: Design): boolean =>
  design.lasers.some((l) => l.legs.some((leg) => leg.endsOn === 'beam stop'));
export const usesTubes = (design: Design): boolean =>
  design.lasers.some((l) => l.legs.some((leg) => leg.carried === 'tube'));
export { beamPen, tubePen };
