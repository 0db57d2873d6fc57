import { type Catalogue, type Design, dot2, type Part, type PartGroup, sub2, unit2, type Vec2 } from '@cloche/engine';

/** Equal pieces of a hanging. */
export interface HangingPiece {
  readonly mark: string;
  readonly name: string;
  readonly count: number;
  readonly length: number | null;
  readonly width: number | null;
  readonly note: string;
}

export interface HangingSupport {
  readonly mark: string;
  readonly name: string;
  /** Distances along the track from its start, ascending [m]. */
  readonly at: readonly number[];
}

/** Everything that hangs on one track, or the strips of one enclosure. */
export interface Hanging {
  readonly id: string;
  readonly name: string;
  /** Underside of the track above the floor [m]; null where the frame gives it. */
  readonly trackHeight: number | null;
  readonly hemGap: number;
  readonly panels: readonly HangingPiece[];
  readonly track: readonly HangingPiece[];
  /** Connectors, runners, end stops, hem weights. */
  readonly fittings: readonly HangingPiece[];
  readonly supports: readonly HangingSupport[];
  /** Where distances along the track begin, from the room's origin [m]. */
  readonly start: Vec2 | null;
}

const groups: readonly PartGroup[] = ['track', 'track supports', 'runners', 'curtains'];

/** The run of a part, or the side of its enclosure, which begins the ids of what hangs there. */
function hangingOf(part: Part, design: Design): string {
  const dot = part.id.lastIndexOf('.');
  return dot < 0 || design.runs.some((run) => run.id === part.of) ? part.of : part.id.slice(0, dot);
}

/** Curtain runs, and the curtained and strip sides of enclosures, in the order of the design's parts. */
export function hangings(design: Design, catalogue: Catalogue): Hanging[] {
  const byId = new Map<string, Part[]>();
  for (const part of design.parts.filter((p) => groups.includes(p.group))) {
    const id = hangingOf(part, design);
    byId.set(id, [...(byId.get(id) ?? []), part]);
  }
  return [...byId].flatMap(([id, parts]) => {
    const place = placeOf(design, id, parts);
    if (!place) return [];
    const pieces = (...roles: Part['role'][]) =>
      piecesOf(
        parts.filter((p) => roles.includes(p.role)),
        catalogue,
      );
    return [
      {
        id,
        ...place,
        panels: pieces('curtain panel', 'strip panel'),
        track: pieces('track', 'track curve'),
        fittings: pieces('connector', 'runner', 'end stop', 'hem weight'),
        supports: supportsOf(parts, place.along, catalogue),
      },
    ];
  });
}

interface Place {
  readonly name: string;
  readonly trackHeight: number | null;
  readonly hemGap: number;
  readonly start: Vec2 | null;
  /** Distance of a support along the track; null where it has none. */
  readonly along: (part: Part) => number | null;
}

function placeOf(design: Design, id: string, parts: readonly Part[]): Place | null {
  const run = design.runs.find((r) => r.id === id);
  if (run) {
    const at = new Map(run.supports.map((s) => [s.part, s.at]));
    const { name, trackHeight, hemGap } = run;
    return { name, trackHeight, hemGap, start: run.line[0] ?? null, along: (part) => at.get(part.id) ?? null };
  }
  const enclosure = design.enclosures.find((e) => e.id === parts[0]!.of);
  if (!enclosure) return null;
  const side = enclosure.sides.find((s) => id === `${enclosure.id}-${s.name}`);
  const name = side ? `${enclosure.name}, ${side.name} side` : `${enclosure.name}, strips`;
  const base = { name, trackHeight: null, hemGap: enclosure.hemGap };
  if (!side) return { ...base, start: null, along: () => null };
  const u = unit2(sub2(side.to, side.from));
  const along = ({ shape }: Part) =>
    shape.shape === 'box' ? dot2(sub2([shape.centre[0], shape.centre[1]], side.from), u) : null;
  return { ...base, start: side.from, along };
}

const nameOf = (part: Part, catalogue: Catalogue): string => catalogue.byId.get(part.item)?.name ?? part.item;

function piecesOf(parts: readonly Part[], catalogue: Catalogue): HangingPiece[] {
  const pieces = new Map<string, HangingPiece>();
  for (const part of parts) {
    const key = [part.item, part.mark ?? '', part.length?.toFixed(4), part.width?.toFixed(4)].join('|');
    const before = pieces.get(key);
    pieces.set(key, {
      mark: part.mark ?? '',
      name: nameOf(part, catalogue),
      count: (before?.count ?? 0) + part.count,
      length: part.length ?? null,
      width: part.width ?? null,
      note: part.note ?? '',
    });
  }
  return [...pieces.values()];
}

function supportsOf(parts: readonly Part[], along: Place['along'], catalogue: Catalogue): HangingSupport[] {
  const supports = new Map<string, HangingSupport>();
  for (const part of parts.filter((p) => p.role === 'support')) {
    const key = `${part.item}|${part.mark ?? ''}`;
    const at = along(part);
    const before = supports.get(key)?.at ?? [];
    const all = at === null ? before : [...before, at].sort((a, b) => a - b);
    supports.set(key, { mark: part.mark ?? '', name: nameOf(part, catalogue), at: all });
  }
  return [...supports.values()];
}
