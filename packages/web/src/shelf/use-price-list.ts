import { useEffect, useMemo, useState } from 'react';
import { withEdits } from '../brief/document.js';
import { valueAt } from '../brief/path.js';
import { editText, useWorkbench } from '../state/store.js';
import { priceTexts as say } from '../texts/shelf.js';
import { currencyOf, pricesOf } from './catalogue-data.js';
import { largestList, type Separator } from './list-limits.js';
import {
  type ColumnChoice,
  headRowOf,
  type ListSettings,
  type PriceReport,
  type PriceRow,
  proposeColumns,
  withPrices,
} from './price-list.js';
import { type DateOrder, type Decimal, decimalOfColumn, isDoubtfulDay } from './price-text.js';
import { loadShelf, useShelf } from './shelf-store.js';
import { tableReader } from './table-client.js';

export interface OpenList {
  readonly name: string;
  readonly sheets: readonly { readonly name: string; readonly rows: readonly PriceRow[]; readonly count: number }[];
  /** Null where it must be said; undefined where none is needed. */
  readonly separator: Separator | null | undefined;
  readonly notes: readonly string[];
}

/** What a person has said of the list so far. */
export interface Said {
  readonly sheet: number;
  readonly headRow: number;
  readonly columns: ColumnChoice;
  readonly decimal: Decimal | null;
  readonly dateOrder: DateOrder | null;
  /** Whether a day of the list needs the order to be said. */
  readonly daysDoubtful: boolean;
  readonly currency: string;
  readonly date: string;
  readonly from: string;
  readonly unitsAsSold: boolean;
  readonly confirmed: ReadonlyMap<number, string>;
}

const today = (): string => new Date().toISOString().slice(0, 10);

/** What still has to be said before anything is read. */
const isEnough = ({ columns, decimal, dateOrder, daysDoubtful, from }: Said): boolean =>
  columns.price !== null &&
  (columns.item !== null || columns.description !== null) &&
  decimal !== null &&
  (!daysDoubtful || dateOrder !== null) &&
  from.trim() !== '';

/** A price list on its way into the brief: opened, described by the person, read against the catalogue. */
export function usePriceReader() {
  const [list, setList] = useState<OpenList | null>(null);
  const [file, setFile] = useState<{ readonly name: string; readonly bytes: Uint8Array } | null>(null);
  const [said, setSaid] = useState<Said | null>(null);
  const [report, setReport] = useState<PriceReport | null>(null);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const items = useShelf((s) => s.items);
  const data = useWorkbench((s) => s.data);
  const currency = useMemo(() => currencyOf(items), [items]);
  useEffect(() => void loadShelf(), []);

  const begin = (opened: OpenList, sheet: number, before: Said | null) => {
    const rows = opened.sheets[sheet]?.rows ?? [];
    const headRow = headRowOf(rows);
    const columns = proposeColumns(headRow < 0 ? [] : rows[headRow]!);
    void describe({
      sheet,
      headRow,
      columns,
      decimal: null,
      dateOrder: null,
      daysDoubtful: false,
      currency: before?.currency ?? currency ?? '',
      date: before?.date ?? today(),
      from: before?.from ?? '',
      unitsAsSold: false,
      confirmed: new Map(),
    });
  };

  /** Looks at the columns of prices and days for what they say about themselves. */
  const describe = async (next: Said) => {
    const { price, date } = next.columns;
    const below = async (column: number | null) =>
      column === null ? [] : (await tableReader().column(next.sheet, column)).slice(next.headRow + 1);
    const [prices, days] = [await below(price), await below(date)];
    setSaid({
      ...next,
      decimal: next.decimal ?? (price === null ? null : decimalOfColumn(prices)),
      daysDoubtful: days.some((day) => typeof day === 'string' && isDoubtfulDay(day)),
    });
  };

  const open = async (chosen: { readonly name: string; readonly bytes: Uint8Array }, separator?: Separator) => {
    setBusy(true);
    setReport(null);
    setTrouble(null);
    try {
      const read = await tableReader().open(chosen.bytes, separator);
      if (read.ok) {
        const opened = { name: chosen.name, sheets: read.sheets, separator: read.separator, notes: read.notes };
        setList(opened);
        begin(opened, 0, said);
      } else {
        setList(null);
        setTrouble(read.reason);
      }
    } finally {
      setBusy(false);
    }
  };

  useEffect(() => {
    if (!said || !isEnough(said) || items.length === 0 || !list?.sheets.length || list.separator === null) {
      setReport(null);
      return;
    }
    let overtaken = false;
    const settings: ListSettings = {
      ...said,
      decimal: said.decimal!,
      currency: said.currency.trim().toUpperCase() || null,
      from: said.from.trim(),
    };
    tableReader()
      .report(said.sheet, settings, { items, currency, prices: pricesOf(data) })
      .then((made) => overtaken || setReport(made))
      .catch((error: Error) => overtaken || setTrouble(say.unreadable(error.message)));
    return () => {
      overtaken = true;
    };
  }, [said, items, currency, data, list]);

  return {
    list,
    said,
    report,
    trouble,
    busy,
    choose: async (chosen: File | undefined) => {
      if (!chosen) return;
      if (chosen.size > largestList) {
        setList(null);
        setTrouble(say.tooLarge);
        return;
      }
      const next = { name: chosen.name, bytes: new Uint8Array(await chosen.arrayBuffer()) };
      setFile(next);
      await open(next);
    },
    cut: (separator: Separator) => file && void open(file, separator),
    goToSheet: (sheet: number) => list && begin(list, sheet, said),
    say: (part: Partial<Said>) => said && void describe({ ...said, ...part }),
    /** Writes what was taken, as one step that can be undone. */
    take: () => {
      if (!report) return;
      const now = useWorkbench.getState();
      const before = pricesOf(now.data);
      const after = withPrices(
        before,
        report.taken.map((each) => each),
      );
      const isThere = Array.isArray(valueAt(now.data, ['site', 'prices']));
      const edits = isThere
        ? after.flatMap((entry, i) => (entry === before[i] ? [] : [[['site', 'prices', i], entry] as const]))
        : [[['site', 'prices'], after] as const];
      editText(withEdits(now.text, edits), null);
    },
  };
}

export type PriceReader = ReturnType<typeof usePriceReader>;
