import { contentHash } from '../floor/hash.js';
import { millimetreText } from '../floor/number-text.js';
import { type Outcome, ok, type Problem, problem, refuse } from '../floor/problem.js';
import { parseQuantity } from '../floor/units.js';
import { meantHint } from '../reading/nearest.js';
import { type Path, valueAt } from '../reading/path.js';
import { hintMark, type Money } from '../reading/quantity.js';
import { fieldsOf, schemaAt } from '../reading/schema-at.js';
import { type Catalogue, type Item, schemasByKind } from './schema.js';
import { type SoldBy, soldBy, unitOfWord } from './sold-by.js';

/** A price that a project has from an offer; fields as in the brief. */
export interface ProjectPrice {
  readonly item: string;
  readonly price: Money;
  readonly per?: string | undefined;
  readonly on: string;
  readonly from: string;
  readonly because?: string | undefined;
}

/** A figure that a project changed; the value as written. */
export interface FigureChange {
  readonly item: string;
  readonly field: string;
  readonly value: string | number | boolean;
  readonly because: string;
}

/** What the brief says about the catalogue. */
export interface AmendmentInput {
  readonly prices?: readonly ProjectPrice[] | undefined;
  readonly changes?: readonly FigureChange[] | undefined;
}

/**
 * The catalogue as one project uses it: with the prices of its offers and with figures that it changed.
 *
 * The catalogue given is left as it is; without amendments it is returned itself. Each amendment is kept in `amendments`, so
 * that lists and reports can say what was changed, why and from where.
 * @param catalogue what was read from files [-]
 * @param input     prices and changes of the brief's `site` [-]
 * @returns         the amended catalogue, or every problem at once, with paths from `site` on: `catalogue/unknown-item`,
 *                  `catalogue/unknown-figure`, `catalogue/fixed-figure`, `catalogue/changed-twice`, `catalogue/priced-twice`,
 *                  `catalogue/price-unit`, `catalogue/mixed-currencies`, and those of the value
 * Source: our own format; ISO 4217 for currencies.
 */
export function amendCatalogue(catalogue: Catalogue, input: AmendmentInput): Outcome<Catalogue> {
  const [prices, changes] = [input.prices ?? [], input.changes ?? []];
  if (prices.length === 0 && changes.length === 0) return ok(catalogue);
  const items = new Map(catalogue.byId);
  const problems: Problem[] = [];
  const refused = (path: Path, found: readonly Problem[]) => {
    problems.push(...found.map((each) => ({ ...each, path: ['site', ...path, ...each.path] })));
  };

  const changed = new Set<string>();
  const figures: AmendedFigure[] = [];
  for (const [index, change] of changes.entries()) {
    const key = `${change.item}\n${change.field}`;
    const made = changed.has(key) ? refuse([twice('changed', 'field', change.item)]) : withFigure(items, change);
    changed.add(key);
    if (!made.ok) {
      refused(['changes', index], made.problems);
      continue;
    }
    items.set(change.item, made.value.item);
    figures.push(made.value.figure);
  }

  const currency = catalogue.currency ?? prices[0]?.price.currency ?? null;
  const priced = new Set<string>();
  const amendedPrices: AmendedPrice[] = [];
  for (const [index, price] of prices.entries()) {
    const made = withPrice(items, price, currency);
    if (!made.ok) {
      refused(['prices', index], made.problems);
      continue;
    }
    const { item, place, entry } = made.value;
    const key = `${price.item}\n${place.join('.')}`;
    if (priced.has(key)) refused(['prices', index], [twice('priced', 'item', price.item)]);
    priced.add(key);
    items.set(price.item, item);
    amendedPrices.push(entry);
  }
  if (problems.length > 0) return refuse(problems);

  const amended = catalogue.items.map((item) => items.get(item.id)!);
  return ok({
    ...catalogue,
    items: amended,
    byId: new Map(amended.map((item) => [item.id, item])),
    currency,
    amendments: { prices: amendedPrices, figures },
    hash: contentHash({ catalogue: catalogue.hash, prices, changes }),
  });
}

