import type { Catalogue, Item } from '../catalogue/schema.js';
import { type Outcome, ok, problem, refuse } from '../floor/problem.js';
import { meantHint } from '../reading/nearest.js';

type Kind = Item['kind'];

/** Items of some kinds, in catalogue order. */
export const itemsOf = <T extends Item>(catalogue: Catalogue, ...kinds: readonly Kind[]): T[] =>
  catalogue.items.filter((i): i is T => (kinds as readonly string[]).includes(i.kind));

/** Price of one unit as a number, for choosing the cheapest; items without price come last. */
export const priceOf = (item: Item): number =>
  'price' in item && item.price ? Number(item.price.amount) : Number.POSITIVE_INFINITY;

/** The cheapest of some items; the first of equals, so that the choice is the same every time. */
export const cheapest = <T extends Item>(items: readonly T[]): T | undefined =>
  items.reduce<T | undefined>((best, i) => (best === undefined || priceOf(i) < priceOf(best) ? i : best), undefined);

/** A named item of the right kind, or the problem that it is missing. */
export function findItem<T extends Item>(
  catalogue: Catalogue,
  id: string,
  kinds: readonly Kind[],
  path: readonly (string | number)[],
): Outcome<T> {
  const item = catalogue.byId.get(id);
  if (item && kinds.includes(item.kind)) return ok(item as T);
  const known = itemsOf(catalogue, ...kinds).map((i) => i.id);
  const message = item
    ? `"${id}" is a ${item.kind}; a ${kinds.join(' or ')} is needed here.`
    : `The catalogue has no "${id}".`;
  return refuse([problem('compose/item-missing', path, message, meantHint(id, known))]);
}

/** The item that a rule chooses, or the problem that the catalogue has none for it. */
export const chosenItem = <T extends Item>(
  item: T | undefined,
  what: string,
  path: readonly (string | number)[],
): Outcome<T> =>
  item
    ? ok(item)
    : refuse([
        problem(
          'compose/item-missing',
          path,
          `The catalogue has no ${what}.`,
          `Add a ${what} to the catalogue, or name another item here.`,
        ),
      ]);
