import { parse } from 'csv-parse/browser/esm/sync';
import { useEffect, useState } from 'react';

/** A list as rows and columns. */
export default function TableSheet({ title, blob }: { readonly title: string; readonly blob: Blob }) {
  const [rows, setRows] = useState<readonly (readonly string[])[]>([]);
  useEffect(() => {
    void blob.text().then((text) => setRows(parse(text, { bom: true, relaxColumnCount: true }) as string[][]));
  }, [blob]);
  const [head, ...body] = rows;
  if (!head) return null;
  const numeric = head.map((_, k) => body.every((row) => /^-?[\d.]*$/.test(row[k] ?? '')));
  const classOf = (k: number) => (numeric[k] ? 'number' : undefined);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a long list is scrolled by keys
    <section className="table-sheet" aria-label={title} tabIndex={0}>
      <table>
        <caption>{title}</caption>
        <thead>
          <tr>
            {head.map((each, k) => (
              <th key={each} scope="col" className={classOf(k)}>
                {spoken(each)}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {body.map((row, i) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place
            <tr key={i}>
              {head.map((each, k) => (
                <td key={each} className={classOf(k)}>
                  {row[k]}
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

/** `partNumber` and `part_number` as words. */
const spoken = (name: string): string =>
  name
    .replaceAll('_', ' ')
    .replace(/([a-z])([A-Z])/g, '$1 $2')
    .toLowerCase();
