import type { Store } from '@cloche/store';
import type { LiveHub } from './live/live-hub.js';
import type { ServerOptions } from './options.js';
import type { StockInForce } from './stock.js';

/** What the routes work with. */
export interface ServerContext {
  readonly options: ServerOptions;
  readonly store: Store;
  readonly live: LiveHub;
  readonly stock: StockInForce;
  /** ISO 8601. */
  readonly now: () => string;
}
