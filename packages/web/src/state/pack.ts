import { create } from 'zustand';
import { fetchPack, type MadeFile } from './server.js';
import { useWorkbench } from './store.js';

/** How far the pack is; it goes on while other sheets are looked at. */
export type PackState =
  | { readonly state: 'idle' | 'stopped' }
  | { readonly state: 'making'; readonly done: readonly string[]; readonly share: number }
  | { readonly state: 'made'; readonly files: readonly MadeFile[]; readonly brief: string }
  | { readonly state: 'failed'; readonly why: string };

export const usePack = create<{ readonly pack: PackState }>(() => ({ pack: { state: 'idle' } }));

const set = (pack: PackState): void => usePack.setState({ pack });
let current: AbortController | null = null;

/** Makes all files of the brief as it stands now. */
export async function makePack(): Promise<void> {
  current?.abort();
  const own = new AbortController();
  current = own;
  const { text } = useWorkbench.getState();
  const done: string[] = [];
  set({ state: 'making', done, share: 0 });
  try {
    const files = await fetchPack(text, own.signal, (name, share) => {
      done.push(name);
      if (current === own) set({ state: 'making', done: [...done], share });
    });
    if (current === own) set({ state: 'made', files, brief: text });
  } catch (error) {
    if (current === own) set({ state: 'failed', why: error instanceof Error ? error.message : String(error) });
  }
}

/** Closes the request; the server then stops its work. */
export function stopPack(): void {
  current?.abort();
  current = null;
  set({ state: 'stopped' });
}

// Files of one brief are never offered beside another.
useWorkbench.subscribe((now, before) => {
  if (now.opened === before.opened) return;
  current?.abort();
  current = null;
  set({ state: 'idle' });
});
