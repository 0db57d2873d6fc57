import { contains, numberText, rectangle } from '@cloche/engine';
import type { Design, DesignLaser, DesignTable, Vec2, Vec3 } from '../engine/contract.js';
import { boxOf } from './card-corner.js';
import type { Label, Segment, Spot, Written } from './place-labels.js';
import type { Box } from './view.js';

/** A point of the plan in pixels, at the scale of the sheet. */
export type ToSheet = (point: Vec2) => Vec2;

/** Letters in a ring: their radius with the line, pixels. */
const ring = 8;
const height = 15;
/** Widest letters of 13 pixels on the average; a label must never be wider than its box. */
export const widthOf = (text: string): number =>
  [...text].reduce((sum, c) => sum + (/[mwMWAÄ@%]/.test(c) ? 11 : 7.2), 4);

const flat = ([x, y]: Vec3): Vec2 => [x, y];
const named = (key: string, text: string, spots: readonly Spot[]): Label => ({
  key,
  text,
  width: widthOf(text),
  height,
  spots,
});

/** Everything that is written on the plan, what must be seen first. */
export function planLabels(design: Design, sheet: ToSheet): readonly Label[] {
  return [
    ...overheads(design).map(({ id, at, letter }) => letterLabel(id, letter, sheet(at))),
    ...design.tables.map((table) => tableLabel(table, design, sheet)),
    ...design.enclosures.map((e) => frameLabel(e.id, e.name, e.outline.map(sheet))),
    ...design.runs.map((run) => named(run.id, run.name, besideLine(run.line.map(sheet), widthOf(run.name), 16))),
    ...design.lasers.map((laser) => beamLabel(laser, design, sheet)),
  ];
}

/** Lines that writing should not cross. */
export function planLines(design: Design, sheet: ToSheet): readonly Segment[] {
  const closed = (points: readonly Vec2[]): Segment[] => points.map((p, i) => [p, points[(i + 1) % points.length]!]);
  const rings = [
    // Twice: writing over a wall is worse than over an edge.
    design.room.outline,
    design.room.outline,
    ...design.tables.flatMap((t) => [t.outline, ...t.equipment.map((e) => e.outline)]),
    ...design.equipment.map((e) => e.outline),
    ...design.enclosures.map((e) => e.outline),
    ...[...design.room.obstructions, ...design.room.columns].map((o) => o.outline),
    ...[...design.room.luminaires, ...design.room.airTerminals].map(({ at, size }) => rectangle(at, size[0], size[1])),
  ];
  return [
    ...rings.flatMap((points) => closed(points.map(sheet))),
    ...design.lasers.flatMap((l) => l.legs.map((leg): Segment => [sheet(flat(leg.from)), sheet(flat(leg.to))])),
    ...design.runs.flatMap((run) => run.line.slice(1).map((p, i): Segment => [sheet(run.line[i]!), sheet(p)])),
  ];
}

function letterLabel(key: string, text: string, at: Vec2): Label {
  const round = [1, 2].flatMap((far) =>
    [0, 180, 90, 270, 45, 135, 225, 315].map((degrees): Spot => {
      const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
      return { at: [at[0] + c * (2 * ring + 3) * far, at[1] + s * (2 * ring + 3) * far], leadsTo: at };
    }),
  );
  return { key, text, width: 2 * ring, height: 2 * ring, spots: [{ at }, ...round], kept: true };
}

