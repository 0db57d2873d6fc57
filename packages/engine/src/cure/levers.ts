import type { Brief, BriefEnclosure, BriefRun } from '../brief/schema.js';
import { thingsOf } from '../brief/things.js';
import type { Catalogue, ItemKind } from '../catalogue/schema.js';
import { nameOf, planThings } from '../check/room-plan.js';
import type { Design } from '../design/types.js';
import type { Finding } from '../floor/finding.js';
import { ringDistance } from '../floor/geometry/polygon.js';
import { millimetreText } from '../floor/number-text.js';
import type { Path } from '../reading/path.js';
import type { CureEdit } from './edit.js';

/** One way to change the brief, by more or less: moving a thing west, one more unit, another cloth. */
export interface Lever {
  /** What the change is, as a sentence begins: `Moving Clock table 50 mm south`. */
  readonly say: (amount: number) => string;
  readonly edits: (amount: number) => readonly CureEdit[];
  /** Lengths are searched for the least that cures [m]; counts are tried one by one; a choice is made or not. */
  readonly by: 'length' | 'count' | 'choice';
  /** The most that is tried. */
  readonly most: number;
}

/** What levers are found from. */
export interface CureState {
  readonly brief: Brief;
  readonly design: Design;
  readonly catalogue: Catalogue;
}

/** Farther than this a move is another layout, not a cure [m]. */
const farthest = 1;
const directions = [
  ['north', 1, 1],
  ['south', 1, -1],
  ['east', 0, 1],
  ['west', 0, -1],
] as const;

/** Every lever that may bear on a finding, by what the finding is about. */
export function leversFor(state: CureState, finding: Finding): readonly Lever[] {
  const named = thingsNamed(state.brief, finding);
  const near = new Set([...named, ...neighbours(state.design, named, finding)]);
  const { enclosures = [], runs = [] } = state.brief.layout ?? {};
  const about = [
    ...enclosures.flatMap((e, i) => (named.has(e.id) ? enclosureLevers(state, e, i, finding) : [])),
    ...runs.flatMap((r, i) => (named.has(r.id) ? runLevers(state, r, i, finding) : [])),
    ...coverLevers(state, named, finding),
  ];
  return finding.discipline === 'room' || finding.discipline === 'curtain' ? [...moves(state, near), ...about] : about;
}

/** Ids of things that the finding names, in its own id or as its subject. */
function thingsNamed(brief: Brief, finding: Finding): ReadonlySet<string> {
  const words = new Set([...finding.id.split('/'), ...finding.subject.split('/')]);
  return new Set(
    thingsOf(brief)
      .map(({ id }) => id)
      .filter((id) => words.has(id)),
  );
}

/** What stands nearer to a named thing than the finding asks for: it may be that which is in the way. */
function neighbours(design: Design, named: ReadonlySet<string>, { unit, demand }: Finding): readonly string[] {
  if (unit !== 'm' || demand === null) return [];
  const things = planThings(design);
  const subjects = things.filter((t) => named.has(t.id));
  return things
    .filter((t) => subjects.some((s) => s !== t && ringDistance(s.points, t.points).distance < demand))
    .map((t) => t.id);
}

// ---- moving -------------------------------------------------------------------------------------------------------------------

interface Mover {
  readonly name: string;
  /** Points of the brief that go along, two lengths each. */
  readonly points: readonly { readonly path: Path; readonly at: readonly [number, number] }[];
}

function moves(state: CureState, named: ReadonlySet<string>): readonly Lever[] {
  return moversOf(state, named).flatMap((mover) =>
    directions.map(
      ([word, axis, sign]): Lever => ({
        say: (d) => `Moving ${mover.name} ${millimetreText(d)} ${word}`,
        edits: (d) =>
          mover.points.map(({ path, at }) => ({ path: [...path, axis], value: at[axis] + sign * d, as: 'length' })),
        by: 'length',
        most: farthest,
      }),
    ),
  );
}

/** What may be moved: tables with what stands round them, loose equipment, movable obstructions, curtain runs. */
function moversOf({ brief, design }: CureState, named: ReadonlySet<string>): readonly Mover[] {
  const { layout = {}, tables = [], equipment = [], room } = brief;
  const groups = tables.map((t) => {
    const round = layout.enclosures?.find((e) => e.around.includes(t.id));
    return { key: round?.id ?? t.id, round, ids: round?.around ?? [t.id] };
  });
  const distinct = [...new Map(groups.map((g) => [g.key, g])).values()];
  const tableMovers = distinct
    .filter((g) => named.has(g.key) || g.ids.some((id) => named.has(id)))
    .map(({ round, ids }): Mover => {
      const which = tables.flatMap((t, i) => (ids.includes(t.id) ? [{ t, i }] : []));
      const names = which.map(({ t }) => nameOf(design, t.id)).join(' and ');
      return {
        name: round ? `${names} with ${nameOf(design, round.id)}` : names,
        points: which.map(({ t, i }) => ({ path: ['tables', i, 'at'], at: t.at })),
      };
    });
  const one = (id: string, path: Path, at: readonly [number, number]): readonly Mover[] =>
    named.has(id) ? [{ name: nameOf(design, id), points: [{ path, at }] }] : [];
  return [
    ...tableMovers,
    ...equipment.flatMap((e, i) => one(e.id, ['equipment', i, 'at'], e.at)),
    ...(room.obstructions ?? []).flatMap((o, i) =>
      o.movable === true ? one(o.id, ['room', 'obstructions', i, 'at'], o.at) : [],
    ),
    ...(layout.runs ?? []).flatMap((run, i): readonly Mover[] =>
      named.has(run.id) && run.hung !== 'shelf'
        ? [
            {
              name: nameOf(design, run.id),
              points: run.path.map((at, k) => ({ path: ['layout', 'runs', i, 'path', k], at })),
            },
          ]
        : [],
    ),
  ];
}

