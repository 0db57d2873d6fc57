import type { Catalogue } from '../catalogue/schema.js';
import type { Design, Part, PartGroup } from '../design/types.js';
import { compareText } from '../floor/text-order.js';
import {
  cutPlans,
  type PartRow,
  type PartsList,
  partGroups,
  partsList,
  totalPrice,
  type UnitCode,
} from '../parts/index.js';
import type { SiteRules } from '../rules/schema.js';
import { sameNumber, sameShare } from './quantities.js';

/** A value in both states. */
export interface Pair<T> {
  readonly before: T;
  readonly after: T;
}

/** What lines cost: the sum of those with a price, and how many have none. Without any price the amount is null, never zero. */
export interface Cost {
  /** Decimal text with the digits of the minor unit. */
  readonly amount: string | null;
  readonly currency: string | null;
  readonly unpriced: number;
}

/** Pieces of one size. */
export interface SizeChange {
  readonly length: number | null;
  readonly width: number | null;
  readonly thickness: number | null;
  readonly count: Pair<number>;
}

/** One item of the catalogue whose pieces, orders or prices differ. */
export interface ItemChange {
  readonly itemId: string;
  readonly partNumber: string;
  readonly name: string;
  readonly group: PartGroup;
  readonly change: 'added' | 'removed' | 'changed';
  readonly pieces: Pair<number> & Balance;
  /** Sizes whose number differs, the longest first; what has no size of its own is one entry without any. */
  readonly sizes: readonly SizeChange[];
  /** To order, in `unit`; null where it could not be planned or nothing is ordered. */
  readonly order: Pair<number | null>;
  readonly unit: UnitCode;
  /** Mass of all pieces [kg]. */
  readonly mass: Pair<number>;
  readonly cost: Pair<Cost>;
  /** Cost after less cost before, as decimal text; null unless every line on both sides has a price in one currency. */
  readonly difference: string | null;
}

/** Sizes that say more than the number of pieces does: an item with one size, all of whose pieces came or went, needs none. */
export function tellingSizes({ sizes, pieces }: ItemChange): readonly SizeChange[] {
  const sized = sizes.filter((s) => s.length !== null || s.width !== null);
  const [only, second] = sized;
  const same = only && !second && only.count.before === pieces.before && only.count.after === pieces.after;
  return same ? [] : sized;
}

/** Pieces that came and went: `before + added - removed = after`. */
export interface Balance {
  readonly added: number;
  readonly removed: number;
}

export interface PartsComparison {
  /** In the order of the parts list. */
  readonly items: readonly ItemChange[];
  readonly pieces: Pair<number> & Balance;
  /** Mass of all parts [kg]. */
  readonly mass: Pair<number>;
  readonly cost: Pair<Cost>;
  /** Difference of the sums of priced lines; lines without a price are not in it. Null without two sums in one currency. */
  readonly difference: string | null;
}

export interface PartsState {
  readonly design: Design;
  readonly catalogue: Catalogue;
  readonly rules: SiteRules;
}

/** Parts and their lines on one side. */
interface Side {
  readonly list: PartsList;
  readonly parts: ReadonlyMap<string, readonly Part[]>;
  readonly rows: ReadonlyMap<string, readonly PartRow[]>;
}

/** What there is more and less to buy, by item of the catalogue, with mass and cost as the parts lists tell them. */
export function compareParts(before: PartsState, after: PartsState): PartsComparison {
  const [was, is] = [sideOf(before), sideOf(after)];
  const items = [...new Set([...was.rows.keys(), ...is.rows.keys()])].map((id) => itemChange(id, was, is));
  const sum = (of: (item: ItemChange) => number) => items.reduce((all, item) => all + of(item), 0);
  const cost = { before: costOf(was.list.rows, was.list), after: costOf(is.list.rows, is.list) };
  return {
    items: items
      .filter(differs)
      .sort(
        (a, b) =>
          partGroups.indexOf(a.group) - partGroups.indexOf(b.group) ||
          compareText(a.name, b.name) ||
          compareText(a.itemId, b.itemId),
      ),
    pieces: {
      before: sum((i) => i.pieces.before),
      after: sum((i) => i.pieces.after),
      added: sum((i) => i.pieces.added),
      removed: sum((i) => i.pieces.removed),
    },
    mass: { before: was.list.massKg, after: is.list.massKg },
    cost,
    difference: costDifference(cost),
  };
}

/** What everything to buy of one state costs, as its parts list tells it. */
export function costOfState(state: PartsState): Cost {
  const { list } = sideOf(state);
  return costOf(list.rows, list);
}

