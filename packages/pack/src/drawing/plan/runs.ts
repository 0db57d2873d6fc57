import type { Design, DesignRun, Vec2 } from '@cloche/engine';
import { fine, narrow, secondInk, symbol } from '../inks.js';
import { circle, clearedText, line, polyline } from '../marks.js';
import type { Mark } from '../types.js';
import { curtainWave, pathLength, stretchOf } from './curtain-wave.js';
import { readable } from './tables.js';
import type { PlanView } from './view.js';

/** Wave length of the drawn curtain on paper [mm]. */
const wavePitch = 3.2;

const closedLine = (run: DesignRun): readonly Vec2[] => {
  const [first, last] = [run.line[0]!, run.line[run.line.length - 1]!];
  const open = Math.hypot(first[0] - last[0], first[1] - last[1]) > 1e-6;
  return run.closed && open ? [...run.line, first] : run.line;
};

/** Track as a fine line with a tick at each support, the curtain as a wave along it, joints as dots. */
export function runMarks(design: Design, view: PlanView): Mark[] {
  return design.runs.flatMap((run) => {
    const path = closedLine(run);
    const onPaper = path.map(view.to);
    const waves = run.stretches.map((stretch) =>
      polyline(curtainWave(stretchOf(path, stretch.from, stretch.to).map(view.to), stretch.fullness, wavePitch), symbol),
    );
    const joints = run.joints.flatMap((at) => stretchOf(path, at, at).map((p) => circle(view.to(p), 0.7, undefined, '#1C2126')));
    return [polyline(onPaper, fine), ...waves, ...run.supports.map((s) => supportTick(path, s.at, view)), ...joints];
  });
}

function supportTick(path: readonly Vec2[], at: number, view: PlanView): Mark {
  const eps = 1e-3;
  const [a, b] = stretchOf(path, Math.max(0, at - eps), at + eps).map(view.to) as [Vec2, Vec2 | undefined];
  const [p, q] = [a, b ?? [a[0] + 1, a[1]]];
  const size = Math.hypot(q[0] - p[0], q[1] - p[1]) || 1;
  const n: Vec2 = [-(q[1] - p[1]) / size, (q[0] - p[0]) / size];
  return line([p[0] - n[0] * 1.8, p[1] - n[1] * 1.8], [p[0] + n[0] * 1.8, p[1] + n[1] * 1.8], narrow);
}

/** Name of the run beside its longest leg, panel marks along each stretch. */
export function runLabels(design: Design, view: PlanView): Mark[] {
  return design.runs.flatMap((run) => {
    const path = closedLine(run);
    const legs = path.slice(1).map((to, i) => ({ from: view.to(path[i]!), to: view.to(to) }));
    const longest = legs.reduce((best, leg) => (legLength(leg) > legLength(best) ? leg : best), legs[0]!);
    const words = `${run.name}, track at ${Math.round(run.trackHeight * 1000)}, hem gap ${Math.round(run.hemGap * 1000)}`;
    return [...besideLeg(longest, words, 4, 0.5, 2.5), ...run.stretches.flatMap((s) => panelLabels(path, s, view))];
  });
}

type Leg = { readonly from: Vec2; readonly to: Vec2 };
const legLength = ({ from, to }: Leg) => Math.hypot(to[0] - from[0], to[1] - from[1]);

function panelLabels(path: readonly Vec2[], stretch: DesignRun['stretches'][number], view: PlanView): Mark[] {
  const share = (stretch.to - stretch.from) / Math.max(1, stretch.panels.length);
  return stretch.panels.flatMap((panel, i) => {
    const from = stretch.from + i * share;
    const points = stretchOf(path, from + share * 0.45, from + share * 0.55).map(view.to);
    if (points.length < 2 || pathLength(points) === 0) return [];
    return besideLeg({ from: points[0]!, to: points[points.length - 1]! }, panel.mark, -2.2, 0.5, 2.5);
  });
}

/** Text beside a leg: positive `off` is above the reading line. */
function besideLeg(leg: Leg, words: string, off: number, share: number, height: number): Mark[] {
  const turn = readable(Math.atan2(-(leg.to[1] - leg.from[1]), leg.to[0] - leg.from[0]));
  const x = leg.from[0] + (leg.to[0] - leg.from[0]) * share;
  const y = leg.from[1] + (leg.to[1] - leg.from[1]) * share;
  const down = off > 0 ? -off + 1 : -off + height;
  return clearedText([x + Math.sin(turn) * down, y + Math.cos(turn) * down], words, height, {
    anchor: 'middle',
    turn,
    colour: off > 0 ? '#1C2126' : secondInk,
  });
}
