import type { SideName } from '../brief/schema.js';
import type { Profile } from '../catalogue/schema.js';
import type { Part, Placed } from '../design/types.js';
import type { Vec3 } from '../floor/geometry/vec.js';
import { distance3 } from '../floor/geometry/vec.js';
import { type Axes, toRoom, toSpace } from './axes.js';
import type { PartDraft } from './draft.js';

/** A stretch of one side between two posts: where a closure goes. */
export interface Bay {
  readonly side: SideName;
  /** Along the side, in the own axes: from one post's face to the next. */
  readonly from: number;
  readonly to: number;
}

/** Everything that fixes the frame's members. */
export interface FrameInput {
  readonly of: string;
  readonly axes: Axes;
  readonly profile: Profile;
  readonly clearHeight: number;
  readonly footHeight: number;
  readonly hemGap: number;
  readonly postSpacing: number;
  readonly crossBeams: readonly number[];
  /** Sides with rigid panels. */
  readonly rigidSides: ReadonlyMap<SideName, PanelField>;
}

/** Largest clear opening that one rigid panel may close: between uprights, and between rails [m]. */
export interface PanelField {
  readonly width: number;
  readonly height: number;
}

/** The four sides in the own axes: along u at -v and +v, along v at +u and -u. */
export interface SideLine {
  readonly name: SideName;
  readonly alongU: boolean;
  /** +1 on the positive side of the other axis. */
  readonly sign: 1 | -1;
  readonly half: number;
}

export const sideLines = ({ sideAt, length, width }: Axes): readonly SideLine[] => [
  { name: sideAt[0], alongU: true, sign: -1, half: length / 2 },
  { name: sideAt[1], alongU: false, sign: 1, half: width / 2 },
  { name: sideAt[2], alongU: true, sign: 1, half: length / 2 },
  { name: sideAt[3], alongU: false, sign: -1, half: width / 2 },
];

const placed = (rule: string, because: string): Placed => ({ rule: `compose.enclosure.${rule}`, because });

/** Middle lines of the posts between the corners of a side, evenly spaced. */
export function innerPosts(half: number, spacing: number): number[] {
  const fields = Math.max(1, Math.ceil((2 * half) / spacing - 1e-9));
  return Array.from({ length: fields - 1 }, (_, i) => -half + (2 * half * (i + 1)) / fields);
}

const memberDraft = (
  input: FrameInput,
  role: Part['role'],
  from: Vec3,
  to: Vec3,
  size: { readonly width: number; readonly height: number },
  why: Placed,
  note?: string,
): PartDraft => {
  const length = distance3(from, to);
  const upright = Math.abs(to[2] - from[2]) > 1e-9;
  return {
    item: input.profile.id,
    group: 'profiles',
    role,
    of: input.of,
    shape: { shape: 'bar', from, to, ...size, ...(upright ? { across: input.axes.u } : {}) },
    count: 1,
    length,
    mass: length * input.profile.massPerLength,
    placed: why,
    ...(note === undefined ? {} : { note }),
  };
};

export interface FrameMembers {
  readonly parts: readonly PartDraft[];
  /** Middle of each post in the own axes. */
  readonly posts: readonly (readonly [number, number])[];
  readonly bays: readonly Bay[];
  /** Number of member ends that meet a post, or a beam: what the joints are counted from. */
  readonly cornerCount: number;
  readonly endsAtPosts: readonly Vec3[];
  readonly endsAtBeams: readonly Vec3[];
  readonly outside: { readonly length: number; readonly width: number };
}

/**
 * Posts, perimeter beams, cross beams, and for rigid sides bottom rails and mullions. Butt joints: posts run through, beams
 * stand between posts, cross beams between the long beams, so that no member cuts another.
 */
