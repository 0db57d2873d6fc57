import type { Part } from '../design/types.js';
import { plan } from '../floor/geometry/vec.js';
import { numberText, utilisationText } from '../floor/number-text.js';
import type { OverlayMark } from '../floor/overlay.js';
import { type FindingsById, findingsUnder, gravest, type Overlay, valueOf } from './overlay.js';

const beamChecks = ['roof-deflection-most', 'roof-deflection', 'roof-stress', 'track-deflection'] as const;

/** A roof beam as a line, with the highest use of any of its limits. */
function beamMarks(part: Part, enclosure: string, findings: FindingsById): readonly OverlayMark[] {
  if (part.shape.shape !== 'bar') return [];
  const points = [plan(part.shape.from), plan(part.shape.to)];
  const ids = [part.mark, part.id].filter((each) => each !== undefined);
  const found = beamChecks.flatMap((check) =>
    ids.flatMap((piece) => findings.get(`frame/${check}/${enclosure}/${piece}`) ?? []),
  );
  const worst = gravest(found);
  return [
    { mark: 'line', style: 'part', points, ...(worst ? { verdict: worst.verdict } : {}) },
    ...(worst?.utilisation != null ? valueOf(worst, utilisationText(worst.utilisation), middle(points)) : []),
  ];
}

const middle = (points: readonly (readonly [number, number])[]): readonly [number, number] => [
  (points[0]![0] + points[1]![0]) / 2,
  (points[0]![1] + points[1]![1]) / 2,
];

export const frameLoads: Overlay = {
  id: 'frame/loads',
  discipline: 'frame',
  title: 'Frame and its loads',
  key: 'F',
  legend: [
    { style: 'part', means: 'roof beam, with the highest use of its limits on sag and stress' },
    { style: 'keep', means: 'foot, with its largest load on a level floor' },
  ],
  limits:
    'Beams are taken as simply supported. Posts, joints, sway and anchors are findings of their own or not assessed.',
  draw: ({ design }, findings) =>
    design.enclosures.flatMap((e): readonly OverlayMark[] => {
      const beams = new Set(e.roofBeams.map((b) => b.part));
      const foot = findings.get(`frame/foot-load/${e.id}`);
      return [
        ...design.parts.filter((p) => beams.has(p.id)).flatMap((p) => beamMarks(p, e.id, findings)),
        ...e.footPoints.map((centre): OverlayMark => ({ mark: 'circle', style: 'keep', centre, radius: 0.06 })),
        ...(foot ? valueOf(foot, foot.demand === null ? foot.verdict : `${numberText(foot.demand / 1000, 3)} kN`) : []),
        ...findingsUnder(findings, `frame/tipping-push/${e.id}`).flatMap((f) =>
          f.capacity === null ? [] : valueOf(f, `tipping ${numberText(f.capacity, 2)}`),
        ),
      ];
    }),
};
