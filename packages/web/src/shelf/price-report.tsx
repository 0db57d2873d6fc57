import { priceTexts as say } from '../texts/shelf.js';
import type { PriceReport } from './price-list.js';
import type { PriceReader } from './use-price-list.js';

const mostShown = 100;

/** What would become of each row, with the rows that only a person can decide on top. */
export function PriceReportView({ report, reader }: { readonly report: PriceReport; readonly reader: PriceReader }) {
  const confirmed = reader.said?.confirmed ?? new Map<number, string>();
  const confirm = (row: number, item: string, yes: boolean) => {
    const next = new Map(confirmed);
    if (yes) next.set(row, item);
    else next.delete(row);
    reader.say({ confirmed: next });
  };
  const left = report.refused.length - mostShown;
  return (
    <section className="price-report">
      <p role="status">
        <strong>{say.tally(report.taken.length, report.unchanged.length, report.refused.length)}</strong>
      </p>
      {report.near.length > 0 && (
        <fieldset>
          <legend>{say.near}</legend>
          <p className="second">{say.nearAbout}</p>
          {report.near.slice(0, mostShown).map(({ row, text, item, name }) => (
            <label key={row} className="tick">
              <input
                type="checkbox"
                checked={confirmed.get(row) === item}
                onChange={(e) => confirm(row, item, e.target.checked)}
              />
              {say.nearRow(row, text, name)}
            </label>
          ))}
        </fieldset>
      )}
      {report.refused.length > 0 && (
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a long list is scrolled by keys
        <section className="preview" tabIndex={0} aria-label={say.refused}>
          <table className="refused-rows">
            <caption>{say.refused}</caption>
            <thead>
              <tr>
                <th scope="col">{say.row}</th>
                <th scope="col">{say.text}</th>
                <th scope="col">{say.reason}</th>
              </tr>
            </thead>
            <tbody>
              {report.refused.slice(0, mostShown).map(({ row, text, reason }) => (
                <tr key={row}>
                  <th scope="row">{row}</th>
                  <td>{text}</td>
                  <td>{reason}</td>
                </tr>
              ))}
            </tbody>
          </table>
          {left > 0 && <p className="second">{say.moreRefused(left)}</p>}
        </section>
      )}
    </section>
  );
}
