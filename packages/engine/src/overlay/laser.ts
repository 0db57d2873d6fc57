import type { CheckContext } from '../check/context.js';
import type { DesignLaser } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { bounds } from '../floor/geometry/polygon.js';
import { between2, distance3, plan, type Vec2 } from '../floor/geometry/vec.js';
import { millimetreText, numberText, utilisationText } from '../floor/number-text.js';
import type { OverlayMark } from '../floor/overlay.js';
import { type FindingsById, findingsUnder, gravest, type Overlay, valueOf } from './overlay.js';

const distanceText = (metres: number): string =>
  metres >= 1000
    ? `${numberText(metres / 1000, 2)} km`
    : metres < 1
      ? millimetreText(metres)
      : `${numberText(metres, 2)} m`;

const wavelengthText = (laser: DesignLaser): string => `${numberText(laser.wavelength * 1e9, 4)} nm`;

/** Chords of a sector: enough that its edge looks round at any scale of a room. */
const sectorSteps = 24;
/** Narrower than this a sector would be a hair on paper [rad]. */
const leastHalfAngle = (0.5 * Math.PI) / 180;

function sector(from: Vec2, direction: number, half: number, radius: number): Vec2[] {
  const angles = Array.from({ length: sectorSteps + 1 }, (_, i) => direction - half + (2 * half * i) / sectorSteps);
  return [from, ...angles.map((a): Vec2 => [from[0] + radius * Math.cos(a), from[1] + radius * Math.sin(a)])];
}

/** Longest distance inside the room: a sector never needs to be drawn farther. */
function roomReach({ design }: CheckContext): number {
  const { min, max } = bounds(design.room.outline);
  return Math.hypot(max[0] - min[0], max[1] - min[1]);
}

/** Where the free beam of one source can come to: straight on from the start of each open leg, within the foreseeable tilt. */
function reachOf(laser: DesignLaser, hazard: Finding, room: number): OverlayMark[] {
  const reach = hazard.demand ?? 0;
  let along = 0;
  const marks: OverlayMark[] = [];
  for (const leg of laser.legs) {
    const left = reach - along;
    along += distance3(leg.from, leg.to);
    if (leg.carried !== 'open' || left <= 0) continue;
    const [from, to] = [plan(leg.from), plan(leg.to)];
    const direction = Math.atan2(to[1] - from[1], to[0] - from[0]);
    const half = Math.max(leastHalfAngle, laser.foreseeableTilt);
    marks.push({ mark: 'area', style: 'reach', outline: sector(from, direction, half, Math.min(left, room)) });
  }
  return marks;
}

export const laserReach: Overlay = {
  id: 'laser/reach',
  discipline: 'laser',
  title: 'Reach of the free beams',
  key: 'L',
  legend: [
    {
      style: 'reach',
      means: 'an open beam, tilted as far as is foreseeable, before it falls below the exposure limit',
    },
  ],
  limits: 'Direct beams only, as if no barrier stood there. Reflections and scattered light are not in it.',
  draw: (context, findings) =>
    context.design.lasers.flatMap((laser): readonly OverlayMark[] => {
      const hazard = findings.get(`laser/hazard-distance/${laser.id}`);
      if (!hazard) return [];
      const said = hazard.demand === null ? 'not assessed' : distanceText(hazard.demand);
      const value = valueOf(hazard, `${wavelengthText(laser)}: ${said}`);
      return hazard.demand === null ? value : [...reachOf(laser, hazard, roomReach(context)), ...value];
    }),
};

export const laserScatter: Overlay = {
  id: 'laser/scatter',
  discipline: 'laser',
  title: 'Scattered light',
  key: 'S',
  legend: [
    { style: 'reach', means: 'nearer than this, light scattered where a beam leg ends is above the exposure limit' },
  ],
  limits: 'Each source alone, diffuse reflection of the full beam at the ends of its open legs, no barrier counted.',
  draw: ({ design }, findings) =>
    design.lasers.flatMap((laser): readonly OverlayMark[] => {
      const diffuse = findings.get(`laser/diffuse-distance/${laser.id}`);
      if (!diffuse) return [];
      if (diffuse.demand === null) return valueOf(diffuse, `${wavelengthText(laser)}: not assessed`);
      const radius = diffuse.demand;
      return [
        ...laser.legs
          .filter((leg) => leg.carried === 'open')
          .map((leg): OverlayMark => ({ mark: 'circle', style: 'reach', centre: plan(leg.to), radius })),
        ...valueOf(diffuse, `${wavelengthText(laser)}: ${distanceText(radius)}`),
      ];
    }),
};

/** All that was found on one barrier face. */
const onBarrier = (findings: FindingsById, id: string): readonly Finding[] => [
  ...findingsUnder(findings, `laser/barrier-irradiance/${id}/`),
  ...findingsUnder(findings, `laser/barrier-transmission/${id}/`),
];

export const laserBarriers: Overlay = {
  id: 'laser/barriers',
  discipline: 'laser',
  title: 'Barriers',
  key: 'P',
  legend: [
    { style: 'part', means: 'a face that may stop light, with the highest use of its rating by any one source' },
  ],
  limits:
    'A face without a rating for a source is not assessed, whatever the number beside it says for another source.',
  draw: ({ design }, findings) =>
    design.barriers.flatMap((barrier): readonly OverlayMark[] => {
      const found = onBarrier(findings, barrier.id);
      const open = found.find((f) => f.verdict === 'not assessed');
      const worst = gravest(found);
      const verdict = worst && overLimitOf(worst) ? worst.verdict : (open ?? worst)?.verdict;
      return [
        { mark: 'line', style: 'part', points: [barrier.from, barrier.to], ...(verdict ? { verdict } : {}) },
        ...(worst && verdict
          ? [
              {
                mark: 'value' as const,
                at: between2(barrier.from, barrier.to, 0.5),
                text: verdict === 'not assessed' ? verdict : utilisationText(worst.utilisation ?? 0),
                verdict,
                finding: verdict === 'not assessed' && open ? open.id : worst.id,
              },
            ]
          : []),
      ];
    }),
};

const overLimitOf = (finding: Finding): boolean => finding.verdict === 'fails';
