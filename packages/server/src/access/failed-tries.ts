/** After so many wrong tries an address waits until the window ends. */
const most = 10;
/** [ms] */
const span = 60_000;
/** Addresses that are remembered at once. */
const mostAddresses = 10_000;

export interface FailedTries {
  readonly count: (address: string) => void;
  /** How long an address has to wait [s]; 0 when it may try. */
  readonly wait: (address: string) => number;
}

/**
 * Wrong tries by address, in windows of a minute.
 * @param clock time that only grows [ms]
 */
export function failedTries(clock: () => number = () => performance.now()): FailedTries {
  const seen = new Map<string, { readonly since: number; readonly tries: number }>();
  const current = (address: string) => {
    const entry = seen.get(address);
    return entry && clock() - entry.since < span ? entry : undefined;
  };
  return {
    count(address) {
      const entry = current(address);
      if (!entry && seen.size >= mostAddresses) seen.delete(seen.keys().next().value!);
      seen.set(address, { since: entry?.since ?? clock(), tries: (entry?.tries ?? 0) + 1 });
    },
    wait(address) {
      const entry = current(address);
      return entry && entry.tries >= most ? Math.ceil((entry.since + span - clock()) / 1000) : 0;
    },
  };
}
