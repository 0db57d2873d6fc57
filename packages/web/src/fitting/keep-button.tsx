import { useState } from 'react';
import type { Computed } from '../engine/contract.js';
import { handOver } from '../state/file.js';
import { fetchPackFile } from '../state/server.js';
import { useWorkbench } from '../state/store.js';
import { fittingTexts as say } from '../texts/fitting.js';
import { drawingsOf } from './drawings.js';
import type { Fitting } from './fitting.js';
import { useTicks } from './ticks.js';

/** Hands the sheet over as one file that opens anywhere. What writes it is only fetched for it. */
export function KeepButton({ fitting, computed }: { readonly fitting: Fitting; readonly computed: Computed }) {
  const [state, setState] = useState<'idle' | 'making' | 'failed'>('idle');
  const keep = async () => {
    setState('making');
    try {
      const { text } = useWorkbench.getState();
      const drawings = await Promise.all(
        drawingsOf(computed).map(async (sheet) => ({
          title: sheet.title,
          svg: await (await fetchPackFile(text, sheet.name)).text(),
        })),
      );
      const { fittingFile } = await import('./fitting-file.js');
      const page = fittingFile(fitting, drawings, useTicks.getState().done);
      handOver(new Blob([page], { type: 'text/html' }), 'fitting.html');
      setState('idle');
    } catch {
      setState('failed');
    }
  };
  return (
    <p>
      <button type="button" className="main-action" disabled={state === 'making'} onClick={() => void keep()}>
        {say.keep}
      </button>
      <span className="second" role="status">
        {state === 'making' ? say.keeping : state === 'failed' ? say.keepFailed : say.keepHint}
      </span>
    </p>
  );
}
