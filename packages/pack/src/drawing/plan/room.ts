import {
  add2,
  bounds,
  counterClockwise,
  cross2,
  type Design,
  type DesignDoor,
  edges,
  type Ring,
  type Solid,
  scale2,
  sub2,
  unit2,
  type Vec2,
  type WallOpening,
} from '@cloche/engine';
import { extraWide, fine, hairline, hidden, ink, lineWidth, narrow, secondInk, symbol, wide } from '../inks.js';
import type { Label, LabelPlace, LabelSpace } from '../labels.js';
import { arrowHead, box, circle, line, pointText, ring, text, textWidth } from '../marks.js';
import type { Mark, PaperPoint } from '../types.js';
import type { PlanView } from './view.js';

/** Thickness that a wall is drawn with on paper [mm]: the survey knows its inside face only. */
const wallOnPaper = 4;
/** Distance of hatch lines on paper [mm]; above the 0.7 mm that ISO 128-2 asks between parallel lines. */
const hatchStep = 1.6;

/** The ring moved outward by `distance`, corners mitred. */
export function outset(outline: Ring, distance: number): Ring {
  const ccw = counterClockwise(outline);
  const sides = edges(ccw).map(({ from, to }) => {
    const u = unit2(sub2(to, from));
    const out: Vec2 = [u[1], -u[0]];
    return { at: add2(from, scale2(out, distance)), u };
  });
  return sides.map((side, i) => {
    const before = sides[(i + sides.length - 1) % sides.length]!;
    const turn = cross2(before.u, side.u);
    if (Math.abs(turn) < 1e-9) return side.at;
    const t = cross2(sub2(side.at, before.at), side.u) / turn;
    return add2(before.at, scale2(before.u, t));
  });
}

/** Pieces of 45 degree lines inside the band between two rings, by the even-odd rule along each line. */
export function hatchBand(outer: readonly PaperPoint[], inner: readonly PaperPoint[], step: number): Mark[] {
  const sides = [outer, inner].flatMap((points) =>
    points.map((from, i) => ({ from, to: points[(i + 1) % points.length]! })),
  );
  const sums = outer.map((p) => p[0] + p[1]);
  const marks: Mark[] = [];
  const pitch = step * Math.SQRT2;
  for (let sum = Math.min(...sums) + pitch / 2; sum < Math.max(...sums); sum += pitch) {
    const cuts = sides.flatMap(({ from, to }) => {
      const a = from[0] + from[1] - sum;
      const b = to[0] + to[1] - sum;
      if (a > 0 === b > 0) return [];
      return [from[0] + ((to[0] - from[0]) * a) / (a - b)];
    });
    cuts.sort((p, q) => p - q);
    for (let i = 0; i + 1 < cuts.length; i += 2)
      marks.push(
        line([cuts[i]!, sum - cuts[i]!], [cuts[i + 1]!, sum - cuts[i + 1]!], { width: 0.18, colour: secondInk }),
      );
  }
  return marks;
}

/** Clears the stretch of wall that an opening takes, and closes its ends. */
function gap(opening: WallOpening, view: PlanView): Mark[] {
  const depth = scale2(opening.inward, (-wallOnPaper * view.scale) / 1000);
  const [a, b] = [opening.from, opening.to].map(view.to) as [PaperPoint, PaperPoint];
  const [c, d] = [add2(opening.from, depth), add2(opening.to, depth)].map(view.to) as [PaperPoint, PaperPoint];
  return [
    ring([a, b, d, c], { width: lineWidth.extraWide + 0.2, colour: '#FFFFFF' }, '#FFFFFF'),
    line(a, c, wide),
    line(b, d, wide),
  ];
}

const direction = (angle: number, length: number): Vec2 => [Math.cos(angle) * length, Math.sin(angle) * length];

/** Leaf as a wide line at its open position, its swing as a narrow quarter circle. */
function leafMarks(leaf: DesignDoor['leaves'][number], view: PlanView): Mark[] {
  const open = view.to(add2(leaf.hinge, direction(leaf.open, leaf.leaf)));
  const closed = view.to(add2(leaf.hinge, direction(leaf.closed, leaf.leaf)));
  const radius = view.mm(leaf.leaf).toFixed(3);
  const turn = Math.atan2(Math.sin(leaf.open - leaf.closed), Math.cos(leaf.open - leaf.closed));
  // y grows downward on paper, so a counter-clockwise swing sweeps the other way there.
  const sweep = turn > 0 ? 0 : 1;
  return [
    line(view.to(leaf.hinge), open, wide),
    { mark: 'path', d: `M${pointText(closed)} A${radius} ${radius} 0 0 ${sweep} ${pointText(open)}`, pen: narrow },
  ];
}

