import type { Catalogue, Fastener, Track, TrackSupport } from '../catalogue/schema.js';
import { evenSupports, type ForbiddenStretch, type SupportDemand, type SupportWindow } from '../curtain/index.js';
import type { Shape } from '../design/types.js';
import { at3 } from '../floor/geometry/vec.js';
import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { ruleNumber, type SiteRules } from '../rules/schema.js';
import { directionAt, pointAt, type TrackPath } from './curtain-path.js';
import type { PartDraft } from './draft.js';

export interface SupportInput {
  readonly of: string;
  readonly rulePrefix: string;
  readonly path: TrackPath;
  readonly track: Track;
  readonly trackHeight: number;
  readonly support: TrackSupport;
  /** Height of what carries the track; null when it is not known (a wall beside it). */
  readonly carrier: number | null;
  readonly joints: readonly number[];
  readonly forbidden: readonly ForbiddenStretch[];
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
  readonly problemPath: readonly (string | number)[];
}

/** A joint does not lie on a hanger itself: free on both sides of it [m] (handbook of layout, 3.3; the size is common practice). */
const jointClear = 0.02;

/** The two ends of a short track do not share one support, about which it would turn: each keeps to this share of the length (common practice). */
const endShare = 0.4;

/** Windows at ends, in-line joints, on both legs of every bend and sharp corner; and the joints that no hanger may sit on. */
function demandOf({ path, track, support, joints, forbidden, rules }: SupportInput, share: number): SupportDemand {
  const { length } = path;
  const spacing = track.supportSpacing[support.hung];
  const end = share * ruleNumber(rules, 'curtain.end-distance');
  const near = share * ruleNumber(rules, 'curtain.joint-distance');
  const bends = path.segments.flatMap((s) => (s.kind === 'bend' ? [{ from: s.start, to: s.start + s.length }] : []));
  const corners = [...bends, ...path.sharp.map((c) => ({ from: c.at, to: c.at }))];
  const windows: SupportWindow[] = path.closed
    ? []
    : [
        { from: 0, to: Math.min(end, endShare * length) },
        { from: length - Math.min(end, endShare * length), to: length },
      ];
  const atCorner = new Set<number>();
  let tightest = near;
  for (const corner of corners) {
    // The last corner of a closed track lies between its end and its start: both supports may be no farther apart than the spacing.
    const closing = path.closed && corner.to >= length - 1e-6;
    const reach = closing ? Math.max(0, Math.min(near, (spacing - (corner.to - corner.from)) / 2)) : near;
    const after = closing ? 0 : corner.to;
    tightest = Math.min(tightest, reach);
    windows.push(
      { from: Math.max(0, corner.from - reach), to: corner.from },
      { from: after, to: Math.min(length, after + reach) },
    );
    atCorner.add(corner.from).add(after);
  }
  const inline = joints.filter((j) => ![...atCorner].some((c) => Math.abs(c - j) < 1e-6));
  for (const j of inline) windows.push({ from: Math.max(0, j - near), to: Math.min(length, j + near) });
  const clear = Math.min(jointClear, tightest / 2);
  const onJoints = [...joints, ...(path.closed ? [length] : [])].map((j) => ({ from: j - clear, to: j + clear }));
  const asked = forbidden.flatMap((f) =>
    path.closed && f.to > length
      ? [
          { from: f.from, to: length + 1e-3 },
          { from: -1e-3, to: f.to - length },
        ]
      : [f],
  );
  return { length, spacing, windows, forbidden: [...asked, ...onJoints] };
}

export interface SupportParts {
  readonly parts: readonly PartDraft[];
  readonly places: readonly number[];
}

/** Shares of the end and joint distances that are tried first: closer to ends and joints at no more supports is better. */
const closerFirst = [0.5, 0.7, 0.85] as const;

function roomySupports(input: SupportInput): Outcome<readonly number[]> {
  const full = evenSupports(demandOf(input, 1));
  if (!full.ok) return full;
  for (const share of closerFirst) {
    const closer = evenSupports(demandOf(input, share));
    if (closer.ok && closer.value.length === full.value.length) return closer;
  }
  return full;
}

/** The fewest supports that keep spacing, ends, joints, bends and forbidden stretches, evened out, with their fasteners. */
export function supportParts(input: SupportInput): Outcome<SupportParts> {
  const places = roomySupports(input);
  if (!places.ok)
    return refuse(places.problems.map((p): Problem => ({ ...p, path: [...input.problemPath, 'noSupport'] })));
  const parts = places.value.flatMap((at) => [supportPart(input, at), ...fasteners(input, at)]);
  return ok({ parts, places: places.value });
}

function supportPart(input: SupportInput, at: number): PartDraft {
  const { support, of, rulePrefix, track } = input;
  const reach = reachOf(input);
  return {
    item: support.id,
    group: 'track supports',
    role: 'support',
    of,
    count: 1,
    mass: support.mass,
    shape: shapeOf(input, at),
    // A support that sits on its carrier spans nothing: it has its own size only.
    ...(reach === null || reach < 1e-6 ? {} : { length: reach }),
    placed: {
      rule: `${rulePrefix}.support`,
      because: `A support stands at most ${track.supportSpacing[support.hung]} m from the next, near every end and joint and on both legs of every bend.`,
    },
  };
}

/** Length that the rod or post has to span [m]; null when it is not known. */
const reachOf = ({ carrier, support, track, trackHeight }: SupportInput): number | null =>
  carrier === null ? null : reachFrom(carrier, support.hung, trackHeight, track);

/** Distance between the track and what carries it from above or below. Source: geometry. */
export const reachFrom = (carrier: number, hung: TrackSupport['hung'], trackHeight: number, track: Track): number =>
  hung === 'floor post' || hung === 'shelf' ? trackHeight - carrier : carrier - trackHeight - track.size[1];

function shapeOf(input: SupportInput, at: number): Shape {
  const { path, support, carrier, trackHeight, track } = input;
  const p = pointAt(path, at);
  const top = trackHeight + track.size[1];
  if (carrier !== null && Math.abs(reachOf(input)!) > 1e-6) {
    const [low, high] = carrier > trackHeight ? [top, carrier] : [carrier, trackHeight];
    const thick = Math.min(support.size[0], support.size[1], track.size[0]);
    return { shape: 'bar', from: at3(p, low), to: at3(p, high), width: thick, height: thick };
  }
  const height = Math.min(support.size[2], track.size[1]);
  return {
    shape: 'box',
    centre: at3(p, top + height / 2),
    length: support.size[1],
    width: support.size[1],
    height,
    turn: directionAt(path, at),
  };
}

const fasteners = (
  { support, catalogue, path, of, rulePrefix, carrier, trackHeight }: SupportInput,
  at: number,
): PartDraft[] =>
  support.needs.flatMap(({ item, count }): PartDraft[] => {
    const fastener = catalogue.byId.get(item) as Fastener | undefined;
    if (!fastener) return [];
    return [
      {
        item,
        group: 'fasteners',
        role: 'fastener',
        of,
        count,
        mass: count * fastener.mass,
        shape: { shape: 'loose', at: at3(pointAt(path, at), carrier ?? trackHeight) },
        placed: { rule: `${rulePrefix}.fastener`, because: `${support.name} is fixed with it.` },
      },
    ];
  });