const sideOf = ({ design, catalogue, rules }: PartsState): Side => {
  const list = partsList(design, catalogue, rules, cutPlans(design, catalogue, rules));
  return { list, parts: groupBy(design.parts, (p) => p.item), rows: groupBy(list.rows, (r) => r.itemId) };
};

function groupBy<T>(all: readonly T[], key: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of all) {
    const group = groups.get(key(one));
    if (group) group.push(one);
    else groups.set(key(one), [one]);
  }
  return groups;
}

function itemChange(itemId: string, was: Side, is: Side): ItemChange {
  const rows = { before: was.rows.get(itemId) ?? [], after: is.rows.get(itemId) ?? [] };
  const parts = { before: was.parts.get(itemId) ?? [], after: is.parts.get(itemId) ?? [] };
  const named = rows.after[0] ?? rows.before[0]!;
  const sizes = sizeChanges(parts);
  const counted = (of: readonly Part[]) => of.reduce((sum, p) => sum + p.count, 0);
  const grown = (by: (size: SizeChange) => number) => sizes.reduce((sum, size) => sum + Math.max(0, by(size)), 0);
  const cost = { before: costOf(rows.before, was.list), after: costOf(rows.after, is.list) };
  return {
    itemId,
    partNumber: named.partNumber,
    name: named.name,
    group: (parts.after[0] ?? parts.before[0]!).group,
    change: rows.before.length === 0 ? 'added' : rows.after.length === 0 ? 'removed' : 'changed',
    pieces: {
      before: counted(parts.before),
      after: counted(parts.after),
      added: grown(({ count }) => count.after - count.before),
      removed: grown(({ count }) => count.before - count.after),
    },
    sizes: sizes.filter(({ count }) => count.before !== count.after),
    order: { before: orderOf(rows.before), after: orderOf(rows.after) },
    unit: named.unit,
    mass: { before: massOf(rows.before), after: massOf(rows.after) },
    cost,
    difference: cost.before.unpriced + cost.after.unpriced === 0 ? costDifference(cost) : null,
  };
}

const massOf = (rows: readonly PartRow[]): number => rows.reduce((sum, r) => sum + r.massKg, 0);

const orderOf = (rows: readonly PartRow[]): number | null =>
  rows.length === 0 || rows.some((r) => r.orderQty === null) ? null : rows.reduce((sum, r) => sum + r.orderQty!, 0);

function costOf(rows: readonly PartRow[], { currency }: PartsList): Cost {
  const lines = rows.flatMap((r) => r.linePrice ?? []);
  const known = currency !== null && (lines.length > 0 || rows.length === 0);
  return { amount: known ? totalPrice(lines, currency) : null, currency, unpriced: rows.length - lines.length };
}

function costDifference({ before, after }: Pair<Cost>): string | null {
  if (before.amount === null || after.amount === null || before.currency !== after.currency) return null;
  return totalPrice([after.amount, negative(before.amount)], after.currency!);
}

const negative = (amount: string): string => (amount.startsWith('-') ? amount.slice(1) : `-${amount}`);

/** Sizes are told apart by the micrometre: the grain at which lengths from one sum but two orders of adding still agree. */
const grain = (metres: number | undefined): string => (metres === undefined ? '' : String(Math.round(metres * 1e6)));

function sizeChanges({ before, after }: Pair<readonly Part[]>): SizeChange[] {
  const sizes = new Map<
    string,
    { length: number | null; width: number | null; thickness: number | null; count: { before: number; after: number } }
  >();
  const put = (parts: readonly Part[], side: 'before' | 'after') => {
    for (const { length, width, thickness, count } of parts) {
      const key = [length, width, thickness].map(grain).join(' ');
      const size = sizes.get(key) ?? {
        length: length ?? null,
        width: width ?? null,
        thickness: thickness ?? null,
        count: { before: 0, after: 0 },
      };
      size.count[side] += count;
      sizes.set(key, size);
    }
  };
  put(before, 'before');
  put(after, 'after');
  return [...sizes.values()].sort(
    (a, b) =>
      (b.length ?? 0) - (a.length ?? 0) || (b.width ?? 0) - (a.width ?? 0) || (b.thickness ?? 0) - (a.thickness ?? 0),
  );
}

/** Whether an item is worth a line: pieces, sizes, order, mass or price differ. */
const differs = ({ change, sizes, order, mass, cost }: ItemChange): boolean =>
  change !== 'changed' ||
  sizes.length > 0 ||
  !sameNumber(order.before ?? -1, order.after ?? -1) ||
  !sameNumber(mass.before, mass.after, sameShare) ||
  cost.before.amount !== cost.after.amount ||
  cost.before.currency !== cost.after.currency ||
  cost.before.unpriced !== cost.after.unpriced;
