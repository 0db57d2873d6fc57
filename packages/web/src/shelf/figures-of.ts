import { shownText, valueAt } from '../brief/path.js';
import type { CatalogueItem } from './catalogue-data.js';

/** One figure or word of an item, by the name under which a project may change it. */
export interface Figure {
  readonly field: string;
  readonly label: string;
  readonly value: string;
  readonly canChange: boolean;
}

/** Told elsewhere on the card, or shown as a picture. */
const apart: ReadonlySet<string> = new Set(['id', 'name', 'kind', 'partNumber', 'price', 'outline', 'note']);
/** What makes an item what it is; curves and ratings are given as a whole. */
const fixed: ReadonlySet<string> = new Set([
  'needs',
  'curve',
  'ratings',
  'series',
  'system',
  'proofStrengthSource',
  'dataSource',
]);

/** `supportSpacing` as people read it: `support spacing`. */
const words = (name: string): string => name.replace(/([A-Z])/g, (letter) => ` ${letter.toLowerCase()}`);

/** A source stands in one line, as on sheets. */
function sourceOf(value: unknown): string | null {
  const at = (key: string) => shownText(valueAt(value, [key]));
  if (at('work') === '' || at('mark') === '') return null;
  return `${[at('work'), at('clause')].filter(Boolean).join(', ')} (${at('mark')})`;
}

function* figures(value: unknown, path: readonly string[]): Generator<Figure> {
  const text = sourceOf(value) ?? shownText(value);
  const label = path.map((step) => (/^\d+$/.test(step) ? String(Number(step) + 1) : words(step))).join(', ');
  if (text !== '') {
    const canChange = !fixed.has(path[0]!) && path.at(-1) !== 'price';
    yield { field: path.join('.'), label, value: text, canChange };
    return;
  }
  if (typeof value !== 'object' || value === null) return;
  for (const [key, each] of Object.entries(value)) yield* figures(each, [...path, key]);
}

/** Everything that the catalogue knows of an item, figure by figure. */
export const figuresOf = ({ data, kind }: CatalogueItem): readonly Figure[] =>
  Object.entries(data)
    .filter(([key]) => !apart.has(key))
    .flatMap(([key, value]) => [...figures(value, [key])])
    // The envelope of a profile belongs to its outline.
    .map((each) => (kind === 'profile' && each.field.startsWith('size') ? { ...each, canChange: false } : each));
