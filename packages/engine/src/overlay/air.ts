import { rectangle } from '../floor/geometry/polygon.js';
import { groupedFigures, numberText } from '../floor/number-text.js';
import type { OverlayMark } from '../floor/overlay.js';
import { findingsUnder, type Overlay, valueOf } from './overlay.js';

export const airSupply: Overlay = {
  id: 'air/supply',
  discipline: 'air',
  title: 'Clean air',
  key: 'A',
  legend: [
    { style: 'pass', means: 'face of a fan filter unit; supply and return of the room' },
    { style: 'part', means: 'inside of an enclosure, with its mean velocity and the forecast of its particles' },
  ],
  limits: 'A forecast is a planning value. Only a measurement in the finished space makes a class a claim.',
  draw: ({ design }, findings) => [
    ...design.enclosures.flatMap((e): readonly OverlayMark[] => [
      { mark: 'area', style: 'part', outline: e.inside },
      ...e.unitAreas.map((outline): OverlayMark => ({ mark: 'area', style: 'pass', outline })),
      ...stacked(
        [
          ...findingsUnder(findings, `air/velocity/${e.id}`).map(
            (f) => [f, f.capacity === null ? f.verdict : `${numberText(f.capacity, 2)} m/s`] as const,
          ),
          ...findingsUnder(findings, `air/class/${e.id}`).map(
            (f) => [f, f.demand === null ? f.verdict : `${groupedFigures(f.demand, 2)} particles/m³`] as const,
          ),
        ].flatMap(([f, text]) => valueOf(f, text, e.centre)),
      ),
    ]),
    ...design.room.airTerminals.flatMap((t): readonly OverlayMark[] => [
      { mark: 'area', style: 'pass', outline: rectangle(t.at, t.size[0], t.size[1], 0) },
      {
        mark: 'value',
        at: t.at,
        text: `${t.kind} ${t.flow === null ? 'not told' : `${numberText(t.flow * 3600, 3)} m³/h`}`,
      },
    ]),
  ],
};

/** Writings about one place stand one below the other [m]. */
const lineStep = 0.22;
const stacked = (marks: readonly OverlayMark[]): readonly OverlayMark[] =>
  marks.map((m, i) => (m.mark === 'value' ? { ...m, at: [m.at[0], m.at[1] - i * lineStep] as const } : m));
