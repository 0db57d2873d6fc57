import type { DesignLaser } from '../design/types.js';
import { type CalculationStep, fromStep, step, val } from '../floor/calculation.js';
import { type Finding, overLimit, verdictOf } from '../floor/finding.js';
import { distance2 } from '../floor/geometry/vec.js';
import { millimetreText, numberText, prefixedText } from '../floor/number-text.js';
import { geometrySource, source } from '../floor/source.js';
import {
  continuousLaserClass,
  diffuseHazardDistance,
  exposureThroughAperture,
  hazardDistance,
  limitEditions,
  limitingAperture,
  type Organ,
  wavelengthInNanometres,
} from '../laser/index.js';
import { ruleNumber } from '../rules/schema.js';
import { type CheckContext, ruleUsed } from './context.js';
import { beamOf, doubtsAbout, judged, open, placeOf, problemsText, type Subject } from './laser-finding.js';
import { durationOf, durationRule, limitStep } from './laser-limit.js';

const notComputed: Readonly<Record<'irregular pulses' | 'scanned', string>> = {
  'irregular pulses': 'Limits of irregular pulses are not computed; the laser safety officer decides.',
  scanned:
    'Scanned beams are not computed: judge the standing beam unless a monitor stops the laser when the scan fails.',
};

const whyNot = (laser: DesignLaser): string =>
  laser.emission.kind === 'irregular pulses' || laser.emission.kind === 'scanned'
    ? notComputed[laser.emission.kind]
    : 'The emission is not computed.';

const base = (context: CheckContext, { laser }: Subject, id: string, requirement: string) => ({
  id: `${id}/${laser.id}`,
  subject: laser.id,
  requirement,
  at: placeOf(laser),
  rule: ruleUsed(context.rules, durationRule(laser)),
});

/** Open beam where it leaves, averaged over the limiting aperture, against the limit of eye or skin. */
export function exposureFinding(context: CheckContext, subject: Subject, organ: Organ): Finding {
  const { laser } = subject;
  const b = base(context, subject, `exposure-limit/${organ}`, `Exposure limit of the ${organ} in the open beam`);
  const limit = subject.limits[organ];
  if (!limit) return open(b, whyNot(laser));
  if (!limit.ok) return open(b, problemsText(limit));
  const beam = beamOf(laser);
  if (!beam.ok) return open(b, problemsText(beam));
  const time = durationOf(context, laser);
  // The smallest aperture of the editions: the highest mean exposure.
  const apertures = limitEditions.map((edition) =>
    limitingAperture({ edition, organ, wavelength: laser.wavelength, duration: time }),
  );
  const smallest = apertures.flatMap((a) => (a.ok ? [a.value] : [])).sort((x, y) => x.diameter - y.diameter)[0]!;
  const through = exposureThroughAperture(limit.value.emitted, smallest.diameter, {
    profile: 'gaussian',
    diameter: beam.value.diameter,
  });
  if (!through.ok) return open(b, problemsText(through));
  const { exposure } = through.value;
  const ratio = exposure / limit.value.limit;
  const { unit } = limit.value;
  const demand = through.value.steps.at(-1)!;
  const ratioStep = step(
    'u',
    'exposure over limit',
    `${demand.symbol} / ${limit.value.symbol}`,
    { [demand.symbol]: fromStep(demand), [limit.value.symbol]: fromStep(limitStep(limit.value)) },
    ratio,
    '1',
    geometrySource,
  );
  const both = limit.value.each.length > 1 ? ` Tested: ${limit.value.each.join('; ')}.` : '';
  const verdict = overLimit(ratio) ? 'attention' : verdictOf(ratio);
  return judged(
    { ...b, source: limit.value.source },
    {
      verdict,
      message: `${laser.name}: the limit of the ${organ} at ${numberText(wavelengthInNanometres(laser.wavelength), 4)} nm for ${numberText(time)} s is ${prefixedText(limit.value.limit, unit)} (${limit.value.words}).${both} The open beam gives ${prefixedText(exposure, unit)} where it leaves, ${overLimit(ratio) ? `${numberText(Number(ratio.toPrecision(3)))} times the limit: keep it enclosed or on the table behind barriers` : 'below the limit'}.`,
      demand: exposure,
      capacity: limit.value.limit,
      unit,
      utilisation: ratio,
      steps: [...limit.value.steps, ...beam.value.steps, ...smallest.steps, ...through.value.steps, ratioStep],
      assumptions: ['The source is a point, which is safe.', ...doubtsAbout(subject).map((d) => `Not covered: ${d}.`)],
    },
  );
}

