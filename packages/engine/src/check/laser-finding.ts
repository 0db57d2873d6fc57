import type { BriefLaser } from '../brief/schema.js';
import type { DesignLaser } from '../design/types.js';
import { type CalculationStep, calculation, fromStep, step, val } from '../floor/calculation.js';
import { type Decider, type Finding, notJudged, type RuleUsed } from '../floor/finding.js';
import { plan, type Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok } from '../floor/problem.js';
import { commonPractice, geometrySource, type Source } from '../floor/source.js';
import { beamDiameters, laserCautions } from '../laser/index.js';
import { marked } from '../laser/working.js';
import type { LimitsOfSource } from './laser-limit.js';

/** A source with what the brief alone knows about it. */
export interface Subject {
  readonly laser: DesignLaser;
  readonly brief: BriefLaser | undefined;
  readonly limits: LimitsOfSource;
}

interface Base {
  readonly id: string;
  readonly subject: string;
  readonly requirement: string;
  readonly source?: Source;
  readonly rule?: RuleUsed;
  readonly decider?: Decider;
  readonly required?: boolean;
  readonly cautions?: readonly string[];
  readonly at?: Vec2;
}

const common = (base: Base) => ({
  id: `laser/${base.id}`,
  discipline: 'laser' as const,
  subject: base.subject,
  requirement: base.requirement,
  source: base.rule?.source ?? base.source ?? commonPractice,
  ...(base.rule ? { rule: base.rule } : {}),
  decider: base.decider ?? ('laser safety officer' as const),
  required: base.required ?? false,
  cautions: base.cautions ?? laserCautions,
  asks: [],
  ...(base.at ? { at: base.at } : {}),
});

/** What is there but is not computed: the reason stands in the message. */
export const open = (base: Base, why: string): Finding => ({
  ...common(base),
  ...notJudged,
  message: why,
  unit: '1',
  calculation: null,
});

export interface Judgement {
  readonly verdict: Finding['verdict'];
  readonly message: string;
  readonly demand: number | null;
  readonly capacity: number | null;
  readonly unit: string;
  readonly utilisation: number | null;
  readonly steps: readonly CalculationStep[];
  readonly assumptions?: readonly string[];
}

export const judged = (base: Base, { steps, assumptions = [], ...judgement }: Judgement): Finding => ({
  ...common(base),
  ...judgement,
  calculation: calculation(base.requirement, steps, { assumptions, cautions: base.cautions ?? laserCautions }),
});

export const problemsText = (outcome: Outcome<unknown>): string =>
  outcome.ok ? '' : outcome.problems.map((p) => `${p.message} ${p.hint}`).join(' ');

export const placeOf = (laser: DesignLaser): Vec2 => plan(laser.path[0]!);

/** The beam in the 1/e convention. */
export interface Beam63 {
  readonly diameter: number;
  readonly divergence: number;
  readonly steps: readonly CalculationStep[];
}

/** Diameter and divergence converted to 1/e; a top hat is treated as if it were Gaussian, which gives the smaller beam. */
export function beamOf(laser: DesignLaser): Outcome<Beam63> {
  const found = beamDiameters(laser.diameter, laser.measuredAt);
  if (!found.ok) return found;
  const exit = marked(found.value.steps.slice(0, 1), 'exit')[0]!;
  const share = found.value.d63 / laser.diameter;
  const wide = step(
    'phi_63',
    'full divergence at 1/e',
    'phi_0 * d63_exit / d_0',
    {
      phi_0: val(laser.divergence * 1000, 'mrad', `full divergence at ${laser.measuredAt}`, 'brief'),
      d63_exit: fromStep(exit),
      d_0: val(laser.diameter * 1000, 'mm', `beam diameter at ${laser.measuredAt}`, 'brief'),
    },
    laser.divergence * share * 1000,
    'mrad',
    geometrySource,
  );
  return ok({ diameter: found.value.d63, divergence: laser.divergence * share, steps: [exit, wide] });
}

/** Reasons for which a result for the beam may be on the unsafe side; a result that would meet is then called to attention. */
export function doubtsAbout({ laser, brief }: Subject): string[] {
  const doubts: string[] = [];
  if (laser.legs.some((leg) => leg.endsOn === 'lens'))
    doubts.push('a lens in the path can focus the beam, and the focus is not computed');
  if (brief?.beam.waistAt !== undefined && brief.beam.waistAt !== 0)
    doubts.push('the stated place of the waist is not used: the waist is taken where the beam leaves');
  if (laser.wavelengthRange) doubts.push('only the stated wavelength is computed, not its whole range');
  if (brief?.emission.kind === 'pulsed' && brief.emission.durationRange)
    doubts.push('only the stated pulse duration is computed, not its whole range');
  return doubts;
}
