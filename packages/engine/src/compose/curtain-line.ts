import type { Catalogue, Cloth, Track, TrackCurve, TrackSupport } from '../catalogue/schema.js';
import { curtainDrop, type ForbiddenStretch } from '../curtain/index.js';
import type { Part } from '../design/types.js';
import { millimetreText } from '../floor/number-text.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import type { SiteRules } from '../rules/schema.js';
import { supportFor, trackKit } from './curtain-items.js';
import { markCurtainParts } from './curtain-marks.js';
import { panelParts, type Stretch } from './curtain-panels.js';
import type { TrackPath } from './curtain-path.js';
import { reachFrom, supportParts } from './curtain-supports.js';
import { trackParts } from './curtain-track.js';

/** All that a line of track with its curtain is made from. */
export interface CurtainLineInput {
  /** Run or enclosure that the parts belong to. */
  readonly of: string;
  /** Start of the ids of the parts; `of` for a run, side of an enclosure otherwise. */
  readonly id: string;
  /** Start of the piece marks, in capitals. */
  readonly mark: string;
  /** `compose.run` or `compose.enclosure.curtain`: start of the names of the rules that place parts. */
  readonly rulePrefix: string;
  readonly path: TrackPath;
  readonly curve?: TrackCurve;
  readonly hung: TrackSupport['hung'];
  /** Height of what carries the track; null when it is not known. */
  readonly carrier: number | null;
  readonly track: Track;
  readonly cloth: Cloth;
  /** Underside of the track above the high point of the floor. */
  readonly trackHeight: number;
  readonly hemGap: number;
  readonly floorFall: number;
  /** Middles of the openings, along the path. */
  readonly openings: readonly number[];
  readonly forbidden: readonly ForbiddenStretch[];
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
  readonly problemPath: readonly (string | number)[];
}

export interface CurtainLine {
  readonly parts: readonly Part[];
  readonly joints: readonly number[];
  /** Sharp corners at which runners stop and panels meet. */
  readonly blocked: readonly number[];
  readonly supports: readonly { readonly part: string; readonly at: number }[];
  readonly supportItem: string;
  readonly supportSpacing: number;
  readonly stretches: readonly (Stretch & {
    readonly panels: readonly { readonly mark: string; readonly width: number }[];
  })[];
  readonly drop: number;
  readonly curtainTop: number;
  /** Mass of everything, and per length of track with the curtain drawn. */
  readonly mass: number;
  readonly massPerLength: number;
  /** Track that the widest of the stretches takes pushed together. */
  readonly stackBack: number;
}

const sumOfMass = (parts: readonly { readonly mass: number }[]): number => parts.reduce((sum, p) => sum + p.mass, 0);

/** Track, connectors, supports, panels and runners along one path, with marks. All problems at once. */
export function composeCurtainLine(input: CurtainLineInput): Outcome<CurtainLine> {
  const { path, track, cloth, trackHeight, hemGap, problemPath, catalogue } = input;
  const kit = trackKit(catalogue, track, [...problemPath, 'track']);
  const reach = input.carrier === null ? null : reachFrom(input.carrier, input.hung, trackHeight, track);
  const support = supportFor(catalogue, track.system, input.hung, reach, [...problemPath, 'trackHeight']);
  const height = curtainHeight(input);
  const early = [kit, support, height].flatMap((o): readonly Problem[] => (o.ok ? [] : o.problems));
  if (!kit.ok || !support.ok || !height.ok) return refuse(early);
  const laid = trackParts({ ...input, kit: kit.value });
  if (!laid.ok) return laid;
  const hung = supportParts({ ...input, support: support.value, joints: laid.value.joints });
  const breaks = [...input.openings, ...laid.value.blocked];
  const { drop, top } = height.value;
  const panels = panelParts({ ...input, kit: kit.value, breaks, drop, curtainTop: top });
  if (!hung.ok || !panels.ok)
    return refuse([hung, panels].flatMap((o): readonly Problem[] => (o.ok ? [] : o.problems)));
  const parts = markCurtainParts(
    [...laid.value.parts, ...hung.value.parts, ...panels.value.parts],
    input.mark,
    input.id,
  );
  const supports = parts.filter((p) => p.role === 'support');
  const cloths = parts.filter((p) => p.role === 'curtain panel');
  const { stretches } = panels.value;
  let hanging = 0;
  const marked = stretches.map((s) => {
    const own = cloths.slice(hanging, hanging + s.widths.length);
    hanging += s.widths.length;
    return { ...s, panels: own.map((p) => ({ mark: p.mark!, width: p.width! })) };
  });
  return ok({
    parts,
    joints: laid.value.joints,
    blocked: laid.value.blocked,
    supports: hung.value.places.map((at, i) => ({ part: supports[i]!.id, at })),
    supportItem: support.value.id,
    supportSpacing: track.supportSpacing[input.hung],
    stretches: marked,
    drop,
    curtainTop: top,
    mass: sumOfMass(parts),
    massPerLength: track.massPerLength + sumOfMass(stretches) / path.length,
    stackBack: Math.max(...stretches.map((s) => s.stackBack)),
  });

  function curtainHeight(asked: CurtainLineInput): Outcome<{ readonly drop: number; readonly top: number }> {
    const found = curtainDrop({
      underside: trackHeight,
      runnerDrop: track.runnerDrop,
      hemGap,
      floorFall: asked.floorFall,
    });
    if (!found.ok) return refuse(found.problems.map((p) => ({ ...p, path: [...problemPath, 'trackHeight'] })));
    const longest = Math.max(...cloth.drops);
    if (found.value.drop > longest + 1e-6)
      return refuse([
        problem(
          'compose/curtain-too-long',
          [...problemPath, 'trackHeight'],
          `The curtain needs to be ${millimetreText(found.value.drop)} high; ${cloth.name} comes in at most ${millimetreText(longest)}.`,
          'Lower the track, or choose a cloth that comes higher.',
        ),
      ]);
    return ok({ drop: found.value.drop, top: trackHeight - track.runnerDrop });
  }
}
