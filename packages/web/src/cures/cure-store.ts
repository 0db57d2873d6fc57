import { proxy, wrap } from 'comlink';
import { create } from 'zustand';
import { fetchTexts } from '../state/server.js';
import { editText, useWorkbench } from '../state/store.js';
import { withCure } from './apply.js';
import type { Cure, CureFinder, CureSearch } from './contract.js';

export type CureState =
  | { readonly state: 'searching'; readonly share: number }
  | { readonly state: 'found'; readonly search: CureSearch }
  | { readonly state: 'failed'; readonly why: string };

/** The search for one finding in the brief as it stands; an edit of the brief ends it. */
export const useCures = create<{ readonly of: string | null; readonly now: CureState | null }>(() => ({
  of: null,
  now: null,
}));

let worker: Worker | null = null;

export function stopSearch(): void {
  worker?.terminate();
  worker = null;
  useCures.setState({ of: null, now: null });
}

/** Looks for cures of a finding. */
export async function searchFor(id: string): Promise<void> {
  stopSearch();
  useCures.setState({ of: id, now: { state: 'searching', share: 0 } });
  const own = new Worker(new URL('./cure-worker.ts', import.meta.url), { type: 'module' });
  worker = own;
  const tell = (now: CureState) => {
    if (worker === own) useCures.setState({ now });
  };
  try {
    const { catalogue, rules } = await fetchTexts();
    const stock = { briefText: useWorkbench.getState().text, catalogueFiles: catalogue, ruleTexts: rules };
    const finder = wrap<CureFinder>(own);
    const told = proxy(({ done, of }: { done: number; of: number }) => tell({ state: 'searching', share: done / of }));
    tell({ state: 'found', search: await finder.find(stock, id, told) });
  } catch (error) {
    tell({ state: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
  own.terminate();
}

/** Writes a cure into the brief; one step of undo. */
export const applyCure = (cure: Cure): void => editText(withCure(useWorkbench.getState().text, cure.edits), null);

// What was found belongs to one state of the brief.
useWorkbench.subscribe((now, before) => {
  if (now.text !== before.text && useCures.getState().of !== null) stopSearch();
});
