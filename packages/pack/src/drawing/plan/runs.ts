import { add2, type Design, type DesignRun, scale2, sub2, type Vec2 } from '@cloche/engine';
import { fine, narrow, secondInk, symbol } from '../inks.js';
import { besideLeg, type LabelPlace, type LabelSpace } from '../labels.js';
import { circle, line, polyline } from '../marks.js';
import type { Mark } from '../types.js';
import { curtainWave, pathLength, stretchOf } from './curtain-wave.js';
import { readable } from './tables.js';
import type { PlanView } from './view.js';

/** Wave length of the drawn curtain on paper [mm]. */
export const wavePitch = 3.2;

const closedLine = (run: DesignRun): readonly Vec2[] => {
  const [first, last] = [run.line[0]!, run.line[run.line.length - 1]!];
  const open = Math.hypot(first[0] - last[0], first[1] - last[1]) > 1e-6;
  return run.closed && open ? [...run.line, first] : run.line;
};

/** The line on which stretches are measured: twice round a closed run, because a stretch may pass the start. */
const unrolled = (run: DesignRun): readonly Vec2[] => {
  const path = closedLine(run);
  return run.closed ? [...path, ...path.slice(1)] : path;
};

/** Track as a fine line with a tick at each support, the curtain as a wave along it, joints as dots. */
export function runMarks(design: Design, view: PlanView): Mark[] {
  return design.runs.flatMap((run) => {
    const path = closedLine(run);
    const onPaper = path.map(view.to);
    const waves = run.stretches.map((stretch) =>
      polyline(
        curtainWave(stretchOf(unrolled(run), stretch.from, stretch.to).map(view.to), stretch.fullness, wavePitch),
        symbol,
      ),
    );
    const joints = run.joints.flatMap((at) =>
      stretchOf(path, at, at).map((p) => circle(view.to(p), 0.7, undefined, '#1C2126')),
    );
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

/** Name of the run beside its longest leg, in full or alone. */
export function runLabels(design: Design, view: PlanView, space: LabelSpace): Mark[] {
  return design.runs.flatMap((run) => {
    const path = closedLine(run);
    const legs = path.slice(1).map((to, i) => ({ from: view.to(path[i]!), to: view.to(to) }));
    const longest = [...legs].sort((a, b) => legLength(b) - legLength(a))[0];
    if (!longest) return [];
    const words = `${run.name}, track at ${Math.round(run.trackHeight * 1000)}, hem gap ${Math.round(run.hemGap * 1000)}`;
    const turn = turnOf(longest);
    const shares = [0.5, 0.35, 0.65, 0.2, 0.8];
    const places = [3, 6.5, 10].flatMap((off) => besideLeg(longest.from, longest.to, turn, 2.5, off, shares));
    const on = (share: number) => add2(longest.from, scale2(sub2(longest.to, longest.from), share));
    return space.place({ words, height: 2.5, places, leaderTo: [on(0.4), on(0.6)] });
  });
}

/** Panel marks along each stretch. */
export const runPanelLabels = (design: Design, view: PlanView, space: LabelSpace): Mark[] =>
  design.runs.flatMap((run) => run.stretches.flatMap((s) => panelLabels(run, unrolled(run), s, view, space)));

type Leg = { readonly from: Vec2; readonly to: Vec2 };
const legLength = ({ from, to }: Leg) => Math.hypot(to[0] - from[0], to[1] - from[1]);
const turnOf = ({ from, to }: Leg) => readable(Math.atan2(-(to[1] - from[1]), to[0] - from[0]));

function panelLabels(
  run: DesignRun,
  path: readonly Vec2[],
  stretch: DesignRun['stretches'][number],
  view: PlanView,
  space: LabelSpace,
): Mark[] {
  const prefix = `${run.id.toUpperCase()}-`;
  const share = (stretch.to - stretch.from) / Math.max(1, stretch.panels.length);
  return stretch.panels.flatMap((panel, i) => {
    const from = stretch.from + i * share;
    const places = [0.5, 0.3, 0.7].flatMap((middle): LabelPlace[] => {
      const points = stretchOf(path, from + share * (middle - 0.05), from + share * (middle + 0.05)).map(view.to);
      if (points.length < 2 || pathLength(points) === 0) return [];
      const leg = { from: points[0]!, to: points[points.length - 1]! };
      return besideLeg(leg.from, leg.to, turnOf(leg), 2.5, 2, [0.5]).reverse();
    });
    const words = panel.mark.startsWith(prefix) ? panel.mark.slice(prefix.length) : panel.mark;
    return space.place({ words, height: 2.5, style: { colour: secondInk }, places });
  });
}