export function frameMembers(input: FrameInput): FrameMembers {
  const { axes, profile, clearHeight, footHeight, hemGap } = input;
  const [w, h] = profile.size;
  const a = axes.length / 2;
  const b = axes.width / 2;
  const top = clearHeight + h;
  const middle = clearHeight + h / 2;
  const postU = a + h / 2;
  const postV = b + w / 2;
  const postsAlongU = innerPosts(a, input.postSpacing);
  const postsAlongV = innerPosts(b, input.postSpacing);
  const corners: (readonly [number, number])[] = [
    [-postU, -postV],
    [postU, -postV],
    [postU, postV],
    [-postU, postV],
  ];
  const inner: (readonly [number, number])[] = [
    ...[-postV, postV].flatMap((v) => postsAlongU.map((u) => [u, v] as const)),
    ...[-postU, postU].flatMap((u) => postsAlongV.map((v) => [u, v] as const)),
  ];
  const post = (at: readonly [number, number], why: Placed) =>
    memberDraft(
      input,
      'post',
      toSpace(axes, at[0], at[1], footHeight),
      toSpace(axes, at[0], at[1], top),
      { width: h, height: w },
      why,
    );
  const parts: PartDraft[] = [
    ...corners.map((p) => post(p, placed('corner-post', 'A post stands at each corner of the frame.'))),
    ...inner.map((p) => post(p, placed('inner-post', 'Posts stand no further apart than the site rules allow.'))),
  ];
  const endsAtPosts: Vec3[] = [];
  const endsAtBeams: Vec3[] = [];
  const bays: Bay[] = [];
  for (const side of sideLines(axes)) {
    const mid = side.alongU ? postV : a + w / 2;
    const at = (s: number, z: number): Vec3 =>
      side.alongU ? toSpace(axes, s, side.sign * mid, z) : toSpace(axes, side.sign * mid, s, z);
    const half = side.alongU ? h / 2 : w / 2;
    const faces = [
      -side.half,
      ...(side.alongU ? postsAlongU : postsAlongV).flatMap((p) => [p - half, p + half]),
      side.half,
    ];
    for (let i = 0; i + 1 < faces.length; i += 2) {
      const from = faces[i]!;
      const to = faces[i + 1]!;
      bays.push({ side: side.name, from, to });
      parts.push(
        memberDraft(
          input,
          'beam',
          at(from, middle),
          at(to, middle),
          { width: w, height: h },
          placed('perimeter-beam', 'A beam closes the roof frame between each two posts.'),
        ),
      );
      endsAtPosts.push(at(from, middle), at(to, middle));
      const field = input.rigidSides.get(side.name);
      if (field === undefined) continue;
      const railZ = hemGap + h / 2;
      parts.push(
        memberDraft(
          input,
          'rail',
          at(from, railZ),
          at(to, railZ),
          { width: w, height: h },
          placed('bottom-rail', 'Rigid panels stand on a bottom rail.'),
        ),
      );
      endsAtPosts.push(at(from, railZ), at(to, railZ));
      const uprights = mullions(from, to, field.width);
      for (const s of uprights) {
        parts.push(
          memberDraft(
            input,
            'rail',
            at(s, hemGap + h),
            at(s, clearHeight),
            { width: side.alongU ? h : w, height: side.alongU ? w : h },
            placed('mullion', 'A mullion divides a bay that is wider than a panel may be.'),
          ),
        );
        endsAtBeams.push(at(s, hemGap + h), at(s, clearHeight));
      }
      for (const [low, high] of fieldsBetween(from, to, uprights, h / 2))
        for (const z of mullions(hemGap + h, clearHeight, field.height)) {
          parts.push(
            memberDraft(
              input,
              'rail',
              at(low, z),
              at(high, z),
              { width: w, height: h },
              placed('transom', 'A transom divides a side that is higher than the sheet of its panels.'),
            ),
          );
          for (const [s, end] of [
            [low, from],
            [high, to],
          ] as const)
            (s === end ? endsAtPosts : endsAtBeams).push(at(s, z));
        }
    }
  }
  for (const u of input.crossBeams) {
    const from = toSpace(axes, u, -b, middle);
    const to = toSpace(axes, u, b, middle);
    parts.push(
      memberDraft(
        input,
        'cross beam',
        from,
        to,
        { width: w, height: h },
        placed('cross-beam', 'Cross beams lie under the edges of fan filter units and roof panels.'),
      ),
    );
    endsAtBeams.push(from, to);
  }
  return {
    parts,
    posts: [...corners, ...inner],
    bays,
    cornerCount: corners.length,
    endsAtPosts,
    endsAtBeams,
    outside: { length: axes.length + 2 * h, width: axes.width + 2 * w },
  };
}

/** Middle lines of the mullions of one bay, evenly spaced. */
export function mullions(from: number, to: number, most: number): number[] {
  const fields = Math.max(1, Math.ceil((to - from) / most - 1e-9));
  return Array.from({ length: fields - 1 }, (_, i) => from + ((to - from) * (i + 1)) / fields);
}

/** Clear stretches of a bay between the faces of its uprights. */
export function fieldsBetween(
  from: number,
  to: number,
  uprights: readonly number[],
  half: number,
): (readonly [number, number])[] {
  const faces = [from, ...uprights.flatMap((s) => [s - half, s + half]), to];
  return faces.flatMap((face, i) => (i % 2 === 0 ? [[face, faces[i + 1]!] as const] : []));
}

/** Plan points of the posts in the room. */
export const postPoints = (axes: Axes, posts: readonly (readonly [number, number])[]) =>
  posts.map(([u, v]) => toRoom(axes, u, v));