function slidingMarks(door: DesignDoor, view: PlanView): Mark[] {
  const off = scale2(door.inward, (1.4 * view.scale) / 1000);
  const [a, b] = [add2(door.from, off), add2(door.to, off)].map(view.to) as [PaperPoint, PaperPoint];
  return [line(a, b, wide), arrowHead(a, [a[0] - b[0], a[1] - b[1]], 2.4)];
}

/** Places for the name of an opening: outside the wall, further out past a swinging leaf, inside; read from the bottom or the right. */
function openingLabel(opening: WallOpening, words: string, view: PlanView): Label {
  const middle = scale2(add2(opening.from, opening.to), 0.5);
  const upright = Math.abs(opening.inward[0]) > Math.abs(opening.inward[1]);
  const at = (out: number): LabelPlace => {
    const [x, y] = view.to(add2(middle, scale2(opening.inward, (-out * view.scale) / 1000)));
    if (upright) return { at: [x + 1.25, y], anchor: 'middle', turn: Math.PI / 2 };
    return { at: [x, y + 1.25], anchor: 'middle' };
  };
  const places = [at(wallOnPaper + 3), at(wallOnPaper + 6.5), at(-8), at(-14)];
  return { words, height: 2.5, places, leaderTo: [view.to(middle)] };
}

const openingWords = (opening: WallOpening, exit = false): string =>
  `${opening.name} ${Math.round(opening.width * 1000)}${exit ? '  EXIT' : ''}`;

/** Where leaves stand and swing, as ground that labels keep off. */
function takeLeaves(door: DesignDoor, view: PlanView, space: LabelSpace): void {
  for (const leaf of door.leaves) {
    const tips = [leaf.open, leaf.closed].map((angle) => view.to(add2(leaf.hinge, direction(angle, leaf.leaf))));
    const [[x1, y1], [x2, y2]] = tips as [PaperPoint, PaperPoint];
    const hinge = view.to(leaf.hinge);
    const [left, right] = [Math.min(x1, x2, hinge[0]), Math.max(x1, x2, hinge[0])];
    const [top, bottom] = [Math.min(y1, y2, hinge[1]), Math.max(y1, y2, hinge[1])];
    space.take([(left + right) / 2, (top + bottom) / 2], (right - left) / 2, (bottom - top) / 2);
  }
}

/** Names of openings, columns and what else stands in the room. */
export function roomLabels(design: Design, view: PlanView, space: LabelSpace): Mark[] {
  const { room } = design;
  for (const door of room.doors) takeLeaves(door, view, space);
  const labels = [
    ...room.doors.map((door) => openingLabel(door, openingWords(door, door.exit), view)),
    ...room.windows.map((window) => openingLabel(window, openingWords(window), view)),
    ...room.boards.map((board) => openingLabel(board, board.name, view)),
    ...[...room.columns, ...room.obstructions, ...design.equipment].map((solid) => solidLabel(solid, view)),
  ];
  return labels.flatMap((label) => space.place(label));
}

function doorMarks(door: DesignDoor, view: PlanView): Mark[] {
  const moving =
    door.swing === 'sliding' ? slidingMarks(door, view) : door.leaves.flatMap((leaf) => leafMarks(leaf, view));
  const exit: Mark[] = [];
  if (door.exit) {
    const middle = scale2(add2(door.from, door.to), 0.5);
    const reach = (distance: number) => view.to(add2(middle, scale2(door.inward, (distance * view.scale) / 1000)));
    const [from, to] = [reach(6), reach(-wallOnPaper - 0.5)];
    exit.push(line(from, to, symbol), arrowHead(to, [to[0] - from[0], to[1] - from[1]], 2.6));
  }
  return [...gap(door, view), ...moving, ...exit];
}

function windowMarks(window: WallOpening, view: PlanView): Mark[] {
  const at = (depth: number) => {
    const off = scale2(window.inward, (-depth * view.scale) / 1000);
    return [view.to(add2(window.from, off)), view.to(add2(window.to, off))] as const;
  };
  const panes = [0, wallOnPaper].map((depth) => line(...at(depth), narrow));
  const glass = [wallOnPaper * 0.4, wallOnPaper * 0.6].map((depth) => line(...at(depth), narrow));
  return [...gap(window, view), ...panes, ...glass];
}

