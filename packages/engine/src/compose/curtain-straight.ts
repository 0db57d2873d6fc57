import type { Catalogue, Cloth, Track, TrackSupport } from '../catalogue/schema.js';
import type { Vec2 } from '../floor/geometry/vec.js';
import { type Outcome, ok, problem, refuse } from '../floor/problem.js';
import type { SiteRules } from '../rules/schema.js';
import { type CurtainLine, composeCurtainLine } from './curtain-line.js';
import { type TrackPath, trackPath } from './curtain-path.js';

/** A straight curtain on a track that something else carries: the side of an enclosure. */
export interface StraightCurtainInput {
  /** Start of the ids of the parts, unique in the design: `enc-1.north`. */
  readonly id: string;
  /** Enclosure that the parts belong to. */
  readonly of: string;
  /** Start of the piece marks, in capitals: `ENC-1-N`. */
  readonly markPrefix: string;
  readonly rulePrefix: string;
  readonly from: Vec2;
  readonly to: Vec2;
  /** Underside of the track above the floor. */
  readonly trackHeight: number;
  readonly hemGap: number;
  readonly cloth: Cloth;
  readonly track: Track;
  readonly hung: TrackSupport['hung'];
  /** Underside of the beam that carries the track; without it the cheapest support of the kind is taken. */
  readonly carrier?: number;
  /** Middles of openings along the line; none when the curtain draws to one end. */
  readonly openings?: readonly number[];
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
  /** Where the curtain stands in the brief, for problems. */
  readonly path: readonly (string | number)[];
}

export interface StraightCurtain extends CurtainLine {
  readonly line: TrackPath;
}

/** Track, supports, panels and runners of one straight curtain, as `composeRun` makes them. */
export function composeStraightCurtain(input: StraightCurtainInput): Outcome<StraightCurtain> {
  const path = trackPath([input.from, input.to], false, 0);
  if ('fault' in path || path.length === 0)
    return refuse([problem('compose/path', input.path, 'The curtain has no length.', 'Give two different ends.')]);
  const made = composeCurtainLine({
    ...input,
    mark: input.markPrefix,
    path,
    carrier: input.carrier ?? null,
    floorFall: 0,
    openings: input.openings ?? [],
    forbidden: [],
    problemPath: input.path,
  });
  return made.ok ? ok({ ...made.value, line: path }) : made;
}
