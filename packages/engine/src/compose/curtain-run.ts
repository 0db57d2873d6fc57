import type { BriefRun } from '../brief/schema.js';
import type { Catalogue, Cloth, Track, TrackCurve } from '../catalogue/schema.js';
import type { Assumption, Barrier, DesignEnclosure, DesignRun, DesignTable, Part } from '../design/types.js';
import type { Question } from '../floor/finding.js';
import { millimetreText } from '../floor/number-text.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import { commonPractice, type Source } from '../floor/source.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import { clothFor, curvesFor, namedItem } from './curtain-items.js';
import { type CurtainLine, composeCurtainLine } from './curtain-line.js';
import {
  lineBetween,
  type PathFault,
  pointAt,
  realCorners,
  type TrackPath,
  trackPath,
  turnsOf,
} from './curtain-path.js';
import { chosenItem, itemsOf } from './items.js';

/** What a curtain run stands in. */
export interface RunContext {
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
  readonly roomHeight: number;
  /** Underside of what can carry overhead. */
  readonly structureHeight: number;
  /** By how much the floor falls under the run. */
  readonly floorFall: number;
  readonly tables: readonly DesignTable[];
  readonly enclosures: readonly DesignEnclosure[];
}

export interface ComposedRun {
  readonly run: DesignRun;
  readonly parts: readonly Part[];
  readonly barriers: readonly Barrier[];
  readonly questions: readonly Question[];
  readonly assumptions: readonly Assumption[];
}

type Path = readonly (string | number)[];

/**
 * One curtain run from its wishes to its parts: path with bends, track from stock, connectors, supports, panels, runners.
 * @param index number of the run in the brief, for the path of problems
 * @returns the run with parts, barriers, questions and assumptions; or all problems: `compose/item-missing`, `compose/no-bend-room`,
 *          `compose/path`, `compose/no-support-reaches`, `compose/curtain-too-long`, `compose/opening-outside`,
 *          `compose/no-panels`, `compose/track-height`, and those of the curtain discipline (`curtain/no-split`,
 *          `curtain/no-support-place`, ...) with their place in the brief
 */
export function composeRun(run: BriefRun, index: number, context: RunContext): Outcome<ComposedRun> {
  const base: Path = ['layout', 'runs', index];
  const { catalogue, rules } = context;
  const assumptions: Assumption[] = [];
  const assume = (field: string, what: string, value: string, reason: string, source: Source = commonPractice) =>
    assumptions.push({ path: [...base, field], what, value, reason, source });
  const track = chooseTrack(run, catalogue, base, assume);
  const cloth = chooseCloth(run, catalogue, base, assume);
  const carrier = carrierOf(run, context, base, assume);
  const first = [track, cloth, carrier].flatMap((o): readonly Problem[] => (o.ok ? [] : o.problems));
  if (!track.ok || !cloth.ok || !carrier.ok) return refuse(first);
  const laid = layTrack(run, track.value, catalogue, base, assume);
  if (!laid.ok) return laid;
  const { path, curve } = laid.value;
  const openings = run.openings ?? [];
  const hemGap = run.hemGap ?? ruleNumber(rules, 'curtain.hem-gap');
  if (run.hemGap === undefined)
    assume(
      'hemGap',
      `hem gap of ${run.id}`,
      rules.byId['curtain.hem-gap'].written,
      'The brief leaves it open; the site rule is used.',
      rules.byId['curtain.hem-gap'].source,
    );
  const outside = openings.flatMap((o, i) =>
    o.at > path.length + 1e-6 ? [openingOutside(base, i, o.at, path.length)] : [],
  );
  const line = composeCurtainLine({
    of: run.id,
    id: run.id,
    mark: run.id.toUpperCase(),
    rulePrefix: 'compose.run',
    path,
    ...(curve ? { curve } : {}),
    hung: run.hung,
    carrier: carrier.value,
    track: track.value,
    cloth: cloth.value,
    trackHeight: run.trackHeight,
    hemGap: hemHeight(run, context, hemGap),
    floorFall: standsOnTable(run) ? 0 : context.floorFall,
    openings: openings.map((o) => o.at),
    forbidden: run.noSupport ?? [],
    catalogue,
    rules,
    problemPath: base,
  });
  if (!line.ok || outside.length > 0) return refuse([...outside, ...(line.ok ? [] : line.problems)]);
  for (const stretch of line.value.stretches)
    if (!stretch.fits)
      assume('cloth', `panels of ${run.id}`, `${millimetreText(stretch.flatWidth)} flat width`, stretch.why);
  for (const at of line.value.blocked)
    assume(
      'corner',
      `corner of ${run.id} at ${millimetreText(at)}`,
      'panels meet with an overlap',
      'Runners cannot pass the corner connector.',
    );
  return ok({
    run: designRun(run, path, line.value, track.value, cloth.value, hemGap),
    parts: line.value.parts,
    barriers: barriersOf(run, path, line.value, cloth.value, hemGap, context),
    questions: questionsOf(run, base),
    assumptions,
  });
}

