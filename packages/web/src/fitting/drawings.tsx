import { useEffect, useMemo, useState } from 'react';
import type { Computed } from '../engine/contract.js';
import { type SheetName, sheetsByUse } from '../sheets/sheet-names.js';
import { keptOrMade } from '../state/offline.js';
import { fetchPackFile } from '../state/server.js';
import { useWorkbench } from '../state/store.js';
import { fittingTexts as say } from '../texts/fitting.js';

/** The drawings that a fitter works from. */
export const drawingsOf = (computed: Computed): readonly SheetName[] =>
  sheetsByUse(computed.design).find(([use]) => use === 'drawing')?.[1] ?? [];

export function Drawings({ computed }: { readonly computed: Computed }) {
  const sheets = useMemo(() => drawingsOf(computed), [computed]);
  return (
    <ul className="drawings">
      {sheets.map((sheet) => (
        <li key={sheet.name}>
          <h2>{sheet.title}</h2>
          <Drawing sheet={sheet} revision={computed.revision} />
        </li>
      ))}
    </ul>
  );
}

function Drawing({ sheet, revision }: { readonly sheet: SheetName; readonly revision: string }) {
  const text = useWorkbench((s) => s.text);
  const [url, setUrl] = useState<string | null>(null);
  const [failed, setFailed] = useState(false);
  const [large, setLarge] = useState(false);
  useEffect(() => {
    const gone = new AbortController();
    let made: string | null = null;
    keptOrMade(revision, sheet.name, () => fetchPackFile(text, sheet.name, gone.signal)).then(
      (blob) => {
        if (gone.signal.aborted) return;
        made = URL.createObjectURL(blob);
        setUrl(made);
        setFailed(false);
      },
      // What was drawn before stays where the network is gone.
      () => gone.signal.aborted || setFailed(true),
    );
    return () => {
      gone.abort();
      if (made) URL.revokeObjectURL(made);
    };
  }, [text, sheet.name, revision]);
  if (!url) return <p className="second">{failed ? say.drawingFailed(sheet.title) : say.drawing(sheet.title)}</p>;
  return (
    <div className={large ? 'frame large' : 'frame'}>
      <button type="button" aria-pressed={large} aria-label={say.larger(sheet.title)} onClick={() => setLarge(!large)}>
        <img src={url} alt="" />
      </button>
    </div>
  );
}
