import { useState } from 'react';
import { handOver } from '../state/file.js';
import { fetchPack } from '../state/server.js';
import { show, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

type Making = { readonly state: 'idle' | 'making' | 'made' } | { readonly state: 'failed'; readonly why: string };

/** The pack of this revision, made by the server and handed over as one file. */
export function SheetsLeaf() {
  const readable = useWorkbench((s) => s.problems.length === 0 && s.computed !== null);
  const [making, setMaking] = useState<Making>({ state: 'idle' });
  const make = async () => {
    setMaking({ state: 'making' });
    try {
      const { text, fileName } = useWorkbench.getState();
      handOver(await fetchPack(text), `${fileName.replace(/\.[^.]*$/, '')}-pack.zip`);
      setMaking({ state: 'made' });
    } catch (error) {
      setMaking({ state: 'failed', why: error instanceof Error ? error.message : String(error) });
    }
  };
  return (
    <>
      <p>{texts.sheets.contents}</p>
      <p>{texts.block.unsigned}</p>
      <div className="actions">
        <button type="button" className="main-action" disabled={!readable || making.state === 'making'} onClick={make}>
          {texts.sheets.make}
        </button>
        <button type="button" onClick={() => show('sheet')} disabled={!readable}>
          {texts.sheets.preview}
        </button>
      </div>
      <p role="status">{toldOf(making)}</p>
      {making.state === 'making' && <progress aria-label={texts.sheets.making} />}
    </>
  );
}

function toldOf(making: Making): string {
  switch (making.state) {
    case 'idle':
      return '';
    case 'making':
      return texts.sheets.making;
    case 'made':
      return texts.sheets.made;
    case 'failed':
      return `${texts.sheets.failed} ${making.why}`;
  }
}
