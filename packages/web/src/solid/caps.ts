import { at3 } from '@cloche/engine';
import type { Design, Vec2, Vec3 } from '../engine/contract.js';
import { cornersOf, reachAlong, type SolidBox } from './boxes.js';
import { type Stretch, waveOf } from './geometry.js';
import { hatchLines, narrowest } from './hatch.js';
import type { Piece } from './pieces.js';
import { type Cut, inPlane, keptFace, keptStretch, outOfPlane, sectionOf } from './section.js';
import type { WallBlock } from './walls.js';

/** What the cuts show: faces to fill, their hatching and the strong line round them. */
export interface Caps {
  /** Wide faces, filled with paper under their hatching. */
  readonly wide: readonly (readonly Vec3[])[];
  /** Faces too narrow for hatching, filled with ink. */
  readonly narrow: readonly (readonly Vec3[])[];
  readonly hatching: readonly Stretch[];
  readonly lines: readonly Stretch[];
}

/** Faces narrower than this are filled with ink [m]. Source: ISO 128-50, narrow areas (from memory). */
const narrowFace = 0.1;
/** Distance of hatching lines of the building, and of what is put into it [m]. */
const wallHatch = 0.06;
const bodyHatch = 0.09;

interface Body {
  readonly corners: readonly Vec3[];
  readonly building: boolean;
}

const closed = (face: readonly Vec3[]): readonly Stretch[] => face.map((a, i) => [a, face[(i + 1) % face.length]!]);

function hatching(face: readonly Vec3[], { axis, at }: Cut, building: boolean): readonly Stretch[] {
  const flat = face.map((p) => inPlane(axis, p));
  return hatchLines(flat, building ? wallHatch : bodyHatch, building).map(([a, b]) => [
    outOfPlane(axis, at, a),
    outOfPlane(axis, at, b),
  ]);
}

/** Where an upright band of a line in the plan is cut. */
function bandStretches(line: readonly Vec2[], bottom: number, top: number, { axis, at }: Cut): readonly Stretch[] {
  return line.slice(1).flatMap((b, i): Stretch[] => {
    const a = line[i]!;
    if (axis === 2) return bottom < at && at < top ? [[at3(a, at), at3(b, at)]] : [];
    if (a[axis] < at === b[axis] < at) return [];
    const t = (at - a[axis]) / (b[axis] - a[axis]);
    const on: Vec2 = [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
    return [[at3(on, bottom), at3(on, top)]];
  });
}

/** The line of a floor or a ceiling in an upright cut: from wall to wall, also of a room with corners inward. */
function levelStretches(outline: readonly Vec2[], z: number, { axis, at }: Cut): readonly Stretch[] {
  if (axis === 2) return [];
  const other = axis === 0 ? 1 : 0;
  const crossings = outline
    .flatMap((a, i) => {
      const b = outline[(i + 1) % outline.length]!;
      if (a[axis] < at === b[axis] < at) return [];
      return [a[other] + ((b[other] - a[other]) * (at - a[axis])) / (b[axis] - a[axis])];
    })
    .sort((x, y) => x - y);
  const point = (s: number): Vec3 => (axis === 0 ? [at, s, z] : [s, at, z]);
  return crossings.flatMap((s, i): Stretch[] => (i % 2 === 0 ? [[point(s), point(crossings[i + 1]!)]] : []));
}

const meetsPlane = (box: SolidBox, { axis, at }: Cut): boolean => {
  const [low, high] = reachAlong(box, axis);
  return low - 1e-6 <= at && at <= high + 1e-6;
};

interface CutSpace {
  readonly room: Design['room'];
  readonly walls: readonly WallBlock[];
  readonly pieces: readonly Piece[];
  readonly ceiling: boolean;
}

/** What every cut shows of walls, floor, bodies, plates and cloth, each cut shortened by the other. */
export function capsOf({ room, walls, pieces, ceiling }: CutSpace, cuts: readonly Cut[]): Caps {
  const boxes = pieces.flatMap((p) => (p.kind === 'body' || p.kind === 'plate' ? p.boxes : []));
  const wide: (readonly Vec3[])[] = [];
  const narrow: (readonly Vec3[])[] = [];
  const hatched: Stretch[] = [];
  const lines: Stretch[] = [];
  cuts.forEach((cut, i) => {
    const others = cuts.filter((_, j) => j !== i);
    const bodies: readonly Body[] = [
      ...walls.map(({ corners }) => ({ corners, building: true })),
      ...boxes.filter((box) => meetsPlane(box, cut)).map((box) => ({ corners: cornersOf(box), building: false })),
    ];
    for (const { corners, building } of bodies) {
      const face = others.reduce(keptFace, sectionOf(corners, cut.axis, cut.at));
      if (face.length < 3) continue;
      lines.push(...closed(face));
      if (!building && narrowest(face.map((p) => inPlane(cut.axis, p))) < narrowFace) narrow.push(face);
      else {
        wide.push(face);
        hatched.push(...hatching(face, cut, building));
      }
    }
    const bands = pieces.flatMap((piece) => {
      const { line, bottom, top } = waveOf(piece);
      return bandStretches(line, bottom, top, cut);
    });
    const levels = [0, ...(ceiling ? [room.height] : [])].flatMap((z) => levelStretches(room.outline, z, cut));
    for (const stretch of [...bands, ...levels]) {
      const kept = others.reduce<Stretch | null>((s, other) => (s ? keptStretch(s[0], s[1], other) : null), stretch);
      if (kept) lines.push(kept);
    }
  });
  return { wide, narrow, hatching: hatched, lines };
}
