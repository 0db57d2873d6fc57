import { airCautions, roomConstant } from '../air/index.js';
import { sources } from '../air/tables.js';
import { type CalculationStep, type CalculationValue, fromStep, step, val } from '../floor/calculation.js';
import type { Finding } from '../floor/finding.js';
import { centroid, edges, signedArea } from '../floor/geometry/polygon.js';
import { distance2, type Vec2, type Vec3 } from '../floor/geometry/vec.js';
import { numberText } from '../floor/number-text.js';
import { valueOf } from '../floor/problem.js';
import { commonPractice } from '../floor/source.js';
import { unitOf } from './air-enclosure.js';
import { airJudged, airOpen } from './air-finding.js';
import { type CheckContext, ruleValue } from './context.js';

/** Unit under a roof and device on a table: half of space. Source: textbook of acoustics (from memory). */
const directivity = 2;
/** A level stated for a device is taken as heard at 1 m over a floor: Lw = L + 8. Source: half-space formula (from memory). */
const levelToPower = 8;
/** Nearer than this the point-source formula says nothing [m]. */
const nearest = 1;
/** Ear of a standing person [m]. Source: common practice. */
const earHeight = 1.6;

/** Equal sources at several places. */
interface NoiseGroup {
  readonly name: string;
  readonly power: CalculationValue;
  readonly at: readonly Vec3[];
}

function groupsOf(context: CheckContext): NoiseGroup[] {
  const { design } = context;
  const units = design.enclosures.flatMap((enclosure): NoiseGroup[] => {
    const unit = unitOf(context, enclosure);
    if (!unit) return [];
    const placed = enclosure.unitAreas.map((ring) => centroid(ring));
    const plan =
      placed.length === enclosure.unitCount
        ? placed
        : Array.from({ length: enclosure.unitCount }, () => enclosure.centre);
    return [
      {
        name: `units of ${enclosure.name}`,
        power: val(unit.soundPower, 'dB', 'sound power of one unit', `catalogue ${unit.id}`),
        at: plan.map(([x, y]) => [x, y, enclosure.clearHeight]),
      },
    ];
  });
  const devices = [...design.tables.flatMap((t) => t.equipment), ...design.equipment].flatMap((e): NoiseGroup[] =>
    e.noise === null
      ? []
      : [
          {
            name: e.name,
            power: val(e.noise + levelToPower, 'dB', `level of ${e.name} plus ${levelToPower} dB`, 'brief'),
            at: [[...centroid(e.outline), (e.bottom + e.top) / 2] as unknown as Vec3],
          },
        ],
  );
  return [...units, ...devices];
}

const distanceTo = (point: Vec3, from: Vec3): number =>
  Math.max(nearest, Math.hypot(distance2([point[0], point[1]], [from[0], from[1]]), point[2] - from[2]));

function groupStep(group: NoiseGroup, i: number, point: Vec3, R: CalculationStep): CalculationStep {
  const distances = group.at.map((at) => distanceTo(point, at));
  const names = distances.map((_, k) => `r${k + 1}`);
  const direct = distances.reduce((sum, r) => sum + 1 / r ** 2, 0);
  const energy =
    10 ** (group.power.value / 10) * ((directivity / (4 * Math.PI)) * direct + (4 * distances.length) / R.result);
  return step(
    `E${i + 1}`,
    `energy of ${group.name} at the place`,
    `10^(Lw/10) * (D/(4*pi)*(${names.map((r) => `1/${r}^2`).join('+')}) + n*4/R)`,
    {
      Lw: group.power,
      D: val(directivity, '1', 'directivity', 'textbook'),
      n: val(distances.length, '1', 'sources'),
      R: fromStep(R),
      ...Object.fromEntries(distances.map((r, k) => [names[k]!, val(r, 'm', 'distance', 'design')])),
    },
    energy,
    '1',
    sources.roomEquation,
  );
}