/** The name in the middle of a thing, or beside it when it is too small to hold the words. */
function solidLabel(solid: Solid, view: PlanView): Label {
  const box = bounds(solid.outline.map(view.to));
  const [x, y] = [(box.min[0] + box.max[0]) / 2, (box.min[1] + box.max[1]) / 2 + 1.25];
  const fits = textWidth(solid.name, 2.5) + 1 <= box.max[0] - box.min[0];
  const right: LabelPlace = { at: [box.max[0] + 1.2, y] };
  const left: LabelPlace = { at: [box.min[0] - 1.2, y], anchor: 'end' };
  const roomMiddle = view.to(scale2(add2(view.room.min, view.room.max), 0.5))[0];
  // Toward the middle of the room first: the walls and dimensions stand the other way.
  const beside: LabelPlace[] = [
    ...(x > roomMiddle ? [left, right] : [right, left]),
    { at: [x, box.max[1] + 3.6], anchor: 'middle' },
    { at: [x, box.min[1] - 1.2], anchor: 'middle' },
  ];
  const middle: LabelPlace[] = [
    { at: [x, y], anchor: 'middle' },
    { at: [x + 1.25, y - 1.25], anchor: 'middle', turn: Math.PI / 2 },
  ];
  const tall = textWidth(solid.name, 2.5) + 1 <= box.max[1] - box.min[1];
  const places = fits ? middle : tall ? [middle[1]!, ...beside] : beside;
  return { words: solid.name, height: 2.5, style: { colour: secondInk }, places, leaderTo: [[x, y - 1.25]] };
}

/** Walls hatched, openings with their doors and windows, columns, and what else the survey found. */
export function roomMarks(design: Design, view: PlanView): Mark[] {
  const { room } = design;
  const inner = room.outline.map(view.to);
  const outer = outset(room.outline, (wallOnPaper * view.scale) / 1000).map(view.to);
  const boards = room.boards.flatMap((board) => {
    const off = scale2(board.inward, (1.6 * view.scale) / 1000);
    const corners = [board.from, board.to, add2(board.to, off), add2(board.from, off)].map(view.to);
    return [ring(corners, symbol, ink)];
  });
  return [
    ...hatchBand(outer, inner, hatchStep),
    ring(outer, wide),
    ring(inner, extraWide),
    ...room.windows.flatMap((window) => windowMarks(window, view)),
    ...room.doors.flatMap((door) => doorMarks(door, view)),
    ...boards,
    ...room.columns.map((column) => ring(column.outline.map(view.to), wide, hairline)),
    ...room.beams.map((beam) => ring(beam.outline.map(view.to), hidden)),
    ...[...room.obstructions, ...design.equipment].map((solid) => ring(solid.outline.map(view.to), narrow, '#FFFFFF')),
  ];
}

/** What hangs under the ceiling: sprinklers, detectors, exit signs, air terminals. */
export function ceilingMarks(design: Design, view: PlanView): Mark[] {
  const { room } = design;
  const cross = ([x, y]: PaperPoint, r: number): Mark[] => [
    line([x - r, y - r], [x + r, y + r], narrow),
    line([x - r, y + r], [x + r, y - r], narrow),
  ];
  const lettered = (at: Vec2, letter: string): Mark[] => {
    const [x, y] = view.to(at);
    return [circle([x, y], 2.2, narrow, '#FFFFFF'), text([x, y + 1.25], letter, 2.5, { anchor: 'middle' })];
  };
  return [
    ...room.sprinklers.flatMap((sprinkler) => {
      const at = view.to(sprinkler.at);
      return [circle(at, 1.5, narrow, '#FFFFFF'), ...cross(at, 1.06)];
    }),
    ...room.detectors.flatMap((detector) => lettered(detector.at, 'S')),
    ...room.exitSigns.flatMap((sign) => {
      const [x, y] = view.to(sign.at);
      return [
        box(x - 4.6, y - 2, 9.2, 4, narrow, '#FFFFFF'),
        text([x, y + 1.25], 'EXIT', 2.5, { anchor: 'middle', medium: true }),
      ];
    }),
    ...room.airTerminals.flatMap((terminal) => {
      const [x, y] = view.to(terminal.at);
      const [w, h] = [view.mm(terminal.size[0]) / 2, view.mm(terminal.size[1]) / 2];
      const diagonal = line([x - w, y + h], [x + w, y - h], fine);
      const both = terminal.kind === 'supply' ? [diagonal, line([x - w, y - h], [x + w, y + h], fine)] : [diagonal];
      return [box(x - w, y - h, 2 * w, 2 * h, hidden), ...both];
    }),
  ];
}
