/** A rectangle in the enclosure's own axes. */
export interface Rect {
  readonly u0: number;
  readonly u1: number;
  readonly v0: number;
  readonly v1: number;
}

export interface RoofLayout {
  /** Middle lines of the cross beams along u. */
  readonly beams: readonly number[];
  readonly units: readonly Rect[];
  /** What the units leave open. */
  readonly panels: readonly Rect[];
}

export interface RoofInput {
  /** Clear inside [m]. */
  readonly length: number;
  readonly width: number;
  /** Width of the profile across [m]. */
  readonly beamWidth: number;
  /** Size of a unit along u and v [m]; with `count` 0 it does not matter. */
  readonly unit: readonly [number, number];
  readonly count: number;
  /** Largest distance of cross beams under panels [m]. */
  readonly panelSpan: number;
}

/** A unit or panel must lie on a beam by at least this much [m] (common practice). */
const leastBearing = 0.01;
/** Largest distance of cross beams under roof panels [m] (common practice). */
export const panelSpan = 1.25;
/** Cuts and edges closer than this are one [m]. */
const nothing = 1e-9;

/**
 * How many units fit: columns along u, rows along v. Each column lies on two cross beams; outer edges may lie on the perimeter,
 * but not on a sliver of it.
 */
export function unitGrid({ length, width, beamWidth, unit }: Omit<RoofInput, 'count' | 'panelSpan'>): {
  readonly columns: number;
  readonly rows: number;
} {
  const most = Math.floor((length + beamWidth) / unit[0] + 1e-9);
  const beyond = most * unit[0] - length;
  const sliver = beyond > 1e-9 && beyond < 2 * leastBearing - 1e-9;
  return { columns: sliver ? most - 1 : most, rows: Math.floor((width + beamWidth) / unit[1] + 1e-9) };
}

/** Start of the block of columns: centred, or against one end where a centred block would end between beam and perimeter. */
function blockStart(total: number, length: number, beamWidth: number): number {
  const centred = -total / 2;
  const freeEnd = (length - total) / 2;
  const restsOnPerimeter = freeEnd <= -leastBearing + 1e-9;
  const roomForBeam = freeEnd >= beamWidth;
  return restsOnPerimeter || roomForBeam ? centred : -length / 2 - beamWidth / 2;
}

/** Units per column, the one short column in the middle. */
function columnCounts(count: number, rows: number): number[] {
  const columns = Math.ceil(count / rows);
  const counts = Array.from({ length: columns }, () => rows);
  const missing = columns * rows - count;
  if (missing > 0) counts[Math.floor((columns - 1) / 2)] = rows - missing;
  return counts;
}

/** Even cuts of a stretch so that no piece is longer than `most`; the inner cut points. */
const evenCuts = (from: number, to: number, most: number): number[] => {
  const pieces = Math.max(1, Math.ceil((to - from) / most - 1e-9));
  return Array.from({ length: pieces - 1 }, (_, i) => from + ((to - from) * (i + 1)) / pieces);
};

/**
 * Lays fan filter units and roof panels on cross beams: units in columns over the middle, cross beams under their edges and
 * under panels no further apart than a panel may span.
 */
export function layRoof(input: RoofInput): RoofLayout {
  const { length, width, beamWidth, unit, count, panelSpan: span } = input;
  const a = length / 2;
  const outerU = a + beamWidth / 2;
  const b = width / 2;
  const outerV = b + beamWidth / 2;
  const { rows } = count > 0 ? unitGrid(input) : { rows: 1 };
  const counts = count > 0 ? columnCounts(count, rows) : [];
  const total = counts.length * unit[0];
  const start = count > 0 ? blockStart(total, length, beamWidth) : 0;
  const inside = (u: number) => Math.abs(u) <= a - beamWidth / 2 + 1e-9;
  const edges = counts.length > 0 ? Array.from({ length: counts.length + 1 }, (_, i) => start + i * unit[0]) : [];
  const firstEdge = edges[0] ?? outerU;
  const lastEdge = edges.at(-1) ?? outerU;
  const ends: (readonly [number, number])[] =
    counts.length === 0
      ? [[-outerU, outerU]]
      : [
          [-outerU, firstEdge],
          [lastEdge, outerU],
        ];
  // A strip that lies wholly on the perimeter is closed by the beam itself.
  const strips = ends.filter(([from, to]) => Math.min(to, a) - Math.max(from, -a) > nothing);
  const cuts = strips.map(([from, to]) => ({ from, to, cuts: evenCuts(from, to, span) }));
  const beams = [...edges.filter(inside), ...cuts.flatMap((c) => c.cuts)].sort((x, y) => x - y);
  const units: Rect[] = [];
  const panels: Rect[] = cuts.flatMap(({ from, to, cuts: inner }) => {
    const lines = [from, ...inner, to];
    return lines.slice(1).map((u1, i) => ({ u0: lines[i]!, u1, v0: -outerV, v1: outerV }));
  });
  counts.forEach((n, i) => {
    const u0 = edges[i]!;
    const u1 = edges[i + 1]!;
    const half = (n * unit[1]) / 2;
    for (let r = 0; r < n; r++) units.push({ u0, u1, v0: -half + r * unit[1], v1: -half + (r + 1) * unit[1] });
    if (b - half > nothing) panels.push({ u0, u1, v0: -outerV, v1: -half }, { u0, u1, v0: half, v1: outerV });
  });
  return { beams, units, panels };
}
