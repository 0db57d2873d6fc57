import type {
  Catalogue,
  Cloth,
  Item,
  Runner,
  Strip,
  Track,
  TrackConnector,
  TrackCurve,
  TrackEnd,
  TrackSupport,
} from '../catalogue/schema.js';
import { millimetreText } from '../floor/number-text.js';
import { type Outcome, ok, problem, refuse } from '../floor/problem.js';
import { byLikeness } from '../reading/nearest.js';
import { cheapest, chosenItem, itemsOf, priceOf } from './items.js';

type Path = readonly (string | number)[];

/** Angles that differ by less than half a degree are one angle of a bought part [rad]. */
const sameAngle = 0.009;

/** Item named in the brief, of the right kind; a missing one names the most alike. */
export function namedItem<T extends Item>(
  catalogue: Catalogue,
  name: string,
  kind: Item['kind'],
  path: Path,
): Outcome<T> {
  const item = catalogue.byId.get(name);
  if (item?.kind === kind) return ok(item as T);
  const known = itemsOf(catalogue, kind).map((i) => i.id);
  const near = byLikeness(name, known)[0];
  const message = item
    ? `"${name}" is a ${item.kind}; a ${kind} is needed here.`
    : `The catalogue has no ${kind} "${name}".`;
  return refuse([
    problem('compose/item-missing', path, message, near ? `Did you mean ${near}?` : `Add a ${kind} to the catalogue.`),
  ]);
}

const ofSystem = <T extends Item & { readonly system: string }>(
  catalogue: Catalogue,
  kind: Item['kind'],
  system: string,
): T[] => itemsOf<T>(catalogue, kind).filter((i) => i.system === system);

/** Parts of one track system that every curtain needs. */
export interface TrackKit {
  readonly runner: Runner;
  readonly endStop: TrackEnd;
}

export function trackKit(catalogue: Catalogue, track: Track, path: Path): Outcome<TrackKit> {
  const runner = chosenItem(
    cheapest(ofSystem<Runner>(catalogue, 'runner', track.system)),
    `runner of system ${track.system}`,
    path,
  );
  const endStop = chosenItem(
    cheapest(ofSystem<TrackEnd>(catalogue, 'end stop', track.system)),
    `end stop of system ${track.system}`,
    path,
  );
  if (!runner.ok || !endStop.ok) return refuse([runner, endStop].flatMap((o) => (o.ok ? [] : o.problems)));
  return ok({ runner: runner.value, endStop: endStop.value });
}

/** Curves that turn by the given angle, the cheapest first, then the tightest. */
export const curvesFor = (catalogue: Catalogue, system: string, turn: number): TrackCurve[] =>
  ofSystem<TrackCurve>(catalogue, 'track curve', system)
    .filter((c) => Math.abs(c.angle - Math.abs(turn)) <= sameAngle)
    .sort((a, b) => priceOf(a) - priceOf(b) || a.radius - b.radius);

/** Connector of two pieces that turns by the given angle; 0 for one in line. One without a stated angle is taken as in line. */
export function connectorFor(catalogue: Catalogue, system: string, turn: number, path: Path): Outcome<TrackConnector> {
  const fits = ofSystem<TrackConnector>(catalogue, 'track connector', system).filter(
    (c) => c.ways <= 2 && Math.abs((c.angle ?? 0) - Math.abs(turn)) <= sameAngle,
  );
  const degrees = Math.round((Math.abs(turn) * 180) / Math.PI);
  const what = turn === 0 ? 'in-line track connector' : `two-way track connector of ${degrees} degrees`;
  return chosenItem(cheapest(fits), `${what} of system ${system}`, path);
}

/**
 * The cheapest support of a kind of hanging whose rod or post spans what is needed.
 * @param reach distance from track to what carries it, or null when it is not known: then the cheapest of the kind [m]
 */
export function supportFor(
  catalogue: Catalogue,
  system: string,
  hung: TrackSupport['hung'],
  reach: number | null,
  path: Path,
): Outcome<TrackSupport> {
  const kind = ofSystem<TrackSupport>(catalogue, 'track support', system).filter((s) => s.hung === hung);
  if (kind.length === 0) return chosenItem<TrackSupport>(undefined, `${hung} support of system ${system}`, path);
  const within = kind.filter((s) => reach === null || (reach >= s.reach[0] - 1e-6 && reach <= s.reach[1] + 1e-6));
  const chosen = cheapest(within);
  if (chosen) return ok(chosen);
  const ranges = kind.map((s) => `${millimetreText(s.reach[0])} to ${millimetreText(s.reach[1])}`).join(', ');
  return refuse([
    problem(
      'compose/no-support-reaches',
      path,
      `The track is ${millimetreText(reach!)} away from what carries it (${hung}); the supports of the catalogue span ${ranges}.`,
      'Change the height of the track or the kind of hanging, or add a longer support to the catalogue.',
    ),
  ]);
}

/** The lightest hem weight sold by the metre that is at least as heavy as the cloth's hem asks; none when the cloth asks for none. */
export function hemWeightFor(catalogue: Catalogue, cloth: Cloth): Strip | undefined {
  if (cloth.hem.massPerLength === 0) return undefined;
  return itemsOf<Strip>(catalogue, 'hem weight')
    .filter((s) => s.massPerLength >= cloth.hem.massPerLength - 1e-9)
    .sort((a, b) => a.massPerLength - b.massPerLength)[0];
}

/** First cloth of a purpose, the cheapest by its narrowest panel's price per width; of equals the first. */
export function clothFor(catalogue: Catalogue, purpose: Cloth['purpose'], path: Path): Outcome<Cloth> {
  const perWidth = (c: Cloth) =>
    Math.min(...c.widths.map((w) => (w.price ? Number(w.price.amount) / w.width : Number.POSITIVE_INFINITY)));
  const cloths = itemsOf<Cloth>(catalogue, 'cloth').filter((c) => c.purpose === purpose);
  const best = cloths.reduce<Cloth | undefined>((a, b) => (a && perWidth(a) <= perWidth(b) ? a : b), undefined);
  return chosenItem(best, `${purpose} cloth`, path);
}
