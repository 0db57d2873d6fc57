import type { Catalogue, Fastener, Foot, Joint, Profile, Strip } from '../catalogue/schema.js';
import type { Part, Placed } from '../design/types.js';
import type { Vec3 } from '../floor/geometry/vec.js';
import { distance3 } from '../floor/geometry/vec.js';
import { type Axes, toSpace } from './axes.js';
import type { PartDraft } from './draft.js';
import type { FrameMembers } from './frame-members.js';
import { cheapest, itemsOf } from './items.js';

const placed = (rule: string, because: string): Placed => ({ rule: `compose.enclosure.${rule}`, because });

/** Distance of cable clips along a member that carries a cable [m] (common practice). */
const clipPitch = 0.5;

export interface HardwareInput {
  readonly of: string;
  readonly axes: Axes;
  readonly profile: Profile;
  readonly members: FrameMembers;
  readonly foot: Foot;
  readonly frameTop: number;
  readonly catalogue: Catalogue;
  /** Lines along which supply cables of units and lights run. */
  readonly cableRuns: readonly (readonly [Vec3, Vec3])[];
}

/** Whether a cap closes the end of a profile: the same two sizes, whichever way round. */
const sameSection = (cap: Joint, profile: Profile): boolean => {
  const sorted = (size: readonly number[]) => [size[0]!, size[1]!].sort((x, y) => x - y);
  const [a, b] = sorted(cap.size);
  const [c, d] = sorted(profile.size);
  return Math.abs(a! - c!) < 1e-6 && Math.abs(b! - d!) < 1e-6;
};

/** The loose fasteners that one placed item needs, as parts at the same place. */
function needsOf(
  item: { readonly name: string; readonly needs: readonly { readonly item: string; readonly count: number }[] },
  at: Vec3,
  of: string,
  catalogue: Catalogue,
): PartDraft[] {
  return item.needs.flatMap(({ item: id, count }) => {
    const fastener = catalogue.byId.get(id) as Fastener | undefined;
    if (!fastener) return [];
    return [
      {
        item: id,
        group: 'fasteners' as const,
        role: 'fastener' as const,
        of,
        shape: { shape: 'loose' as const, at },
        count,
        mass: count * fastener.mass,
        placed: placed('fastener', `${item.name} is fixed with it.`),
      },
    ];
  });
}

const boxAt = (at: Vec3, size: readonly [number, number, number], turn: number): Part['shape'] => ({
  shape: 'box',
  centre: at,
  length: size[0],
  width: size[1],
  height: size[2],
  turn,
});

/**
 * Corner blocks, brackets, caps, feet, slot covers and cable clips, counted from the joints, slots and runs that exist, each
 * with the slot nuts and screws that it needs.
 */
export function frameHardware(input: HardwareInput): PartDraft[] {
  const { of, axes, profile, members, foot, frameTop, catalogue } = input;
  const series = profile.slot.series;
  const ofSeries = <T extends Joint | Strip | Fastener>(...kinds: readonly T['kind'][]): T | undefined =>
    cheapest(itemsOf<T>(catalogue, ...kinds).filter((i) => i.series === series || i.series === undefined));
  const block = ofSeries<Joint>('corner block');
  const bracket = ofSeries<Joint>('angle bracket');
  const cap = cheapest(
    itemsOf<Joint>(catalogue, 'end cap').filter((c) => c.series === series && sameSection(c, profile)),
  );
  const cover = ofSeries<Strip>('slot cover');
  const clip = ofSeries<Fastener>('cable clip');
  const joint = (item: Joint | undefined, at: Vec3, rule: string, because: string, count: number): PartDraft[] =>
    item
      ? Array.from({ length: count }, () => [
          {
            item: item.id,
            group: 'joints' as const,
            role: item.kind === 'end cap' ? ('cap' as const) : ('joint' as const),
            of,
            shape: boxAt(at, item.size, axes.turn),
            count: 1,
            mass: item.mass,
            placed: placed(rule, because),
          },
          ...needsOf(item, at, of, catalogue),
        ]).flat()
      : [];
  const [w, h] = profile.size;
  const corners = members.posts.slice(0, members.cornerCount);
  return [
    ...corners.flatMap(([u, v]) =>
      joint(
        block,
        toSpace(axes, u - Math.sign(u) * h, v - Math.sign(v) * w, frameTop - h / 2),
        'corner-block',
        'A corner block joins each corner post with the two beams that meet it.',
        1,
      ),
    ),
    ...members.endsAtPosts.flatMap((at) =>
      joint(bracket, at, 'post-bracket', 'An angle bracket holds each member end at a post.', 1),
    ),
    ...members.endsAtBeams.flatMap((at) =>
      joint(bracket, at, 'beam-bracket', 'Two angle brackets hold each member end at a beam, one on each side.', 2),
    ),
    ...members.posts.flatMap(([u, v]) =>
      joint(cap, toSpace(axes, u, v, frameTop), 'end-cap', 'An end cap closes the top of each post.', 1),
    ),
    ...members.posts.flatMap(([u, v]): PartDraft[] => {
      const at = toSpace(axes, u, v, foot.height / 2);
      return [
        {
          item: foot.id,
          group: 'feet',
          role: 'foot',
          of,
          shape: boxAt(at, [foot.size[0], foot.size[1], foot.height], axes.turn),
          count: 1,
          mass: foot.mass,
          placed: placed('foot', 'Every post stands on a foot.'),
        },
        ...needsOf(foot, at, of, catalogue),
      ];
    }),
    ...(cover
      ? members.parts.flatMap((m): PartDraft[] => {
          if (m.shape.shape !== 'bar') return [];
          const { from, to } = m.shape;
          const length = distance3(from, to);
          return [
            {
              item: cover.id,
              group: 'strips',
              role: 'slot cover',
              of,
              shape: { shape: 'loose', at: from },
              count: 1,
              length,
              mass: length * cover.massPerLength,
              placed: placed(
                'slot-cover',
                'A slot cover closes the slot that faces the clean space, so that no dust collects in it.',
              ),
            },
          ];
        })
      : []),
    ...(clip
      ? input.cableRuns.map(([from, to]): PartDraft => {
          const count = Math.max(2, Math.ceil(distance3(from, to) / clipPitch));
          return {
            item: clip.id,
            group: 'fasteners',
            role: 'fastener',
            of,
            shape: { shape: 'loose', at: from },
            count,
            mass: count * clip.mass,
            placed: placed('cable-clip', 'Cable clips hold each supply cable along the frame, every half metre.'),
          };
        })
      : []),
  ];
}
