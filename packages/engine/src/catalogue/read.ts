import type { z } from 'zod';
import { contains, edges, type Ring, segmentsMeet, selfCrossings, signedArea } from '../floor/geometry/polygon.js';
import { contentHash } from '../floor/hash.js';
import { type Outcome, ok, type Problem, refuse } from '../floor/problem.js';
import { type ReadDocument, readDocument } from '../reading/document.js';
import { meantHint } from '../reading/nearest.js';
import type { Path } from '../reading/path.js';
import { problemsOf } from '../reading/problems-of.js';
import {
  type Catalogue,
  catalogueFileSchema,
  type FanFilterUnit,
  type Item,
  type Profile,
  schemasByKind,
} from './schema.js';

export interface CatalogueFile {
  readonly name: string;
  readonly text: string;
}

type Header = z.output<typeof catalogueFileSchema>['catalogue'];

/** An item and where it was written. */
interface Entry {
  readonly item: Item;
  readonly document: ReadDocument;
  readonly path: Path;
}

/**
 * Reads the files of a catalogue into one list of parts that may be used.
 *
 * Files are taken in the order of their names, so that the same files give the same catalogue however they were listed.
 * @param files names and texts, YAML or JSON [-]
 * @returns     the parts, or every problem at once: those of the text and the schema, `catalogue/no-files`,
 *              `catalogue/unknown-kind`, `catalogue/same-id`, `catalogue/unknown-item`, `catalogue/mixed-currencies`,
 *              `catalogue/curve-not-falling`, `catalogue/outline`
 * Source: our own format; ISO 4217 for currencies.
 */
export function readCatalogue(files: readonly CatalogueFile[]): Outcome<Catalogue> {
  if (files.length === 0)
    return refuse([
      {
        code: 'catalogue/no-files',
        path: [],
        message: 'The catalogue has no files.',
        hint: 'Name a folder that holds catalogue files (.yaml).',
      },
    ]);
  const problems: Problem[] = [];
  const entries: Entry[] = [];
  const headers: Header[] = [];
  for (const file of [...files].sort((a, b) => (a.name < b.name ? -1 : 1))) {
    const read = readFile(file);
    problems.push(...read.problems);
    entries.push(...read.entries);
    if (read.header) headers.push(read.header);
  }
  problems.push(...entries.flatMap(itemProblems));
  problems.push(...sameIds(entries));
  // References into a file that could not be read would only repeat its problems.
  if (problems.length === 0) problems.push(...unknownNeeds(entries));
  problems.push(...mixedCurrencies(entries));
  if (problems.length > 0) return refuse(problems);

  const items = entries.map(({ item }) => item);
  return ok({
    items,
    byId: new Map(items.map((item) => [item.id, item])),
    currency: entries.flatMap(pricesOf)[0]?.currency ?? null,
    // Of several dates the oldest: prices are at least as good as that.
    priceDate: headers.map(({ priceDate }) => priceDate).sort()[0]!,
    priceBasis: [...new Set(headers.map(({ priceBasis }) => priceBasis))].join('; '),
    invented: headers.some(({ invented }) => invented),
    hash: contentHash(items),
  });
}

function readFile({ name, text }: CatalogueFile): {
  readonly problems: readonly Problem[];
  readonly entries: readonly Entry[];
  readonly header?: Header;
} {
  const read = readDocument(text, 'catalogue', name);
  if (!read.ok) return { problems: read.problems, entries: [] };
  const document = read.value;
  const parsed = catalogueFileSchema.safeParse(document.data);
  if (!parsed.success)
    return {
      problems: problemsOf(parsed.error, { area: 'catalogue', schema: catalogueFileSchema, document, base: [] }),
      entries: [],
    };
  const problems: Problem[] = [];
  const entries: Entry[] = [];
  parsed.data.items.forEach((raw, index) => {
    const item = readItem(raw, index, document);
    if (item.ok) entries.push({ item: item.value, document, path: ['items', index] });
    else problems.push(...item.problems);
  });
  return { problems, entries, header: parsed.data.catalogue };
}

/** Checks one item against the schema of its kind alone: nobody wants to read why it is no other kind. */
function readItem(raw: unknown, index: number, document: ReadDocument): Outcome<Item> {
  const base = ['items', index];
  const kind = typeof raw === 'object' && raw !== null && 'kind' in raw ? raw.kind : undefined;
  const schema = typeof kind === 'string' ? schemasByKind.get(kind) : undefined;
  if (!schema)
    return refuse([
      at({ document, path: base }, ['kind'], {
        code: 'catalogue/unknown-kind',
        message: kind === undefined ? 'The item does not say its kind.' : `"${String(kind)}" is no kind of part.`,
        hint: meantHint(String(kind ?? ''), [...schemasByKind.keys()]),
      }),
    ]);
  const parsed = schema.safeParse(raw);
  if (parsed.success) return ok(parsed.data);
  return refuse(problemsOf(parsed.error, { area: 'catalogue', schema, document, base }));
}

const at = (
  { document, path }: Pick<Entry, 'document' | 'path'>,
  inside: Path,
  words: Pick<Problem, 'code' | 'message' | 'hint'>,
): Problem => {
  const full = [...path, ...inside];
  const where = { path: full, place: document.place(full) };
  return { ...words, ...where, ...(document.file === undefined ? {} : { file: document.file }) };
};

