import type { Design, Part, Vec2 } from '../engine/contract.js';
import { arcPath, linePath, partPath, ringPath } from '../plan/path-text.js';
import { counterClockwise, offsetRing, wallThickness } from '../plan/wall-band.js';

/** Lines of the picture by what they show, weights as in the plan. */
type Line = 'wall' | 'cut' | 'edge' | 'table' | 'fine' | 'hidden' | 'beam' | 'cloth' | 'open';

const weights: Readonly<Record<Line, string>> = {
  wall: 'fill:var(--wall);stroke:none;fill-rule:evenodd',
  cut: 'stroke-width:1.6',
  edge: 'stroke-width:1.1',
  table: 'fill:var(--body);stroke-width:1.1',
  fine: 'stroke-width:.6',
  hidden: 'stroke-width:.6;stroke-dasharray:4 3',
  beam: 'stroke:var(--accent);stroke-width:.9;stroke-dasharray:8 2 1 2',
  cloth: 'stroke-width:1.2',
  open: 'fill:var(--paper);stroke-width:.6',
};

/** Inks of the sheet in light and dark; a picture has no page to take them from. */
const inks =
  ':root{--paper:#fbfaf6;--ink:#1c2126;--wall:#bcc0b9;--body:#fff;--accent:#0b5f66}' +
  '@media(prefers-color-scheme:dark){:root{--paper:#15181b;--ink:#e9e6df;--wall:#555c63;--body:#1b1f23;--accent:#63c3c9}}' +
  'path{fill:none;stroke:var(--ink);vector-effect:non-scaling-stroke;stroke-linejoin:round}';

/** Space round the walls [m]. */
const margin = 0.12;
/** Longest picture that the list takes, with room to spare [characters]. */
const longest = 280_000;

/**
 * The plan as a small picture for the list of projects: the plan's own lines as one SVG text that needs nothing else. A plan whose
 * lines would be too long for the list is drawn without its parts.
 */
export function pictureOfDesign(design: Design): string {
  const whole = svg(design, true);
  return whole.length <= longest ? whole : svg(design, false);
}

function svg(design: Design, withParts: boolean): string {
  const outer = offsetRing(counterClockwise(design.room.outline), wallThickness);
  const shown = [...outer, ...design.room.doors.flatMap(({ leaves }) => leaves.map(leafEnd))];
  const [xs, ys] = [shown.map(([x]) => x), shown.map(([, y]) => y)];
  const [left, top] = [Math.min(...xs) - margin, Math.max(...ys) + margin];
  const [width, height] = [Math.max(...xs) + margin - left, top - Math.min(...ys) + margin];
  const box = [left, -top, width, height].map((n) => n.toFixed(3)).join(' ');
  const paths = [...roomPaths(design, outer), ...tablePaths(design), ...(withParts ? madePaths(design) : [])]
    .filter(([, d]) => d !== '')
    .map(([line, d]) => `<path class="${line}" d="${d}"/>`);
  const style = Object.entries(weights).map(([line, css]) => `.${line}{${css}}`);
  return (
    `<svg xmlns="http://www.w3.org/2000/svg" viewBox="${box}"><style>${inks}${style.join('')}</style>` +
    `<g transform="scale(1 -1)">${paths.join('')}</g></svg>`
  );
}

type Drawn = readonly [Line, string];

function roomPaths({ room }: Design, outer: readonly Vec2[]): readonly Drawn[] {
  const inner = counterClockwise(room.outline);
  const openings = [...room.windows, ...room.doors].map(({ from, to, inward }) =>
    ringPath([from, to, out(to, inward), out(from, inward)]),
  );
  const swings = room.doors.flatMap(({ leaves }) =>
    leaves.map(
      (leaf) => arcPath(leaf.hinge, leaf.leaf, leaf.closed, leaf.open) + linePath([leaf.hinge, leafEnd(leaf)]),
    ),
  );
  return [
    ['wall', ringPath(inner) + ringPath(outer)],
    ['cut', ringPath(inner)],
    ['fine', ringPath(outer)],
    ['open', openings.join('')],
    ['fine', swings.join('')],
    ['edge', room.columns.map(({ outline }) => ringPath(outline)).join('')],
    ['fine', room.obstructions.map(({ outline }) => ringPath(outline)).join('')],
  ];
}

type Leaf = Design['room']['doors'][number]['leaves'][number];

/** Where the edge of an open door leaf is. */
const leafEnd = ({ hinge, leaf, open }: Leaf): Vec2 => [
  hinge[0] + leaf * Math.cos(open),
  hinge[1] + leaf * Math.sin(open),
];

/** A point of the wall's inside, carried to its outside. */
const out = ([x, y]: Vec2, inward: Vec2): Vec2 => [x - inward[0] * wallThickness, y - inward[1] * wallThickness];

function tablePaths({ equipment, tables, lasers }: Design): readonly Drawn[] {
  const flat = ([x, y]: readonly [number, number, number]): Vec2 => [x, y];
  return [
    ['fine', equipment.map(({ outline }) => ringPath(outline)).join('')],
    ['table', tables.map(({ outline }) => ringPath(outline)).join('')],
    ['beam', lasers.flatMap(({ legs }) => legs.map((leg) => linePath([flat(leg.from), flat(leg.to)]))).join('')],
  ];
}

/** Line of a part, as in the plan: posts and panels strong, what hangs above dashed. */
const lineOf: Readonly<Partial<Record<Part['role'], Line>>> = {
  post: 'edge',
  'side panel': 'edge',
  'strip panel': 'edge',
  'curtain panel': 'cloth',
  'fan filter unit': 'hidden',
};

function madePaths({ parts, enclosures }: Design): readonly Drawn[] {
  const drawn = new Map<Line, string>();
  for (const { role, shape } of parts) {
    const line = lineOf[role];
    if (line) drawn.set(line, (drawn.get(line) ?? '') + partPath(shape));
  }
  return [['fine', enclosures.map(({ outline }) => ringPath(outline)).join('')], ...drawn];
}
