import { valueAt } from '../brief/path.js';
import { shelfTexts as say } from '../texts/shelf.js';
import type { CatalogueItem } from './catalogue-data.js';

type Corner = readonly [number, number];

const isRing = (value: unknown): value is readonly Corner[] =>
  Array.isArray(value) && value.every((p) => Array.isArray(p) && p.length === 2 && p.every((v) => Number.isFinite(v)));

const pathOf = (ring: readonly Corner[]): string => `M${ring.map(([x, y]) => `${x} ${-y}`).join('L')}Z`;

/** The cross-section of a profile as its data draw it, cut metal hatched; nothing where an item has no outline. */
export function OutlinePicture({ item }: { readonly item: CatalogueItem }) {
  const outer = valueAt(item.data, ['outline', 'outer']);
  if (!isRing(outer)) return null;
  const given = valueAt(item.data, ['outline', 'holes']);
  const holes = Array.isArray(given) ? given.filter(isRing) : [];
  const [xs, ys] = [outer.map(([x]) => x), outer.map(([, y]) => y)];
  const [west, south] = [Math.min(...xs), Math.min(...ys)];
  const [width, height] = [Math.max(...xs) - west, Math.max(...ys) - south];
  const edge = Math.max(width, height) * 0.06;
  return (
    <svg
      className="outline-picture"
      role="img"
      aria-label={say.outline(item.name)}
      viewBox={`${west - edge} ${-south - height - edge} ${width + 2 * edge} ${height + 2 * edge}`}
    >
      <defs>
        <pattern id="cut-metal" width="1.6" height="1.6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)">
          <line x1="0" y1="0" x2="0" y2="1.6" className="hatch-line" />
        </pattern>
      </defs>
      <path d={[outer, ...holes].map(pathOf).join('')} fill="url(#cut-metal)" fillRule="evenodd" className="cut-edge" />
    </svg>
  );
}
