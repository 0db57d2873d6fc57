import type { Cloth, Runner, Track, TrackEnd, TrackSupport } from '../catalogue/schema.js';
import { runnersOf } from '../curtain/index.js';
import type { DesignRun, Part } from '../design/types.js';
import type { Calculation } from '../floor/calculation.js';
import { type Decider, type Finding, notJudged, verdictOf } from '../floor/finding.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import type { Source } from '../floor/source.js';
import type { RuleId } from '../rules/known.js';
import { type CheckContext, ruleUsed } from './context.js';

/** A run with its catalogue items and its parts, looked up once. */
export interface RunFacts {
  readonly context: CheckContext;
  readonly run: DesignRun;
  readonly parts: readonly Part[];
  readonly track: Track;
  readonly cloth: Cloth;
  readonly support: TrackSupport;
  readonly runner: Runner | null;
  readonly endStop: TrackEnd | null;
  /** What hangs on each stretch: its mass [kg] and the track that it takes pushed together [m]. */
  readonly hanging: readonly { readonly mass: number; readonly stack: number }[];
}

const hangingRoles: readonly Part['role'][] = ['curtain panel', 'runner', 'hem weight'];

/** Masses by stretch: the parts stand in the order of the stretches, each panel followed by its runners and hem weight. */
function massesOf(run: DesignRun, parts: readonly Part[]): number[] {
  const owner = run.stretches.flatMap((s, i) => s.panels.map(() => i));
  const masses = run.stretches.map(() => 0);
  let panel = -1;
  for (const part of parts) {
    if (!hangingRoles.includes(part.role)) continue;
    if (part.role === 'curtain panel') panel++;
    const stretch = owner[panel];
    if (stretch !== undefined) masses[stretch]! += part.mass;
  }
  return masses;
}

export function runFacts(context: CheckContext, run: DesignRun): RunFacts {
  const { catalogue, design } = context;
  const track = catalogue.byId.get(run.track) as Track;
  const cloth = catalogue.byId.get(run.cloth) as Cloth;
  const support = catalogue.byId.get(run.supportItem) as TrackSupport;
  const inSystem = catalogue.items.filter((i) => 'system' in i && i.system === track.system);
  const parts = design.parts.filter((p) => p.of === run.id);
  const runnerItem = parts.find((p) => p.role === 'runner')?.item;
  const runner = (catalogue.byId.get(runnerItem ?? '') as Runner | undefined) ?? null;
  const endStop = (inSystem.find((i) => i.kind === 'end stop') as TrackEnd | undefined) ?? null;
  const masses = massesOf(run, parts);
  const hanging = run.stretches.map((s, i) => ({
    mass: masses[i]!,
    stack: s.panels.reduce((sum, p) => sum + stackOf(p.width, runner, cloth), endStop?.length ?? 0),
  }));
  return { context, run, parts, track, cloth, support, runner, endStop, hanging };
}

function stackOf(width: number, runner: Runner | null, cloth: Cloth): number {
  if (!runner) return 0;
  const found = runnersOf({
    width,
    pitch: runner.pitch,
    runnerLength: runner.length,
    thickness: cloth.thickness,
    endStop: 0,
  });
  return found.ok ? found.value.stackBack : 0;
}

interface Common {
  readonly id: string;
  readonly subject: string;
  readonly requirement: string;
  readonly message: string;
  readonly source: Source;
  readonly decider: Decider;
  readonly required?: boolean;
  readonly cautions?: readonly string[];
  readonly asks?: readonly string[];
  readonly at?: Vec2 | undefined;
  readonly rule?: RuleId;
}

const base = (context: CheckContext, c: Common) => ({
  id: c.id,
  discipline: 'curtain' as const,
  subject: c.subject,
  requirement: c.requirement,
  message: c.message,
  source: c.source,
  decider: c.decider,
  required: c.required ?? c.rule !== undefined,
  cautions: c.cautions ?? [],
  asks: c.asks ?? [],
  ...(c.at ? { at: c.at } : {}),
  ...(c.rule ? { rule: ruleUsed(context.rules, c.rule) } : {}),
});

/** A finding with numbers; the last step of its calculation is the utilisation. */
export function assessed(
  context: CheckContext,
  common: Common,
  numbers: {
    readonly demand: number;
    readonly capacity: number;
    readonly unit: string;
    readonly calculation: Calculation;
  },
): Finding {
  const utilisation = numbers.calculation.steps.at(-1)!.result;
  return { ...base(context, common), ...numbers, utilisation, verdict: verdictOf(utilisation) };
}

/** A finding on something that is there but was not computed, with the reason in its message. */
export const notAssessed = (context: CheckContext, common: Common): Finding => ({
  ...base(context, common),
  ...notJudged,
  unit: '',
  calculation: null,
});