/** How far the free beam stays above the limit of the eye, against the size of the room. */
export function hazardDistanceFinding(context: CheckContext, subject: Subject): Finding {
  const { laser } = subject;
  const b = base(context, subject, 'hazard-distance', 'Hazard distance of the free beam ends within the room');
  const limit = subject.limits.eye;
  if (!limit) return open(b, whyNot(laser));
  if (!limit.ok) return open(b, problemsText(limit));
  const beam = beamOf(laser);
  if (!beam.ok) return open(b, problemsText(beam));
  const { emitted, limit: value } = limit.value;
  const found = hazardDistance({ emitted, limit: value, ...beam.value });
  if (!found.ok) return open(b, problemsText(found));
  const { distance } = found.value;
  const corners = context.design.room.outline;
  const farthest = Math.max(...corners.map((c) => distance2(placeOf(laser), c)));
  const ratio = distance / farthest;
  const ratioStep = step(
    'u',
    'hazard distance over the way to the farthest corner',
    'r_haz / r_room',
    { r_haz: fromStep(found.value.steps[0]!), r_room: val(farthest, 'm', 'plan distance to the farthest corner') },
    ratio,
    '1',
    geometrySource,
  );
  const meaning =
    distance === 0
      ? 'the beam is below the limit everywhere'
      : ratio > 1
        ? 'the free beam stays hazardous across the whole room: keep it on the table and behind barriers'
        : 'nearer than that the beam is hazardous: keep it on the table and behind barriers';
  return judged(
    { ...b, source: limit.value.source },
    {
      verdict: overLimit(ratio) ? 'attention' : verdictOf(ratio),
      message: `${laser.name}: hazard distance for the eye ${prefixedText(distance, 'm')} (${limit.value.words}), farthest corner of the room ${numberText(farthest)} m away: ${meaning}.`,
      demand: distance,
      capacity: farthest,
      unit: 'm',
      utilisation: ratio,
      steps: [...limit.value.steps, ...beam.value.steps, ...found.value.steps, ratioStep],
      assumptions: [
        'The beam runs free from where it leaves, waist at the exit, no loss in air, no binoculars.',
        ...doubtsAbout(subject).map((d) => `Not covered: ${d}.`),
      ],
    },
  );
}

/** Distance from a spot that reflects diffusely, with the reflectance of the site rules. */
export function diffuseFinding(context: CheckContext, subject: Subject): Finding {
  const { laser } = subject;
  const rule = ruleUsed(context.rules, 'laser.diffuse-reflectance');
  const b = { ...base(context, subject, 'diffuse-distance', 'Hazard distance of a diffuse reflection'), rule };
  const limit = subject.limits.eye;
  if (!limit || laser.meanPower === null) return open(b, whyNot(laser));
  if (!limit.ok) return open(b, problemsText(limit));
  const rate = laser.emission.kind === 'pulsed' ? laser.emission.rate : 1;
  const reflectance = ruleNumber(context.rules, 'laser.diffuse-reflectance');
  const found = diffuseHazardDistance({
    power: laser.meanPower,
    reflectance,
    angle: 0,
    limit: limit.value.limit * rate,
  });
  if (!found.ok) return open(b, problemsText(found));
  const r = found.value.distance;
  const last = limitStep(limit.value);
  const asMean = step(
    'MPE',
    laser.emission.kind === 'pulsed' ? 'limit of each pulse as mean irradiance' : 'exposure limit',
    laser.emission.kind === 'pulsed' ? `${last.symbol} * f` : last.symbol,
    {
      [last.symbol]: fromStep(last),
      ...(laser.emission.kind === 'pulsed' ? { f: val(rate, 'Hz', 'repetition rate', 'brief') } : {}),
    },
    limit.value.limit * rate,
    'W/m2',
    limit.value.source,
  );
  return judged(b, {
    verdict: 'attention',
    message: `${laser.name}: full power on a diffuse surface of reflectance ${numberText(reflectance)} exceeds the limit of the eye nearer than ${prefixedText(r, 'm')} (${limit.value.words}). Keep such spots out of sight; which surfaces are hit is not computed.`,
    demand: r,
    capacity: null,
    unit: 'm',
    utilisation: null,
    steps: [...limit.value.steps, asMean, ...found.value.steps],
    assumptions: ['Seen along the normal; the spot is a point: no credit for its size.'],
  });
}

