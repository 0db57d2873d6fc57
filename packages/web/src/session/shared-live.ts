import type { Step } from './steps.js';
import type { Heard, Stop } from './wire.js';

/** What one window hears of the server and tells the others. */
type News =
  | { readonly event: 'opened' | 'revision' | 'gone' }
  | { readonly event: 'steps'; readonly steps: readonly Step[] };

/** Wait before listening again where the browser does not do it by itself [ms]. */
const pause = 5000;

/**
 * Listens to a project while the page is in sight. A browser opens only a few connections to one server at a time, so of all
 * windows that look at one project one listens and tells the others; when it is closed or laid aside, another takes its place,
 * and all ask for what they may have missed. Windows in the background catch up when they are shown again. Where the browser
 * cannot choose one among its windows (it can on this machine itself, or over https), each listens for itself.
 */
export function listen(path: string, heard: Heard): Stop {
  const name = `cloche.live/${new URL(path, document.baseURI).pathname}`;
  const channel = 'BroadcastChannel' in window && navigator.locks ? new BroadcastChannel(name) : null;
  const hear = (news: News): void => {
    if (news.event === 'steps') heard.steps(news.steps);
    else heard[news.event]();
  };
  const told = (news: News): void => {
    hear(news);
    channel?.postMessage(news);
  };
  let stop: Stop | null = null;
  const begin = (): void => {
    if (!channel) {
      stop = connection(path, told);
      return;
    }
    channel.onmessage = ({ data }) => hear(data as News);
    stop = inTurn(name, () => connection(path, told));
    // Another window may be listening already, and has told what this one has not heard.
    heard.opened();
  };
  const end = (): void => {
    stop?.();
    stop = null;
    if (channel) channel.onmessage = null;
  };
  const onSight = (): void => {
    end();
    if (document.visibilityState === 'visible') begin();
  };
  document.addEventListener('visibilitychange', onSight);
  onSight();
  return () => {
    document.removeEventListener('visibilitychange', onSight);
    end();
    channel?.close();
  };
}

/** Runs as soon as no other window does, until it is stopped. */
function inTurn(name: string, run: () => Stop): Stop {
  const left = new AbortController();
  let leave: (() => void) | null = null;
  const turn = (): Promise<void> | undefined => {
    if (left.signal.aborted) return undefined;
    const stop = run();
    return new Promise((resolve) => {
      leave = () => {
        stop();
        resolve();
      };
    });
  };
  navigator.locks.request(name, { signal: left.signal }, turn).catch(() => undefined);
  return () => {
    left.abort();
    leave?.();
  };
}

/** One connection of this window's own. */
function connection(path: string, told: (news: News) => void): Stop {
  let source: EventSource | null = null;
  let again: ReturnType<typeof setTimeout> | undefined;
  const begin = (): void => {
    const opened = new EventSource(path);
    source = opened;
    opened.addEventListener('open', () => told({ event: 'opened' }));
    opened.addEventListener('steps', ({ data }) =>
      told({ event: 'steps', steps: (JSON.parse(data) as { readonly steps: readonly Step[] }).steps }),
    );
    opened.addEventListener('revision', () => told({ event: 'revision' }));
    opened.addEventListener('gone', () => told({ event: 'gone' }));
    opened.addEventListener('error', () => {
      if (opened.readyState === EventSource.CLOSED) again = setTimeout(begin, pause);
    });
  };
  begin();
  return () => {
    clearTimeout(again);
    source?.close();
  };
}
