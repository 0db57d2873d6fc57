import type { Finding } from '../floor/finding.js';
import { cleanlinessFindings, recoveryFinding } from './air-cleanliness.js';
import { type EnclosureAir, enclosureAir } from './air-enclosure.js';
import { flowFindings } from './air-flow.js';
import { heatFinding } from './air-heat.js';
import { lightFindings } from './air-light.js';
import { noiseFindings } from './air-noise.js';
import { hazardFindings, openFindings, withoutAir } from './air-open.js';
import type { CheckContext } from './context.js';

/**
 * Air, heat, noise and light of a design against the needs of the brief and the site rules.
 *
 * Classes are forecasts by the balance of one well-mixed zone; only a measurement supports a class statement.
 */
export function checkAir(context: CheckContext): Finding[] {
  const airs: EnclosureAir[] = [];
  const enclosures = context.design.enclosures.flatMap((enclosure) => {
    const air = enclosureAir(context, enclosure);
    if (!air.ok) return withoutAir(context, enclosure, air.problems.map((p) => `${p.message} ${p.hint}`).join(' '));
    airs.push(air.value);
    return [
      ...flowFindings(context, air.value),
      ...cleanlinessFindings(context, air.value),
      recoveryFinding(context, air.value),
      heatFinding(context, air.value),
    ];
  });
  return [
    ...enclosures,
    ...noiseFindings(context),
    ...lightFindings(context),
    ...hazardFindings(context, airs),
    ...openFindings(context),
  ];
}