/** A price of the project, and the place in its item that it stands for. */
export interface AmendedPrice {
  readonly item: string;
  /** Length of the stock piece or width of the panel [m]; null where the item has one price. */
  readonly size: number | null;
  readonly price: Money;
  readonly before: Money | null;
  readonly on: string;
  readonly from: string;
  readonly because: string | null;
}

/** A figure of the catalogue that the project changed; both values in SI, as the item holds them. */
export interface AmendedFigure {
  readonly item: string;
  readonly field: string;
  readonly before: string | number | boolean | null;
  readonly after: string | number | boolean;
  /** As written in the brief. */
  readonly written: string;
  readonly because: string;
}

export interface Amendments {
  readonly prices: readonly AmendedPrice[];
  readonly figures: readonly AmendedFigure[];
}

type Items = ReadonlyMap<string, Item>;

const unknownItem = (items: Items, id: string): Problem =>
  problem('catalogue/unknown-item', ['item'], `The catalogue holds no ${id}.`, meantHint(id, [...items.keys()]));

const twice = (what: 'priced' | 'changed', field: string, id: string): Problem =>
  what === 'priced'
    ? problem('catalogue/priced-twice', [field], `${id} is priced twice.`, 'Keep the price that holds.')
    : problem('catalogue/changed-twice', [field], `This figure of ${id} is changed twice.`, 'Keep one of the two.');

/** What makes an item what it is, or is given as a whole: another one is another item. */
const fixed: ReadonlySet<string> = new Set(['id', 'kind', 'needs', 'outline', 'curve', 'ratings', 'series', 'system']);

const steps = (field: string): Path => field.split('.').map((s) => (/^\d+$/.test(s) ? Number(s) : s));

function withFigure(
  items: Items,
  change: FigureChange,
): Outcome<{ readonly item: Item; readonly figure: AmendedFigure }> {
  const item = items.get(change.item);
  if (!item) return refuse([unknownItem(items, change.item)]);
  const path = steps(change.field);
  const schema = schemasByKind.get(item.kind)!;
  const found = schemaAt(schema, path, item);
  const names = fieldsOf(schema).filter((name) => !fixed.has(name) && name !== 'price');
  // The envelope of a profile belongs to its outline.
  if (fixed.has(String(path[0])) || (item.kind === 'profile' && path[0] === 'size'))
    return refuse([
      problem(
        'catalogue/fixed-figure',
        ['field'],
        `${String(path[0])} of ${item.id} is not changed for one project.`,
        'Enter another item in a catalogue file.',
      ),
    ]);
  if (path.includes('price'))
    return refuse([
      problem(
        'catalogue/fixed-figure',
        ['field'],
        `A price is no figure.`,
        'Enter it under site.prices with its date.',
      ),
    ]);
  const before = valueAt(item, path);
  if (!found || (typeof before === 'object' && before !== null) || !reaches(item, path))
    return refuse([
      problem(
        'catalogue/unknown-figure',
        ['field'],
        `${change.field} is no figure of ${item.id}.`,
        meantHint(change.field, [...names, ...deeper(item)]),
      ),
    ]);
  const read = found.safeParse(change.value);
  if (!read.success) {
    const issue = read.error.issues[0]!;
    const [message = '', hint] = issue.message.split(hintMark);
    const code = issue.code === 'custom' ? String(issue.params?.code ?? 'unusable') : 'catalogue/wrong-value';
    return refuse([problem(code, ['value'], message, hint ?? 'Write it as the catalogue does.')]);
  }
  return ok({
    item: withValueAt(item, path, read.data),
    figure: {
      item: item.id,
      field: change.field,
      before: (before ?? null) as AmendedFigure['before'],
      after: read.data as AmendedFigure['after'],
      written: String(change.value),
      because: change.because,
    },
  });
}