function tableLabel({ id: key, name, outline, centre }: DesignTable, design: Design, sheet: ToSheet): Label {
  const box = boxOf(outline.map(sheet));
  const { min, max } = box;
  if (max[0] - min[0] <= widthOf(name)) return named(key, name, onSmallTable(key, name, box));
  const w = widthOf(name) / 2;
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  // A frame close round a table leaves no room for its name there.
  const framed = design.enclosures.some((e) => contains(e.outline, centre));
  const edges: Spot[] = [{ at: [x, max[1] + 10] }, { at: [x, min[1] - 10] }];
  const inside: Spot[] = [
    { at: [min[0] + w + 4, min[1] + 11] },
    { at: [max[0] - w - 4, max[1] - 11] },
    { at: [x, min[1] + 11] },
    { at: [x, max[1] - 11] },
  ];
  return named(key, name, [
    ...(framed ? [...inside, ...edges] : [...edges, ...inside]),
    { at: [max[0] + w + 6, y] },
    { at: [min[0] - w - 6, y] },
    { at: [x, max[1] + 26] },
    { at: [x, min[1] - 26] },
  ]);
}

/** Words in two lines, as even as their words allow. */
function inTwoLines(name: string): string {
  const breaks = [...name.matchAll(/ /g)].map((m) => m.index);
  const uneven = (at: number) => Math.abs(name.length - 2 * at);
  const best = breaks.sort((a, b) => uneven(a) - uneven(b))[0];
  return best === undefined ? name : `${name.slice(0, best)}\n${name.slice(best + 1)}`;
}

const lineHeight = 15;
function written(text: string): Written {
  const lines = text.split('\n');
  return { text, width: Math.max(...lines.map(widthOf)), height: height + (lines.length - 1) * lineHeight };
}

