import { lazy, Suspense, useEffect, useMemo, useState } from 'react';
import type { Computed } from '../engine/contract.js';
import { fetchPackFile } from '../state/server.js';
import { useWorkbench } from '../state/store.js';
import { sheetTexts as say } from '../texts/sheets.js';
import { type SheetName, sheetsByUse } from './sheet-names.js';
import { useSheet } from './sheet-store.js';

/** Readers of reports and lists are large and only fetched for them. */
const PdfPages = lazy(() => import('./pdf-pages.js'));
const TableSheet = lazy(() => import('./table-sheet.js'));

/** A sheet as it will print, made by the same writer as the pack. */
export function SheetView({ computed }: { readonly computed: Computed }) {
  const chosen = useSheet((s) => s.name);
  const all = useMemo(() => sheetsByUse(computed.design).flatMap(([, list]) => list), [computed]);
  // An enclosure that was taken out takes its sheet with it.
  const sheet = all.find((each) => each.name === chosen) ?? all.find((each) => each.name === 'plan.svg')!;
  return <Sheet key={sheet.name} sheet={sheet} />;
}

type Made = { readonly blob: Blob; readonly url: string } | { readonly trouble: string };

function Sheet({ sheet }: { readonly sheet: SheetName }) {
  const made = useMade(sheet.name);
  const trueSize = useSheet((s) => s.trueSize);
  if (!/\.(svg|pdf|csv)$/.test(sheet.name)) return <p className="waiting">{say.noPreview}</p>;
  if (!made) return <p className="waiting">{say.previewing(sheet.title)}</p>;
  if ('trouble' in made) return <p className="waiting">{`${say.previewFailed(sheet.title)} ${made.trouble}`}</p>;
  const Reader = sheet.name.endsWith('.csv') ? TableSheet : sheet.name.endsWith('.pdf') ? PdfPages : null;
  if (Reader)
    return (
      <Suspense fallback={<p className="waiting">{say.previewing(sheet.title)}</p>}>
        <Reader title={sheet.title} blob={made.blob} />
      </Suspense>
    );
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a large sheet is scrolled by keys
    <section className={trueSize ? 'printed-sheet true-size' : 'printed-sheet'} aria-label={sheet.title} tabIndex={0}>
      <img className="printed" src={made.url} alt={sheet.title} />
      <fieldset className="sheet-size">
        <legend className="visually-hidden">{sheet.title}</legend>
        {([false, true] as const).map((size) => (
          <button
            key={String(size)}
            type="button"
            aria-pressed={trueSize === size}
            onClick={() => useSheet.setState({ trueSize: size })}
          >
            {size ? say.trueSize : say.fit}
          </button>
        ))}
      </fieldset>
    </section>
  );
}

/** A file of the brief as it stands; the last one stays until the next is there. */
function useMade(name: string): Made | null {
  const text = useWorkbench((s) => s.text);
  const readable = useWorkbench((s) => s.problems.length === 0);
  const [made, setMade] = useState<Made | null>(null);
  useEffect(() => {
    if (!readable) return;
    const gone = new AbortController();
    let url: string | undefined;
    fetchPackFile(text, name, gone.signal).then(
      (blob) => {
        if (gone.signal.aborted) return;
        url = URL.createObjectURL(blob);
        setMade({ blob, url });
      },
      (error: Error) => gone.signal.aborted || setMade({ trouble: error.message }),
    );
    return () => {
      gone.abort();
      if (url) URL.revokeObjectURL(url);
    };
  }, [text, readable, name]);
  return made;
}
