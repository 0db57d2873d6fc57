import { useEffect, useState } from 'react';
import { fetchPackFile } from '../state/server.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

/** The plan as it will be printed, made by the same writer as the pack. */
export function PrintedPlan() {
  const text = useWorkbench((s) => s.text);
  const readable = useWorkbench((s) => s.problems.length === 0);
  const [shown, setShown] = useState<{ readonly url: string } | { readonly trouble: string } | null>(null);
  useEffect(() => {
    if (!readable) return;
    const gone = new AbortController();
    let url: string | undefined;
    fetchPackFile(text, 'plan.svg', gone.signal).then(
      (blob) => {
        if (gone.signal.aborted) return;
        url = URL.createObjectURL(blob);
        setShown({ url });
      },
      (error: Error) => gone.signal.aborted || setShown({ trouble: error.message }),
    );
    return () => {
      gone.abort();
      if (url) URL.revokeObjectURL(url);
    };
  }, [text, readable]);
  if (!shown) return <p className="waiting">{texts.sheets.previewing}</p>;
  if ('trouble' in shown) return <p className="waiting">{`${texts.sheets.failed} ${shown.trouble}`}</p>;
  return <img className="printed" src={shown.url} alt={texts.views.sheet} />;
}
