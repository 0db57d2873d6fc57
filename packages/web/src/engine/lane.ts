/**
 * Questions to one worker, one at a time. Only the newest waits: a question that was overtaken while the worker was busy is never
 * asked.
 */
export function lane<Q>(ask: (question: Q) => Promise<void>): (question: Q) => void {
  let busy = false;
  let waiting: { readonly question: Q } | undefined;
  const run = async (question: Q): Promise<void> => {
    busy = true;
    try {
      await ask(question);
    } finally {
      busy = false;
      const next = waiting;
      waiting = undefined;
      if (next) void run(next.question);
    }
  };
  return (question) => {
    if (busy) waiting = { question };
    else void run(question);
  };
}

/**
 * Holds questions back until none came for a while, so that work that can wait does not take the processor from what follows the
 * hand; while they keep coming, the newest is passed on at least so often [ms].
 */
export function paced<Q>(pass: (question: Q) => void, { quiet, longest }: { quiet: number; longest: number }) {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let since: number | null = null;
  return (question: Q): void => {
    const now = performance.now();
    since ??= now;
    clearTimeout(timer);
    timer = setTimeout(
      () => {
        since = null;
        pass(question);
      },
      Math.min(quiet, Math.max(0, since + longest - now)),
    );
  };
}