function itemProblems(entry: Entry): Problem[] {
  if (entry.item.kind === 'fan filter unit') return curveProblems(entry, entry.item);
  return entry.item.kind === 'profile' ? outlineProblems(entry, entry.item as Profile) : [];
}

/** A fan gives less flow against more pressure; a curve that says otherwise has no single working point. */
function curveProblems(entry: Entry, unit: FanFilterUnit): Problem[] {
  return unit.curve.flatMap(({ flow, pressure }, index) => {
    const before = unit.curve[index - 1];
    if (!before || (flow > before.flow && pressure < before.pressure)) return [];
    return [
      at(entry, ['curve', index], {
        code: 'catalogue/curve-not-falling',
        message: `The fan curve of ${unit.id} does not fall at point ${index + 1}: from there on flow must rise while pressure falls.`,
        hint: 'Give the points from no flow to free delivery, each with more flow and less pressure than the one before.',
      }),
    ];
  });
}

function outlineProblems(entry: Entry, profile: Profile): Problem[] {
  const { outer, holes } = profile.outline;
  const no = (inside: Path, message: string, hint: string) =>
    at(entry, ['outline', ...inside], { code: 'catalogue/outline', message, hint });
  const crossed = [outer, ...holes].flatMap((ring, index) => {
    const inside = index === 0 ? ['outer'] : ['holes', index - 1];
    const crossings = selfCrossings(ring);
    if (crossings.length > 0) {
      const [a, b] = crossings[0]!;
      return [
        no(
          inside,
          `The outline of ${profile.id} crosses or touches itself: edges ${a} and ${b}.`,
          'Draw it as one simple line.',
        ),
      ];
    }
    return signedArea(ring) === 0
      ? [no(inside, `The outline of ${profile.id} has no area.`, 'Check its corners.')]
      : [];
  });
  if (crossed.length > 0) return crossed;
  return holes.flatMap((hole, index) => {
    const others = [outer, ...holes.slice(0, index)];
    const touches = others.some((ring) => ringsMeet(ring, hole));
    const outside = !contains(outer, hole[0]!) || holes.slice(0, index).some((other) => contains(other, hole[0]!));
    return touches || outside
      ? [
          no(
            ['holes', index],
            `Hole ${index + 1} of ${profile.id} does not lie in the metal: it leaves the outline or meets another hole.`,
            'Each hole must lie inside the outer line and apart from the others.',
          ),
        ]
      : [];
  });
}

const ringsMeet = (a: Ring, b: Ring): boolean =>
  edges(a).some((ea) => edges(b).some((eb) => segmentsMeet(ea.from, ea.to, eb.from, eb.to)));

function sameIds(entries: readonly Entry[]): Problem[] {
  const first = new Map<string, Entry>();
  return entries.flatMap((entry) => {
    const { id } = entry.item;
    const earlier = first.get(id);
    if (!earlier) {
      first.set(id, entry);
      return [];
    }
    const place = earlier.document.place(earlier.path);
    return [
      at(entry, ['id'], {
        code: 'catalogue/same-id',
        message: `${id} is used twice: also for "${earlier.item.name}" (${earlier.document.file ?? 'catalogue'}, line ${place.line}).`,
        hint: 'Give each part its own id.',
      }),
    ];
  });
}

function unknownNeeds(entries: readonly Entry[]): Problem[] {
  const ids = entries.map(({ item }) => item.id);
  const known = new Set(ids);
  return entries.flatMap((entry) =>
    ('needs' in entry.item ? entry.item.needs : []).flatMap((need, index) =>
      known.has(need.item)
        ? []
        : [
            at(entry, ['needs', index, 'item'], {
              code: 'catalogue/unknown-item',
              message: `${entry.item.id} needs ${need.item}, which the catalogue does not hold.`,
              hint: meantHint(need.item, ids),
            }),
          ],
    ),
  );
}

interface Price {
  readonly currency: string;
  readonly path: Path;
}

function pricesOf({ item }: Entry): Price[] {
  const found: Price[] = item.price ? [{ currency: item.price.currency, path: ['price'] }] : [];
  const within = (field: string, list: readonly { readonly price?: { readonly currency: string } | undefined }[]) =>
    list.forEach(({ price }, index) => {
      if (price) found.push({ currency: price.currency, path: [field, index, 'price'] });
    });
  if (item.kind === 'track') within('stock', item.stock);
  if (item.kind === 'cloth') within('widths', item.widths);
  return found;
}

/** Prices are added up, so all are in one currency; rates of exchange are nobody's business here. */
function mixedCurrencies(entries: readonly Entry[]): Problem[] {
  const main = entries.flatMap(pricesOf)[0]?.currency;
  return entries.flatMap((entry) =>
    pricesOf(entry)
      .filter(({ currency }) => currency !== main)
      .map(({ currency, path }) =>
        at(entry, path, {
          code: 'catalogue/mixed-currencies',
          message: `${entry.item.id} is priced in ${currency}, the parts before it in ${main}.`,
          hint: `Give all prices in one currency.`,
        }),
      ),
  );
}