type Assume = (field: string, what: string, value: string, reason: string, source?: Source) => void;

function chooseTrack(run: BriefRun, catalogue: Catalogue, base: Path, assume: Assume): Outcome<Track> {
  if (run.track !== undefined) return namedItem<Track>(catalogue, run.track, 'track', [...base, 'track']);
  const chosen = chosenItem(itemsOf<Track>(catalogue, 'track')[0], 'track', [...base, 'track']);
  if (chosen.ok)
    assume(
      'track',
      `track of ${run.id}`,
      chosen.value.id,
      'The brief names none; the first track of the catalogue is used.',
    );
  return chosen;
}

function chooseCloth(run: BriefRun, catalogue: Catalogue, base: Path, assume: Assume): Outcome<Cloth> {
  if (run.cloth !== undefined) return namedItem<Cloth>(catalogue, run.cloth, 'cloth', [...base, 'cloth']);
  const purpose = run.kind === 'shelf' ? 'blackout' : 'laser barrier';
  const chosen = clothFor(catalogue, purpose, [...base, 'cloth']);
  if (chosen.ok)
    assume(
      'cloth',
      `cloth of ${run.id}`,
      chosen.value.id,
      `The brief names none; a ${run.kind} gets the ${purpose} cloth of least price.`,
    );
  return chosen;
}

/** Height of what carries the track. */
function carrierOf(run: BriefRun, context: RunContext, base: Path, assume: Assume): Outcome<number | null> {
  const top = run.hung === 'ceiling' ? context.structureHeight : context.roomHeight;
  if (run.trackHeight >= top)
    return refuse([
      problem(
        'compose/track-height',
        [...base, 'trackHeight'],
        `The track at ${millimetreText(run.trackHeight)} does not lie under the ${run.hung === 'ceiling' ? 'structure' : 'ceiling'} at ${millimetreText(top)}.`,
        'Give the underside of the track above the floor.',
      ),
    ]);
  if (run.hung === 'ceiling') return ok(context.structureHeight);
  if (run.hung === 'floor post') return ok(0);
  if (run.hung === 'wall') {
    assume(
      'hung',
      `distance of ${run.id} from the wall`,
      'within reach of the cheapest wall bracket',
      'It is not measured along the run.',
    );
    return ok(null);
  }
  const carriers: readonly { readonly id: string }[] = run.hung === 'frame' ? context.enclosures : context.tables;
  const heightOf = (id: string): number | undefined =>
    run.hung === 'frame'
      ? context.enclosures.find((e) => e.id === id)?.clearHeight
      : context.tables.find((t) => t.id === id)?.height;
  const height = run.on === undefined ? undefined : heightOf(run.on);
  if (height !== undefined) return ok(height);
  const what = run.hung === 'frame' ? 'enclosure' : 'table';
  return refuse([
    problem(
      'compose/carrier-missing',
      [...base, 'on'],
      run.on === undefined
        ? `A run hung from a ${run.hung} needs the ${what} that carries it.`
        : `There is no ${what} "${run.on}".`,
      carriers.length > 0 ? `Known: ${carriers.map((c) => c.id).join(', ')}.` : `Add the ${what}.`,
    ),
  ]);
}

const standsOnTable = (run: BriefRun): boolean => run.hung === 'shelf';

/** Lower edge of the curtain above the floor: the hem gap counts from the table top under a curtain that stands on a table. */
function hemHeight(run: BriefRun, context: RunContext, hemGap: number): number {
  const table = standsOnTable(run) ? context.tables.find((t) => t.id === run.on) : undefined;
  return hemGap + (table?.height ?? 0);
}

interface LaidTrack {
  readonly path: TrackPath;
  readonly curve?: TrackCurve;
}

