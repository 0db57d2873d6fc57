import { airCautions, meanIlluminance } from '../air/index.js';
import { ratioStep } from '../air/steps.js';
import { sources } from '../air/tables.js';
import type { Light } from '../catalogue/schema.js';
import type { DesignEnclosure } from '../design/types.js';
import { fromStep, step, val } from '../floor/calculation.js';
import type { Finding } from '../floor/finding.js';
import { numberText } from '../floor/number-text.js';
import { valueOf } from '../floor/problem.js';
import { servedBy } from './air-enclosure.js';
import { airJudged, airOpen } from './air-finding.js';
import type { CheckContext } from './context.js';

/** Shares of the lumen method. Source: bright enclosure, mid-range, and clean room (common practice). */
const utilisationFactor = 0.5;
const maintenanceFactor = 0.8;

/** Lights of an enclosure by catalogue item. */
export const lightsOf = (
  context: CheckContext,
  enclosure: DesignEnclosure,
): { readonly item: Light; readonly count: number }[] => {
  const parts = context.design.parts.filter((p) => p.of === enclosure.id && p.role === 'light');
  return [...new Set(parts.map((p) => p.item))].flatMap((id) => {
    const item = context.catalogue.byId.get(id);
    const count = parts.filter((p) => p.item === id).reduce((n, p) => n + p.count, 0);
    return item?.kind === 'light strip' ? [{ item, count }] : [];
  });
};

type LightNeed = CheckContext['brief']['needs']['light'][number];

function lightFinding(context: CheckContext, need: LightNeed, id: string): Finding {
  const enclosure = context.design.enclosures.find((e) => servedBy(e, need.where));
  const subject = {
    id,
    subject: need.where,
    requirement: `${numberText(need.illuminance)} lx of light`,
    source: sources.lumenMethod,
    decider: 'group',
    required: true,
    cautions: [airCautions.emergencyLight],
    ...(enclosure ? { at: enclosure.centre } : {}),
  } as const;
  if (!enclosure) return airOpen(context, subject, `${need.where} is no enclosure; the light there is not computed.`);
  const lights = lightsOf(context, enclosure);
  if (lights.length === 0)
    return airOpen(
      context,
      subject,
      `No light is planned in ${enclosure.name}; what the room's own lights give there is not computed.`,
    );
  const count = lights.reduce((n, l) => n + l.count, 0);
  const flux = lights.reduce((total, l) => total + l.count * l.item.flux, 0);
  const area = enclosure.insideLength * enclosure.insideWidth;
  const E = valueOf(meanIlluminance({ flux, utilisationFactor, maintenanceFactor, area }, 1));
  const line = step(
    'E',
    'mean illuminance',
    'Phi*UF*MF/(L*W)',
    {
      Phi: val(flux, 'lm', `flux of ${count} lights`, `catalogue ${lights.map((l) => l.item.id).join(', ')}`),
      UF: val(utilisationFactor, '1', 'share of the flux that reaches the plane', 'common practice'),
      MF: val(maintenanceFactor, '1', 'maintenance factor', 'common practice'),
      L: val(enclosure.insideLength, 'm', 'inside length', 'design'),
      W: val(enclosure.insideWidth, 'm', 'inside width', 'design'),
    },
    E,
    'lx',
    sources.lumenMethod,
  );
  const used = ratioStep(
    'u',
    'utilisation',
    ['E0', val(need.illuminance, 'lx', 'asked for', 'brief')],
    ['E', fromStep(line)],
    '1',
    sources.lumenMethod,
  );
  return airJudged(context, subject, {
    message: `${count} lights give ${numberText(E)} lx on average; ${numberText(need.illuminance)} lx are asked for. Not assessed: ${['uniformity', 'glare', ...(need.colour ? ['colour'] : []), ...(need.dimmable ? ['dimming'] : [])].join(', ')}.`,
    demand: need.illuminance,
    capacity: E,
    unit: 'lx',
    utilisation: used.result,
    steps: [line, used],
    assumptions: [
      `Half of the flux reaches the plane and ${numberText(maintenanceFactor)} of it stays over the years.`,
    ],
  });
}

/** Light that the brief asks for, by the lumen method. */
export const lightFindings = (context: CheckContext): Finding[] =>
  context.brief.needs.light.map((need, i, all) => {
    const same = all.slice(0, i).filter((other) => other.where === need.where).length;
    return lightFinding(context, need, `air/light/${need.where}${same === 0 ? '' : `/${same + 1}`}`);
  });
