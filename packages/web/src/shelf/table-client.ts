import { type Remote, wrap } from 'comlink';
import type { Tables } from './table-worker.js';

let remote: Remote<Tables> | undefined;

/** The reader of price lists in its worker, started when the first list comes. */
export function tableReader(): Remote<Tables> {
  remote ??= wrap<Tables>(new Worker(new URL('./table-worker.ts', import.meta.url), { type: 'module' }));
  return remote;
}
