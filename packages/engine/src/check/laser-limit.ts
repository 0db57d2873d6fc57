import type { DesignLaser } from '../design/types.js';
import type { CalculationStep } from '../floor/calculation.js';
import { prefixedText } from '../floor/number-text.js';
import { type Outcome, ok } from '../floor/problem.js';
import { remembered } from '../floor/remembered.js';
import type { Source } from '../floor/source.js';
import {
  type EditionChoice,
  type Emitted,
  emittedEnergy,
  emittedPower,
  limitByChoice,
  limitEditions,
  type Organ,
  pulseTrainLimitByChoice,
  wavelengthBand,
} from '../laser/index.js';
import type { RuleId } from '../rules/known.js';
import { ruleNumber } from '../rules/schema.js';
import type { CheckContext } from './context.js';

/** Edition of the exposure limits: the project's own choice, else the site rule. */
export const editionOf = ({ brief, rules }: CheckContext): EditionChoice =>
  brief.site.edition ?? (rules.byId['laser.edition'].value as EditionChoice);

export const durationRule = (laser: DesignLaser): RuleId => `laser.exposure-${wavelengthBand(laser.wavelength)}`;

export const durationOf = (context: CheckContext, laser: DesignLaser): number =>
  ruleNumber(context.rules, durationRule(laser));

/** Limit for a source in the unit of its emission: irradiance for continuous light, radiant exposure of each pulse. */
export interface LimitForSource {
  readonly emitted: Emitted;
  readonly limit: number;
  readonly unit: 'W/m2' | 'J/m2';
  readonly symbol: string;
  /** `IEC2014, row I24, retinal thermal`. */
  readonly words: string;
  readonly source: Source;
  readonly steps: readonly CalculationStep[];
  /** Each edition tested with its own limit. */
  readonly each: readonly string[];
}

/** Exposure limit by the site's edition and duration; all pulse rules for a regular train. Null for trains that are not computed. */
function limitForSource(context: CheckContext, laser: DesignLaser, organ: Organ): Outcome<LimitForSource> | null {
  const { emission, wavelength } = laser;
  const choice = editionOf(context);
  const duration = durationOf(context, laser);
  if (emission.kind === 'continuous') {
    const found = limitByChoice(choice, { organ, wavelength, duration });
    if (!found.ok) return found;
    const { governing, tested, steps } = found.value;
    const words = (l: typeof governing) => `${l.edition}, row ${l.row}, ${l.mechanism}`;
    return ok({
      emitted: emittedPower(emission.power),
      limit: governing.irradiance,
      unit: 'W/m2',
      symbol: 'E_limit',
      words: words(governing),
      source: governing.rows.find((r) => r.row === governing.row)!.source,
      steps,
      each: tested.map((l) => `${prefixedText(l.irradiance, 'W/m2')} (${words(l)})`),
    });
  }
  if (emission.kind !== 'pulsed') return null;
  const editions = choice === 'stricter of both' ? limitEditions : [choice];
  const train = { organ, wavelength, pulse: emission.duration, rate: emission.rate, duration };
  const found = pulseTrainLimitByChoice(editions, train);
  if (!found.ok) return found;
  const { governing, tested, steps } = found.value;
  const words = (l: typeof governing) => `${l.edition}, rule ${l.governing}`;
  return ok({
    emitted: emittedEnergy(emission.energy),
    limit: governing.perPulse,
    unit: 'J/m2',
    symbol: tested.length === 1 ? 'H_permitted' : 'H_stricter',
    words: words(governing),
    source: steps.at(-1)!.source,
    steps,
    each: tested.map((l) => `${prefixedText(l.perPulse, 'J/m2')} a pulse (${words(l)})`),
  });
}

/** Step of the limit that holds, by its symbol. */
export const limitStep = (limit: LimitForSource): CalculationStep =>
  limit.steps.find((s) => s.symbol === limit.symbol)!;

/** Limits of eye and skin of one source; null where its emission is not computed. */
export type LimitsOfSource = Readonly<Record<Organ, Outcome<LimitForSource> | null>>;

/** Both limits, found once a source: every barrier asks for them. They do not depend on where the source stands. */
export const limitsOf = remembered(
  (context: CheckContext, laser: DesignLaser): LimitsOfSource => ({
    eye: limitForSource(context, laser, 'eye'),
    skin: limitForSource(context, laser, 'skin'),
  }),
  (context, { emission, wavelength }) => [context.rules.hash, editionOf(context), emission, wavelength],
);