/** The path with bends of the cheapest curve that leaves room on every leg, or with sharp corners. */
function layTrack(run: BriefRun, track: Track, catalogue: Catalogue, base: Path, assume: Assume): Outcome<LaidTrack> {
  const closed = run.closed ?? false;
  const corners = realCorners(run.path, closed);
  const turns = turnsOf(corners, closed).filter((t): t is number => t !== null);
  if (turns.length > 0 && run.corner === undefined)
    assume(
      'corner',
      `corners of ${run.id}`,
      'curve',
      'The brief leaves it open; one curtain round a bend holds light better than two that meet.',
    );
  const sharp = trackPath(corners, closed, 0);
  if ('fault' in sharp) return refuse([pathProblem(sharp, base)]);
  if (turns.length === 0 || run.corner === 'connector') return ok({ path: sharp });
  const choices = curvesFor(catalogue, track.system, turns[0]!).filter((c) =>
    turns.every((t) => curvesFor(catalogue, track.system, t).some((other) => other.id === c.id)),
  );
  if (choices.length === 0) {
    const degrees = [...new Set(turns.map((t) => Math.round((Math.abs(t) * 180) / Math.PI)))].join(', ');
    const what = `track curve of system ${track.system} for corners of ${degrees} degrees`;
    return chosenItem<TrackCurve>(undefined, what, [...base, 'corner']) as Outcome<never>;
  }
  let fault: PathFault | null = null;
  for (const curve of choices) {
    const path = trackPath(corners, closed, curve.radius);
    if (!('fault' in path)) return ok({ path, curve });
    if (!fault || path.need < fault.need) fault = path;
  }
  return refuse([pathProblem(fault!, base)]);
}

function pathProblem({ fault, number, have, need }: PathFault, base: Path): Problem {
  if (fault === 'no room')
    return problem(
      'compose/no-bend-room',
      [...base, 'path', number],
      `The leg from corner ${number + 1} is ${millimetreText(have)} long; its bends take ${millimetreText(need)}.`,
      'Move the corner, use corner connectors, or add a tighter curve to the catalogue.',
    );
  if (fault === 'folds back')
    return problem(
      'compose/path',
      [...base, 'path', number],
      'The track folds back on itself at this corner.',
      'Move the corner.',
    );
  return problem(
    'compose/path',
    [...base, 'path'],
    `The path has ${have} different corner${have === 1 ? '' : 's'}; at least ${need} are needed.`,
    'Give at least two points, three for a closed run.',
  );
}

const openingOutside = (base: Path, i: number, at: number, length: number): Problem =>
  problem(
    'compose/opening-outside',
    [...base, 'openings', i, 'at'],
    `The opening at ${millimetreText(at)} lies beyond the track of ${millimetreText(length)}.`,
    'Give the distance from the start of the track to the middle of the opening.',
  );

function designRun(
  run: BriefRun,
  path: TrackPath,
  line: CurtainLine,
  track: Track,
  cloth: Cloth,
  hemGap: number,
): DesignRun {
  return {
    id: run.id,
    name: run.name ?? run.id,
    kind: run.kind,
    closed: path.closed,
    hung: run.hung,
    on: run.on ?? null,
    corners: run.path,
    line: lineBetween(path, 0, path.length),
    segments: path.segments,
    pathLength: path.length,
    trackHeight: run.trackHeight,
    hemGap,
    drop: line.drop,
    curtainTop: line.curtainTop,
    cloth: cloth.id,
    track: track.id,
    joints: line.joints,
    supports: line.supports.map((s) => ({ ...s, point: pointAt(path, s.at) })),
    supportSpacing: line.supportSpacing,
    supportItem: line.supportItem,
    openings: run.openings ?? [],
    stretches: line.stretches.map(({ from, to, panels, flatWidth, fullness, fits }) => ({
      from,
      to,
      panels,
      flatWidth,
      fullness,
      fits,
    })),
    massPerLength: line.massPerLength,
    mass: line.mass,
    stackBack: line.stackBack,
  };
}

/** One upright face for each straight, and one along the chord of each bend. */
function barriersOf(
  run: BriefRun,
  path: TrackPath,
  line: CurtainLine,
  cloth: Cloth,
  hemGap: number,
  context: RunContext,
): Barrier[] {
  const bottom = hemHeight(run, context, hemGap);
  return path.segments.map((s, i) => ({
    id: `${run.id}.face-${i + 1}`,
    name: `${run.name ?? run.id}, ${s.kind === 'straight' ? 'face' : 'bend'} ${i + 1}`,
    of: run.id,
    item: cloth.id,
    from: s.from,
    to: s.to,
    bottom,
    top: line.curtainTop,
  }));
}

function questionsOf(run: BriefRun, base: Path): Question[] {
  if (run.kind !== 'bay' || (run.openings ?? []).length > 0) return [];
  return [
    {
      id: `run.${run.id}.openings`,
      path: [...base, 'openings'],
      question: `Where do people enter ${run.name ?? run.id}?`,
      assumed: run.closed ? 'the curtain parts where the track starts' : 'at the open ends of the track',
      reason: 'No opening is given.',
      effect: 'Panels, overlaps, ways to the exits and the interlocks of the entry follow the openings.',
      weight: 0.6,
    },
  ];
}