// ---- sizes and items ----------------------------------------------------------------------------------------------------------

/** A length of the brief made greater or smaller. */
function lengthLevers(name: string, path: Path, now: number | undefined, most: number): readonly Lever[] {
  if (now === undefined) return [];
  const lever = (sign: 1 | -1): Lever => ({
    say: (d) => `${name} ${millimetreText(now + sign * d)} instead of ${millimetreText(now)}`,
    edits: (d) => [{ path, value: now + sign * d, as: 'length' }],
    by: 'length',
    most: sign > 0 ? most : Math.min(most, now),
  });
  return [lever(1), lever(-1)];
}

/** Another item of the catalogue in the place of the one that is there. */
function choiceLevers(
  { catalogue }: CureState,
  kinds: readonly ItemKind[],
  where: string,
  path: Path,
  now: string | null | undefined,
  fits: (id: string) => boolean = () => true,
): readonly Lever[] {
  return catalogue.items
    .filter((item) => kinds.includes(item.kind) && item.id !== now && fits(item.id))
    .map(
      (item): Lever => ({
        say: () => `${item.name} ${where}`,
        edits: () => [{ path, value: item.id, as: 'name' }],
        by: 'choice',
        most: 1,
      }),
    );
}

/** Units that are tried beyond what is there. */
const moreUnits = 4;

function enclosureLevers(state: CureState, asked: BriefEnclosure, i: number, finding: Finding): readonly Lever[] {
  const base: Path = ['layout', 'enclosures', i];
  const built = state.design.enclosures.find((e) => e.id === asked.id);
  if (!built) return [];
  const name = built.name;
  switch (finding.discipline) {
    case 'room':
      return [
        ...lengthLevers(`A clear height in ${name} of`, [...base, 'clearHeight'], built.clearHeight, 0.5),
        ...lengthLevers(`A gap round the tables in ${name} of`, [...base, 'gap'], asked.gap, 0.3),
      ];
    case 'laser': {
      const sides = built.sides.filter((s) => finding.id.includes(`/${asked.id}/${s.name}/`));
      return sides.flatMap((s) =>
        s.closure === 'curtain' || s.closure === 'rigid panel'
          ? choiceLevers(
              state,
              [s.closure === 'curtain' ? 'cloth' : 'sheet'],
              `on the ${s.name} side of ${name}`,
              [...base, 'sides', s.name, 'item'],
              s.item,
            )
          : [],
      );
    }
    case 'air':
      return [
        {
          say: (n) => `${built.unitCount + n} fan filter units in ${name} instead of ${built.unitCount}`,
          edits: (n) => [{ path: [...base, 'unitCount'], value: built.unitCount + n, as: 'count' }],
          by: 'count',
          most: moreUnits,
        },
        ...choiceLevers(state, ['fan filter unit'], `in ${name}`, [...base, 'unit'], built.unit),
        ...lengthLevers(`A hem gap in ${name} of`, [...base, 'hemGap'], built.hemGap, 0.15),
      ];
    case 'frame':
      return [
        ...choiceLevers(state, ['profile'], `for the frame of ${name}`, [...base, 'profile'], built.profile),
        ...lengthLevers(`A gap round the tables in ${name} of`, [...base, 'gap'], asked.gap, 0.3),
      ];
    default:
      return [];
  }
}

function runLevers(state: CureState, asked: BriefRun, i: number, finding: Finding): readonly Lever[] {
  const base: Path = ['layout', 'runs', i];
  const built = state.design.runs.find((r) => r.id === asked.id);
  if (!built) return [];
  const heights = [
    ...lengthLevers(`A hem gap under ${built.name} of`, [...base, 'hemGap'], built.hemGap, 0.3),
    ...lengthLevers(`The track of ${built.name} at`, [...base, 'trackHeight'], built.trackHeight, 0.6),
  ];
  const cloths = choiceLevers(state, ['cloth'], `for ${built.name}`, [...base, 'cloth'], built.cloth);
  if (finding.discipline === 'laser') return cloths;
  if (finding.discipline === 'room') return heights;
  return finding.discipline === 'curtain'
    ? [...heights, ...cloths, ...choiceLevers(state, ['track'], `for ${built.name}`, [...base, 'track'], built.track)]
    : [];
}

function coverLevers(state: CureState, named: ReadonlySet<string>, finding: Finding): readonly Lever[] {
  if (finding.discipline !== 'laser' && finding.discipline !== 'curtain') return [];
  return (state.brief.layout?.covers ?? []).flatMap((cover, i) =>
    named.has(cover.id)
      ? choiceLevers(
          state,
          ['cover'],
          `over ${nameOf(state.design, cover.over)}`,
          ['layout', 'covers', i, 'item'],
          state.design.covers.find((c) => c.id === cover.id)?.item,
        )
      : [],
  );
}