/** Class where the engine computes it, against the declared one. */
export function classFinding(subject: Subject): Finding {
  const { laser } = subject;
  const declared = laser.declaredClass;
  const plain = {
    id: `class/${laser.id}`,
    subject: laser.id,
    requirement: 'Class of the source',
    at: placeOf(laser),
    source: source('IEC 60825-1:2014, Tables 3 to 8 and 10', 'from memory'),
  };
  const said = declared === null ? 'No class is declared.' : `Declared: class ${declared}.`;
  if (laser.emission.kind !== 'continuous')
    return open(plain, `${laser.name}: the class of repeated pulses is not computed. ${said}`);
  const beam = beamOf(laser);
  if (!beam.ok) return open(plain, problemsText(beam));
  const found = continuousLaserClass(
    { edition: 'IEC2014', wavelength: laser.wavelength, ...beam.value },
    laser.emission.power,
  );
  if (!found.ok) return open(plain, problemsText(found));
  const same = declared === found.value.class;
  const ratio = laser.emission.power / found.value.limits.threeB;
  return judged(plain, {
    verdict: same ? 'meets' : 'attention',
    message: `${laser.name}: a free continuous beam of these data is class ${found.value.class} (IEC2014). ${said}${same ? '' : ' The maker declares the class from the worst case with faults: ask, and plan for the higher one.'}`,
    demand: null,
    capacity: null,
    unit: '1',
    utilisation: null,
    steps: [...beam.value.steps, ...found.value.steps, shareOfThreeB(laser.emission.power, found.value.steps, ratio)],
    assumptions: ['Point source, one wavelength, no faults.', ...doubtsAbout(subject).map((d) => `Not covered: ${d}.`)],
  });
}

function shareOfThreeB(watts: number, steps: readonly CalculationStep[], ratio: number): CalculationStep {
  const limit = steps.find((s) => s.symbol === 'AEL_3B')!;
  return step(
    'share_3B',
    'power over the emission limit of class 3B; above 1 is class 4',
    'P / AEL_3B',
    { P: val(watts, 'W', 'power'), AEL_3B: fromStep(limit) },
    ratio,
    '1',
    limit.source,
  );
}

/** Height of the open beam against the eyes of seated and standing people. */
export function beamPlaneFinding(context: CheckContext, subject: Subject): Finding {
  const { laser } = subject;
  const rule = ruleUsed(context.rules, 'laser.eye-height-seated');
  const b = { ...base(context, subject, 'beam-plane', 'Open beam away from eye height'), rule };
  const heights = laser.legs.filter((l) => l.carried === 'open').flatMap((l) => [l.from[2], l.to[2]]);
  if (heights.length === 0)
    return open(b, `${laser.name}: no leg of the beam is open; faults of tube or fibre are not computed.`);
  const seated = ruleNumber(context.rules, 'laser.eye-height-seated');
  const standing = ruleNumber(context.rules, 'laser.eye-height-standing');
  const top = Math.max(...heights);
  const low = Math.min(...heights);
  const ratio = Math.min(top / seated, standing / low);
  const below = top / seated <= standing / low;
  const mm = (value: number, name: string, origin?: string) => val(value * 1000, 'mm', name, origin);
  const s = step(
    'u',
    'nearness to eye height; above 1 the beam runs between the eyes of seated and standing people',
    'min(z_top / h_seated, h_standing / z_low)',
    {
      z_top: mm(top, 'highest point of the open beam'),
      z_low: mm(low, 'lowest point of the open beam'),
      h_seated: mm(seated, 'eye height, seated', 'rule laser.eye-height-seated'),
      h_standing: mm(standing, 'eye height, standing', 'rule laser.eye-height-standing'),
    },
    ratio,
    '1',
    geometrySource,
  );
  const where = `The open beam of ${laser.name} runs ${low === top ? '' : `${millimetreText(low)} to `}${millimetreText(top)} above the floor`;
  const eyes = `eyes of seated people are at ${millimetreText(seated)}, of standing people at ${millimetreText(standing)}`;
  return judged(b, {
    verdict: overLimit(ratio) ? 'attention' : verdictOf(ratio),
    message: `${where}; ${eyes}.${overLimit(ratio) ? ' That is the height of eyes: lower the plane or keep chairs away.' : ''}`,
    demand: below ? top : low,
    capacity: below ? seated : standing,
    unit: 'm',
    utilisation: ratio,
    steps: [s],
    assumptions: ['People who kneel or bend over the table are not covered.'],
  });
}
