import type { DesignRun } from '../design/types.js';
import { between2, distance2 } from '../floor/geometry/vec.js';
import { millimetreText } from '../floor/number-text.js';
import type { OverlayMark } from '../floor/overlay.js';
import { findingsUnder, gravest, type Overlay } from './overlay.js';

/** Distances of neighbouring supports, measured along the track. */
function spacings(run: DesignRun): OverlayMark[] {
  const ordered = [...run.supports].sort((a, b) => a.at - b.at);
  return ordered.slice(1).map((support, i): OverlayMark => {
    const before = ordered[i]!;
    return {
      mark: 'value',
      at: between2(before.point, support.point, 0.5),
      text: millimetreText(support.at - before.at),
    };
  });
}

export const curtainSupports: Overlay = {
  id: 'curtain/supports',
  discipline: 'curtain',
  title: 'Track supports',
  key: 'U',
  legend: [
    { style: 'part', means: 'line of the track' },
    { style: 'keep', means: 'support, with its distance to the next along the track' },
  ],
  limits: 'What ceiling, wall and floor can carry is not assessed; anchors are chosen by a competent person.',
  draw: ({ design }, findings) =>
    design.runs.flatMap((run): readonly OverlayMark[] => {
      const verdict = gravest(findingsUnder(findings, `curtain/support-spacing/${run.id}`))?.verdict;
      const [first, last] = [run.line[0], run.line.at(-1)];
      const back = run.closed && first && last && distance2(first, last) > 1e-6 ? [first] : [];
      return [
        { mark: 'line', style: 'part', points: [...run.line, ...back], ...(verdict ? { verdict } : {}) },
        ...run.supports.map(
          ({ point }): OverlayMark => ({ mark: 'circle', style: 'keep', centre: point, radius: 0.05 }),
        ),
        ...spacings(run),
      ];
    }),
};
