import { type ReactNode, useEffect, useId, useRef } from 'react';
import { handOver } from '../state/file.js';
import { priceTexts as say } from '../texts/shelf.js';
import { type Separator, separators } from './list-limits.js';
import { type PriceColumn, type PriceRow, priceColumns } from './price-list.js';
import { PriceReportView } from './price-report.js';
import { reportCsv } from './report-csv.js';
import { type PriceReader, type Said, usePriceReader } from './use-price-list.js';

/** The way of a price list into the brief: choose it, say what its columns are, look at the outcome, take it. */
export function PriceListDialog({ close }: { readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  const reader = usePriceReader();
  const { list, said, report } = reader;
  useEffect(() => dialog.current?.showModal(), []);
  return (
    <dialog ref={dialog} className="shelf-dialog price-list" aria-labelledby={`${id}-title`} onClose={close}>
      <h2 id={`${id}-title`}>{say.title}</h2>
      <p className="second">{say.about}</p>
      <div className="pairs">
        <label htmlFor={`${id}-file`}>{say.choose}</label>
        <input
          id={`${id}-file`}
          type="file"
          accept=".csv,.tsv,.txt,.xlsx"
          onChange={(e) => void reader.choose(e.target.files?.[0])}
        />
      </div>
      <p role="status" className="trouble-text">
        {reader.trouble ?? (reader.busy ? say.reading : '')}
      </p>
      {list && said && (
        <>
          {list.notes.map((note) => (
            <p key={note}>{note}</p>
          ))}
          <ListForm reader={reader} said={said} />
          <Preview rows={list.sheets[said.sheet]?.rows ?? []} said={said} />
        </>
      )}
      {report && <PriceReportView report={report} reader={reader} />}
      <p className="buttons foot">
        {report && (
          <>
            <button
              type="button"
              className="main-action"
              disabled={report.taken.length === 0}
              onClick={() => {
                reader.take();
                dialog.current?.close();
              }}
            >
              {say.take(report.taken.length)}
            </button>
            <button
              type="button"
              onClick={() => handOver(new Blob([reportCsv(report)], { type: 'text/csv' }), 'price-list-report.csv')}
            >
              {say.saveReport}
            </button>
          </>
        )}
        <button type="button" onClick={() => dialog.current?.close()}>
          {say.close}
        </button>
      </p>
    </dialog>
  );
}

function Pair({
  label,
  note,
  children,
}: {
  readonly label: string;
  readonly note?: string | false;
  readonly children: (id: string) => ReactNode;
}) {
  const id = useId();
  return (
    <>
      <label htmlFor={id}>{label}</label>
      <span>
        {children(id)}
        {note && <span className="trouble-text below">{note}</span>}
      </span>
    </>
  );
}

function ListForm({ reader, said }: { readonly reader: PriceReader; readonly said: Said }) {
  const list = reader.list!;
  const rows = list.sheets[said.sheet]?.rows ?? [];
  return (
    <div className="list-form">
      <div className="pairs">
        {list.sheets.length > 1 && (
          <Pair label={say.sheet}>
            {(id) => (
              <select id={id} value={said.sheet} onChange={(e) => reader.goToSheet(Number(e.target.value))}>
                {list.sheets.map((sheet, i) => (
                  <option key={sheet.name} value={i}>
                    {sheet.name}
                  </option>
                ))}
              </select>
            )}
          </Pair>
        )}
        {list.separator !== undefined && (
          <Pair label={say.separator} note={list.separator === null && say.doubtfulSeparator}>
            {(id) => (
              <select id={id} value={list.separator ?? ''} onChange={(e) => reader.cut(e.target.value as Separator)}>
                {list.separator === null && <option value="">{say.say}</option>}
                {separators.map((each) => (
                  <option key={each} value={each}>
                    {say.separators[each]}
                  </option>
                ))}
              </select>
            )}
          </Pair>
        )}
        <Pair label={say.headRow}>
          {(id) => (
            <select id={id} value={said.headRow} onChange={(e) => reader.say({ headRow: Number(e.target.value) })}>
              <option value={-1}>{say.noHead}</option>
              {rows.slice(0, 20).map((_, i) => (
                // biome-ignore lint/suspicious/noArrayIndexKey: rows have no other name than their number
                <option key={i} value={i}>
                  {i + 1}
                </option>
              ))}
            </select>
          )}
        </Pair>
        <Pair label={say.decimal} note={said.decimal === null && said.columns.price !== null && say.doubtfulDecimal}>
          {(id) => (
            <select
              id={id}
              value={said.decimal ?? ''}
              onChange={(e) => reader.say({ decimal: e.target.value as Said['decimal'] })}
            >
              {said.decimal === null && <option value="">{say.say}</option>}
              {(['point', 'comma'] as const).map((each) => (
                <option key={each} value={each}>
                  {say.decimals[each]}
                </option>
              ))}
            </select>
          )}
        </Pair>
        {said.daysDoubtful && (
          <Pair label={say.dateOrder} note={said.dateOrder === null && say.doubtfulDate}>
            {(id) => (
              <select
                id={id}
                value={said.dateOrder ?? ''}
                onChange={(e) => reader.say({ dateOrder: e.target.value as Said['dateOrder'] })}
              >
                {said.dateOrder === null && <option value="">{say.say}</option>}
                {(['day first', 'month first'] as const).map((each) => (
                  <option key={each} value={each}>
                    {say.dateOrders[each]}
                  </option>
                ))}
              </select>
            )}
          </Pair>
        )}
        <Pair label={say.from}>
          {(id) => (
            <input
              id={id}
              value={said.from}
              placeholder={say.fromHint}
              onChange={(e) => reader.say({ from: e.target.value })}
            />
          )}
        </Pair>
        <Pair label={say.date}>
          {(id) => (
            <input id={id} type="date" value={said.date} onChange={(e) => reader.say({ date: e.target.value })} />
          )}
        </Pair>
        <Pair label={say.currency}>
          {(id) => (
            <input
              id={id}
              value={said.currency}
              maxLength={3}
              onChange={(e) => reader.say({ currency: e.target.value })}
            />
          )}
        </Pair>
      </div>
      <fieldset className="pairs">
        <legend>{say.columnsTitle}</legend>
        {priceColumns.map((column) => (
          <ColumnPicker key={column} column={column} rows={rows} said={said} choose={reader.say} />
        ))}
        {said.columns.price === null && <p className="trouble-text whole">{say.needed}</p>}
        <label className="tick whole">
          <input
            type="checkbox"
            checked={said.unitsAsSold}
            onChange={(e) => reader.say({ unitsAsSold: e.target.checked })}
          />
          {say.unitsAsSold}
        </label>
      </fieldset>
    </div>
  );
}

const letter = (column: number): string =>
  (column >= 26 ? letter(Math.floor(column / 26) - 1) : '') + String.fromCharCode(65 + (column % 26));

function ColumnPicker({
  column,
  rows,
  said,
  choose,
}: {
  readonly column: PriceColumn;
  readonly rows: readonly PriceRow[];
  readonly said: Said;
  readonly choose: PriceReader['say'];
}) {
  const count = Math.max(0, ...rows.map((row) => row.length));
  return (
    <Pair label={say.columns[column]}>
      {(id) => (
        <select
          id={id}
          value={said.columns[column] ?? ''}
          onChange={(e) => {
            const place = e.target.value === '' ? null : Number(e.target.value);
            choose({
              columns: { ...said.columns, [column]: place },
              ...(column === 'price' ? { decimal: null } : {}),
            });
          }}
        >
          <option value="">{say.noColumn}</option>
          {Array.from({ length: count }, (_, i) => (
            <option key={letter(i)} value={i}>
              {say.column(letter(i), String(rows[said.headRow]?.[i] ?? ''))}
            </option>
          ))}
        </select>
      )}
    </Pair>
  );
}

function Preview({ rows, said }: { readonly rows: readonly PriceRow[]; readonly said: Said }) {
  const count = Math.max(0, ...rows.map((row) => row.length));
  const called = (place: number) => priceColumns.find((column) => said.columns[column] === place);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a wide list is scrolled by keys
    <section className="preview" tabIndex={0} aria-label={say.preview}>
      <table>
        <caption>{say.preview}</caption>
        <thead>
          <tr>
            <th scope="col">{say.row}</th>
            {Array.from({ length: count }, (_, i) => {
              const name = called(i);
              return (
                <th key={letter(i)} scope="col" className={name ? 'called' : ''}>
                  {name ? say.columns[name] : letter(i)}
                </th>
              );
            })}
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, 6).map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: rows have no other name than their number
            <tr key={i} className={i <= said.headRow ? 'head' : ''}>
              <th scope="row">{i + 1}</th>
              {Array.from({ length: count }, (_, k) => (
                <td key={letter(k)}>{row[k]}</td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
