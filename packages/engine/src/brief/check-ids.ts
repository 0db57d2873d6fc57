import { type Problem, problem } from '../floor/problem.js';
import { meantHint } from '../reading/nearest.js';
import { type Path, pathText } from '../reading/path.js';
import type { Brief } from './schema.js';
import { roomId, type Thing, type ThingKind, thingsOf } from './things.js';

/** Ids that are used twice, or taken by the room itself. */
export function idProblems(brief: Brief): Problem[] {
  const first = new Map<string, Thing>();
  return thingsOf(brief).flatMap((thing) => {
    const path = [...thing.path, 'id'];
    if (thing.id === roomId)
      return [
        problem('brief/reserved-id', path, `"${roomId}" names the room itself.`, `Give this ${thing.kind} another id.`),
      ];
    const earlier = first.get(thing.id);
    if (!earlier) {
      first.set(thing.id, thing);
      return [];
    }
    return [
      problem(
        'brief/same-id',
        path,
        `${thing.id} is used twice: for the ${earlier.kind} ${pathText(earlier.path)} and the ${thing.kind} ${pathText(thing.path)}.`,
        'Give each thing its own id.',
      ),
    ];
  });
}

interface Reference {
  readonly path: Path;
  readonly id: string;
  /** What it may name; anything in the brief or the room when left out. */
  readonly kinds?: readonly ThingKind[];
}

/** Names of things that the brief does not hold, or that are of the wrong kind. */
export function referenceProblems(brief: Brief): Problem[] {
  const kindOf = new Map(thingsOf(brief).map(({ id, kind }) => [id, kind]));
  return [...surveyReferences(brief), ...needsReferences(brief), ...layoutReferences(brief)].flatMap(
    ({ path, id, kinds }) => {
      const kind = kindOf.get(id);
      if (kinds === undefined ? id === roomId || kind !== undefined : kind !== undefined && kinds.includes(kind))
        return [];
      const candidates = [...kindOf].filter(([, k]) => kinds?.includes(k) ?? true).map(([name]) => name);
      const wanted = kinds === undefined ? 'thing' : kinds.join(' or ');
      const message =
        kind === undefined ? `There is no ${wanted} called ${id}.` : `${id} is a ${kind}; a ${wanted} is needed here.`;
      return [problem('brief/unknown-reference', path, message, meantHint(id, candidates))];
    },
  );
}

const surveyReferences = ({ lasers = [] }: Brief): Reference[] =>
  lasers.flatMap(({ table }, index) =>
    table === undefined ? [] : [{ path: ['lasers', index, 'table'], id: table, kinds: ['table'] }],
  );

function needsReferences({ needs = {} }: Brief): Reference[] {
  const wheres = (['cleanliness', 'darkness', 'light', 'temperature'] as const).flatMap((field) =>
    (needs[field] ?? []).map(({ where }, index) => ({ path: ['needs', field, index, 'where'], id: where })),
  );
  const access = (needs.access ?? []).map(({ to }, index) => ({ path: ['needs', 'access', index, 'to'], id: to }));
  const ways = (needs.ways ?? []).flatMap((way, index) =>
    (['from', 'to'] as const).flatMap((end) => {
      const id = way[end];
      return typeof id === 'string' ? [{ path: ['needs', 'ways', index, end], id }] : [];
    }),
  );
  const movable = (needs.movable ?? []).map((id, index) => ({ path: ['needs', 'movable', index], id }));
  const phases = (needs.phases ?? []).flatMap(({ includes }, index) =>
    includes.map((id, each) => ({ path: ['needs', 'phases', index, 'includes', each], id })),
  );
  return [...wheres, ...access, ...ways, ...movable, ...phases];
}

function layoutReferences({ layout = {} }: Brief): Reference[] {
  const at = (list: string, index: number, ...rest: Path): Path => ['layout', list, index, ...rest];
  const around = (layout.enclosures ?? []).flatMap(({ around }, index) =>
    around.map((id, each): Reference => ({ path: at('enclosures', index, 'around', each), id, kinds: ['table'] })),
  );
  const on = (layout.runs ?? []).flatMap(({ on, hung }, index): Reference[] => {
    if (on === undefined) return [];
    const carrier: Partial<Record<typeof hung, ThingKind>> = { frame: 'enclosure', shelf: 'table' };
    const kind = carrier[hung];
    const path = at('runs', index, 'on');
    return [kind === undefined ? { path, id: on } : { path, id: on, kinds: [kind] }];
  });
  return [
    ...around,
    ...on,
    ...(layout.covers ?? []).map(
      ({ over }, i): Reference => ({ path: at('covers', i, 'over'), id: over, kinds: ['window', 'door'] }),
    ),
    ...(layout.signs ?? []).map(
      ({ door }, i): Reference => ({ path: at('signs', i, 'door'), id: door, kinds: ['door'] }),
    ),
    ...(layout.interlocks ?? []).map(({ on }, i): Reference => ({ path: at('interlocks', i, 'on'), id: on })),
    ...(layout.sensors ?? []).map(({ where }, i): Reference => ({ path: at('sensors', i, 'where'), id: where })),
  ];
}