/** A name wider than its table: in two lines on it or beside it, in one line beside it, by its mark alone in the last place. */
function onSmallTable(key: string, name: string, { min, max }: Box): readonly Spot[] {
  const [x, y] = [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const round = (said: Written): Spot[] => {
    const [w, h] = [said.width / 2, said.height / 2];
    return [
      { at: [x, max[1] + h + 3], written: said },
      { at: [x, min[1] - h - 3], written: said },
      { at: [max[0] + w + 5, y], written: said },
      { at: [min[0] - w - 5, y], written: said },
    ];
  };
  const inside = (said: Written): Spot[] => {
    const [w, h] = [said.width / 2, said.height / 2];
    if (2 * w > max[0] - min[0] || 2 * h > max[1] - min[1]) return [];
    return [
      { at: [x, y], written: said },
      { at: [min[0] + w + 3, min[1] + h + 2], written: said },
      { at: [max[0] - w - 3, min[1] + h + 2], written: said },
      { at: [max[0] - w - 3, max[1] - h - 2], written: said },
    ];
  };
  /** Beyond a frame close round the table, with a thin line to its edge. */
  const beyond = (said: Written): Spot[] => {
    const far = said.height / 2 + 20;
    return [0, -0.35, 0.35].flatMap((aside): Spot[] => {
      const across = x + aside * (max[0] - min[0]);
      return [
        { at: [across, max[1] + far], written: said, leadsTo: [across, max[1]] },
        { at: [across, min[1] - far], written: said, leadsTo: [across, min[1]] },
      ];
    });
  };
  const [two, one, mark] = [written(inTwoLines(name)), written(name), written(key)];
  const ranked = (first: number, spots: readonly Spot[]) =>
    spots.map((spot, i): Spot => ({ ...spot, rank: first + i }));
  return [
    ...ranked(0, inside(two)),
    ...ranked(3, round(one)),
    ...ranked(5, beyond(one)),
    ...ranked(5, round(two)),
    ...ranked(9, inside(mark)),
    ...ranked(10, round(mark)),
  ];
}

function frameLabel(key: string, text: string, corners: readonly Vec2[]): Label {
  const { min, max } = boxOf(corners);
  const w = widthOf(text) / 2;
  return named(key, text, [
    { at: [min[0] + w, min[1] - 10] },
    { at: [max[0] - w, min[1] - 10] },
    { at: [min[0] + w, max[1] + 10] },
    { at: [max[0] - w, max[1] + 10] },
    { at: [min[0] - w - 6, min[1] + 8] },
    { at: [max[0] + w + 6, min[1] + 8] },
    { at: [min[0] + w, min[1] - 26] },
  ]);
}

/** Readable from below or from the right, never upside down. */
const upright = (angle: number): number => (angle > 90 || angle <= -90 ? angle + 180 : angle);

/** Spots along the legs of a line, the longest first, on both sides of it. */
function besideLine(line: readonly Vec2[], width: number, off: number): readonly Spot[] {
  const legs = line
    .slice(1)
    .map((to, i) => ({ from: line[i]!, to, length: Math.hypot(to[0] - line[i]![0], to[1] - line[i]![1]) }))
    .filter((leg) => leg.length > width * 0.6)
    .sort((a, b) => b.length - a.length)
    .slice(0, 4);
  return legs.flatMap(({ from, to, length }) => {
    const [dx, dy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    // The side that lies above the line on the screen, or left of an upright one.
    const side = dx < 0 || (dx === 0 && dy > 0) ? -1 : 1;
    const angle = upright((Math.atan2(dy, dx) * 180) / Math.PI);
    return [0.5, 0.3, 0.7].flatMap((t) =>
      [side, -side].map((s): Spot => {
        const [x, y] = [from[0] + dx * length * t, from[1] + dy * length * t];
        return { at: [x + dy * off * s, y - dx * off * s], angle };
      }),
    );
  });
}

/** The wavelength along the beam; where there is no room, beside the table with a thin line to the beam. */
function beamLabel(laser: DesignLaser, design: Design, sheet: ToSheet): Label {
  const text = `${numberText(laser.wavelength * 1e9)} nm`;
  const width = widthOf(text);
  const path = laser.path.map((p) => sheet(flat(p)));
  const legs = path.slice(1).map((to, i) => ({ from: path[i]!, to }));
  const longest = legs.reduce(
    (best, leg) =>
      Math.hypot(leg.to[0] - leg.from[0], leg.to[1] - leg.from[1]) >
      Math.hypot(best.to[0] - best.from[0], best.to[1] - best.from[1])
        ? leg
        : best,
    legs[0] ?? { from: path[0]!, to: path[0]! },
  );
  const leadsTo: Vec2 = [(longest.from[0] + longest.to[0]) / 2, (longest.from[1] + longest.to[1]) / 2];
  const table = design.tables.find((t) => t.id === laser.table);
  const { min, max } = boxOf(table ? table.outline.map(sheet) : path);
  const rows = [-24, -8, 8, 24, 40];
  const outside = [
    ...rows.map((dy): Vec2 => [max[0] + width / 2 + 22, leadsTo[1] + dy]),
    ...rows.map((dy): Vec2 => [min[0] - width / 2 - 22, leadsTo[1] + dy]),
    ...rows.map((dx): Vec2 => [leadsTo[0] + 3 * dx, max[1] + 30]),
    ...rows.map((dx): Vec2 => [leadsTo[0] + 3 * dx, min[1] - 30]),
  ];
  const far = (at: Vec2) => Math.hypot(at[0] - leadsTo[0], at[1] - leadsTo[1]);
  const aside = outside.sort((a, b) => far(a) - far(b)).map((at, i): Spot => ({ at, leadsTo, rank: 4 + i }));
  return named(laser.id, text, [...besideLine(path, width, 10), ...aside]);
}

/** Things at points: a letter in a ring, as the legend of the printed sheet has them. */
function overheads(design: Design): { readonly id: string; readonly at: Vec2; readonly letter: string }[] {
  const { room } = design;
  return [
    ...room.sprinklers.map(({ id, at }) => ({ id, at, letter: 'S' })),
    ...room.detectors.map(({ id, at }) => ({ id, at, letter: 'D' })),
    ...room.exitSigns.map(({ id, at }) => ({ id, at, letter: 'E' })),
    ...design.devices.map((device) => ({ id: device.id, at: flat(device.at), letter: deviceLetter[device.kind] })),
  ];
}

const deviceLetter = { sign: 'W', stop: 'X', interlock: 'I', sensor: 'P' } as const;
