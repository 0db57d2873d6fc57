import { bounds, type Design, type Part, type Ring, type Shape, type Vec2 } from '@cloche/engine';
import { hidden, narrow, secondInk, symbol, wide } from '../inks.js';
import type { Label, LabelPlace, LabelSpace } from '../labels.js';
import { line, polyline, ring } from '../marks.js';
import { shortMark } from '../short-mark.js';
import type { Mark } from '../types.js';
import { curtainWave } from './curtain-wave.js';
import { wavePitch } from './runs.js';
import { readable } from './tables.js';
import type { PlanView } from './view.js';

type Bar = Extract<Shape, { shape: 'bar' }>;

const isUpright = (bar: Bar) => Math.hypot(bar.to[0] - bar.from[0], bar.to[1] - bar.from[1]) < 1e-6;

/** Outline of a bar seen from above. */
export function barOutline(bar: Bar): Ring {
  const from: Vec2 = [bar.from[0], bar.from[1]];
  const to: Vec2 = [bar.to[0], bar.to[1]];
  if (isUpright(bar)) return uprightOutline(bar, from);
  const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
  const n: Vec2 = [(-(to[1] - from[1]) / length) * (bar.width / 2), ((to[0] - from[0]) / length) * (bar.width / 2)];
  return [
    [from[0] - n[0], from[1] - n[1]],
    [to[0] - n[0], to[1] - n[1]],
    [to[0] + n[0], to[1] + n[1]],
    [from[0] + n[0], from[1] + n[1]],
  ];
}

function uprightOutline(bar: Bar, at: Vec2): Ring {
  const [ux, uy] = bar.across ?? [1, 0];
  const [w, h] = [bar.width / 2, bar.height / 2];
  const corner = (a: number, b: number): Vec2 => [at[0] + ux * a - uy * b, at[1] + uy * a + ux * b];
  return [corner(-w, -h), corner(w, -h), corner(w, h), corner(-w, h)];
}

/** Bars that lie over each other in plan are drawn once, the topmost. */
function topmostBars(parts: readonly Part[]): { readonly part: Part; readonly bar: Bar }[] {
  const seen = new Map<string, { part: Part; bar: Bar }>();
  for (const part of parts) {
    if (part.shape.shape !== 'bar' || part.group !== 'profiles') continue;
    const bar = part.shape;
    const key = barOutline(bar)
      .map((p) => `${p[0].toFixed(3)},${p[1].toFixed(3)}`)
      .sort()
      .join(' ');
    const before = seen.get(key);
    const top = Math.max(bar.from[2], bar.to[2]);
    if (!before || top > Math.max(before.bar.from[2], before.bar.to[2])) seen.set(key, { part, bar });
  }
  return [...seen.values()];
}

/** Frame members; posts cut and filled, roof bars fine; fan filter units dashed with both diagonals. */
export function enclosureMarks(design: Design, view: PlanView): Mark[] {
  return design.enclosures.flatMap((enclosure) => {
    const parts = design.parts.filter((part) => part.of === enclosure.id);
    const bars = topmostBars(parts);
    const lying = bars.filter(({ bar }) => !isUpright(bar));
    const posts = bars.filter(({ bar }) => isUpright(bar));
    return [
      ...enclosure.unitAreas.flatMap((area) => unitMarks(area.map(view.to))),
      ...lying.map(({ part, bar }) => ring(barOutline(bar).map(view.to), narrow, undefined, part.mark)),
      ...enclosure.sides
        .filter((side) => side.closure === 'rigid panel' || side.closure === 'strip')
        .map((side) => line(view.to(side.from), view.to(side.to), side.closure === 'rigid panel' ? wide : symbol)),
      ...parts.flatMap((part) => curtainMarks(part, view)),
      ...posts.map(({ part, bar }) => ring(barOutline(bar).map(view.to), symbol, '#1C2126', part.mark)),
    ];
  });
}

/** A curtain panel of a side as a wave, as long as its cloth is wide. */
function curtainMarks({ role, shape }: Part, view: PlanView): Mark[] {
  if (role !== 'curtain panel' || shape.shape !== 'cloth') return [];
  return [polyline(curtainWave(shape.line.map(view.to), shape.fullness, wavePitch), symbol)];
}

function unitMarks(corners: readonly (readonly [number, number])[]): Mark[] {
  return [ring(corners, hidden), line(corners[0]!, corners[2]!, hidden), line(corners[1]!, corners[3]!, hidden)];
}

/** Name over the enclosure, piece marks at posts and roof bars. */
export function enclosureLabels(design: Design, view: PlanView, space: LabelSpace): Mark[] {
  return design.enclosures.flatMap((enclosure) => {
    const box = bounds(enclosure.outline.map((p) => view.to(p)));
    const size = `${Math.round(enclosure.length * 1000)} × ${Math.round(enclosure.width * 1000)}`;
    const words = `${size}, clear height ${Math.round(enclosure.clearHeight * 1000)}`;
    const x = box.min[0] + 1;
    const name: Label = {
      words: enclosure.name,
      height: 3.5,
      style: { medium: true },
      under: { words, colour: secondInk },
      places: [
        { at: [x, box.min[1] - 7] },
        { at: [x, box.max[1] + 6] },
        { at: [box.max[0] + 4, box.min[1] + 6] },
        { at: [box.min[0] - 4, box.min[1] + 6], anchor: 'end' },
      ],
    };
    const marks = topmostBars(design.parts.filter((part) => part.of === enclosure.id)).flatMap(({ part, bar }) => {
      const mark = shortMark(part);
      return mark ? space.place(markLabel(mark, bar, enclosure.centre, view)) : [];
    });
    return [...space.place(name), ...marks];
  });
}

function markLabel(mark: string, bar: Bar, centre: Vec2, view: PlanView): Label {
  const common = { words: mark, height: 2.5, style: { colour: secondInk } };
  const a = view.to([bar.from[0], bar.from[1]]);
  if (isUpright(bar)) {
    const middle = view.to(centre);
    const side = a[0] < middle[0] ? -1 : 1;
    const half = view.mm(bar.width) / 2 + 1.4;
    const anchor = side < 0 ? 'end' : 'start';
    const down = a[1] < middle[1] ? 4.4 : -1.9;
    const at = (dy: number): LabelPlace => ({ at: [a[0] + side * half, a[1] + dy], anchor });
    return { ...common, places: [at(down), at(1.25), at(2.5 - down)] };
  }
  const b = view.to([bar.to[0], bar.to[1]]);
  const turn = readable(Math.atan2(-(b[1] - a[1]), b[0] - a[0]));
  // On the bar; a third along it first: off the middle, where units and dimensions crowd.
  const on = (share: number): LabelPlace => ({
    at: [a[0] + (b[0] - a[0]) * share + Math.sin(turn) * 1.25, a[1] + (b[1] - a[1]) * share + Math.cos(turn) * 1.25],
    anchor: 'middle',
    turn,
  });
  return { ...common, places: [0.36, 0.64, 0.2, 0.8, 0.5].map(on) };
}