function roomStep(context: CheckContext): CalculationStep {
  const { outline, height } = context.design.room;
  const perimeter = edges(outline).reduce((sum, e) => sum + distance2(e.from, e.to), 0);
  const floor = Math.abs(signedArea(outline));
  const absorption = context.brief.room.meanAbsorption;
  const assumed = context.brief.assumptions.some((a) => a.path.join('.') === 'room.meanAbsorption');
  return step(
    'R',
    'room constant',
    '(2*F+U*h)*a/(1-a)',
    {
      F: val(floor, 'm2', 'floor area', 'survey'),
      U: val(perimeter, 'm', 'length of the walls', 'survey'),
      h: val(height, 'm', 'room height', 'survey'),
      a: val(absorption, '1', 'mean absorption', assumed ? 'assumed' : 'brief'),
    },
    valueOf(roomConstant(2 * floor + perimeter * height, absorption)),
    'm2',
    sources.roomEquation,
  );
}

interface Listener {
  readonly id: string;
  readonly subject: string;
  readonly place: string;
  readonly point: Vec3;
  readonly required: boolean;
}

function noiseFinding(context: CheckContext, listener: Listener, groups: readonly NoiseGroup[]): Finding {
  const { brief } = context;
  const limit = brief.needs.noise
    ? val(brief.needs.noise.limit, 'dB', 'limit', 'brief')
    : ruleValue(context, 'air.noise-limit', 'dB');
  const at: Vec2 = [listener.point[0], listener.point[1]];
  const R = roomStep(context);
  const energies = groups.map((group, i) => groupStep(group, i, listener.point, R));
  const level = step(
    'L',
    'A-weighted level at the place',
    `10*log10(${energies.map((e) => e.symbol).join('+')})`,
    Object.fromEntries(energies.map((e) => [e.symbol, fromStep(e)])),
    10 * Math.log10(energies.reduce((sum, e) => sum + e.result, 0)),
    'dB',
    sources.levelSum,
  );
  // Decibels are no ratio scale: so energies are compared.
  const used = step(
    'u',
    'energy over allowed energy',
    `(${energies.map((e) => e.symbol).join('+')})/10^(Lmax/10)`,
    { ...Object.fromEntries(energies.map((e) => [e.symbol, fromStep(e)])), Lmax: limit },
    10 ** ((level.result - limit.value) / 10),
    '1',
    sources.levelSum,
  );
  return airJudged(
    context,
    {
      id: listener.id,
      subject: listener.subject,
      requirement: 'Noise at the work',
      ...(brief.needs.noise ? { source: commonPractice } : { rule: 'air.noise-limit' as const }),
      required: listener.required,
      cautions: [airCautions.noiseExposure],
      at,
    },
    {
      message: `${numberText(level.result)} dB(A) are expected ${listener.place}; ${numberText(limit.value)} dB(A) is the limit.`,
      demand: level.result,
      capacity: limit.value,
      unit: 'dB',
      utilisation: used.result,
      steps: [R, ...energies, level, used],
      assumptions: [
        `Mean absorption of the room ${numberText(R.values.a!.value)}${R.values.a!.origin === 'assumed' ? ', assumed' : ''}; curtains and panels neither absorb nor shield.`,
        'Sound power as the catalogue gives it, at nominal flow; levels of devices are taken as heard at 1 m.',
        'Devices without a stated level and the building itself are not counted.',
      ],
    },
  );
}

/** Noise 1 m below the units of each enclosure, and where the brief asks for it. */
export function noiseFindings(context: CheckContext): Finding[] {
  const { design, brief } = context;
  const groups = groupsOf(context);
  const asked = brief.needs.noise;
  const point = asked?.at;
  const listeners: Listener[] = design.enclosures
    .filter((enclosure) => unitOf(context, enclosure) !== null)
    .map((enclosure) => ({
      id: `air/noise/${enclosure.id}`,
      subject: enclosure.id,
      place: `1 m below the units of ${enclosure.name}`,
      point: [...enclosure.centre, enclosure.clearHeight - 1] as unknown as Vec3,
      required: point === undefined,
    }));
  if (point)
    listeners.push({
      id: 'air/noise/place',
      subject: 'room',
      place: 'at the place named in the brief',
      point: [point[0], point[1], earHeight],
      required: true,
    });
  if (groups.length === 0 || listeners.length === 0)
    return asked
      ? [
          airOpen(
            context,
            { id: 'air/noise/room', subject: 'room', requirement: 'Noise at the work', required: true },
            'No source of noise is known at the place, so its level is not computed.',
          ),
        ]
      : [];
  return listeners.map((listener) => noiseFinding(context, listener, groups));
}