/** True where everything above the last step is there: a figure is added to a record, but no record is made up for it. */
const reaches = (item: Item, path: Path): boolean => {
  const above = valueAt(item, path.slice(0, -1));
  const last = path.at(-1)!;
  return Array.isArray(above) ? Number(last) < above.length : typeof above === 'object' && above !== null;
};

/** Figures inside records and lists, as a change would name them. */
const deeper = (item: Item): string[] =>
  Object.entries(item).flatMap(([name, value]) =>
    fixed.has(name) || name === 'price' || typeof value !== 'object' || value === null
      ? []
      : Object.entries(value).flatMap(([key, inner]) => (typeof inner === 'object' ? [] : [`${name}.${key}`])),
  );

/** A copy with one value replaced; all else is shared. */
function withValueAt<T>(data: T, path: Path, value: unknown): T {
  const [step, ...rest] = path;
  if (step === undefined) return value as T;
  const inner = withValueAt((data as Record<string | number, unknown>)[step], rest, value);
  if (Array.isArray(data)) return data.map((each, i) => (i === step ? inner : each)) as T;
  return { ...data, [step]: inner };
}

const soldWords: Readonly<Record<SoldBy, string>> = {
  piece: 'by the piece: per: piece',
  m: 'by the metre: per: m',
  m2: 'by the square metre: per: m2',
  'stock piece': 'by the stock piece',
  panel: 'by the panel',
};

function withPrice(
  items: Items,
  entry: ProjectPrice,
  currency: string | null,
): Outcome<{ readonly item: Item; readonly place: Path; readonly entry: AmendedPrice }> {
  const item = items.get(entry.item);
  if (!item) return refuse([unknownItem(items, entry.item)]);
  if (entry.price.currency !== currency)
    return refuse([
      problem(
        'catalogue/mixed-currencies',
        ['price'],
        `${item.id} is priced in ${entry.price.currency}, the catalogue in ${currency}.`,
        'Give all prices in one currency: rates of exchange are not guessed.',
      ),
    ]);
  const place = placeOfPrice(item, entry.per);
  if (!place.ok) return place;
  const { path, size } = place.value;
  const before = valueAt(item, path) as Money | undefined;
  const { price, on, from, because = null } = entry;
  return ok({
    item: withValueAt(item, path, price),
    place: path,
    entry: { item: item.id, size, price, before: before ?? null, on, from, because },
  });
}

/** Where in the item a price stands, by what it is for. */
function placeOfPrice(
  item: Item,
  per: string | undefined,
): Outcome<{ readonly path: Path; readonly size: number | null }> {
  const sold = soldBy(item.kind);
  const wrong = (message: string, hint: string) => refuse([problem('catalogue/price-unit', ['per'], message, hint)]);
  if (item.kind !== 'track' && item.kind !== 'cloth')
    return per === undefined || unitOfWord(per) === sold
      ? ok({ path: ['price'], size: null })
      : wrong(`${item.id} is sold ${soldWords[sold].split(':')[0]}, not by "${per}".`, `Price it ${soldWords[sold]}.`);
  const sizes = item.kind === 'track' ? item.stock.map((s) => s.length) : item.widths.map((w) => w.width);
  const known = sizes.map(millimetreText).join(', ');
  const what = item.kind === 'track' ? 'length of the stock piece' : 'width of the panel';
  const read = per === undefined ? null : parseQuantity(per, 'length');
  const index = read?.ok ? sizes.findIndex((s) => Math.abs(s - read.value) < 5e-4) : -1;
  if (index < 0)
    return wrong(
      per === undefined
        ? `${item.id} is sold ${soldWords[sold]}; the price does not say which.`
        : `${item.id} has no size "${per}".`,
      `Give the ${what} under per: ${known}.`,
    );
  return ok({ path: [item.kind === 'track' ? 'stock' : 'widths', index, 'price'], size: sizes[index]! });
}
