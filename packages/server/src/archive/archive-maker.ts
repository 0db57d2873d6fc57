import { Worker } from 'node:worker_threads';
import type { ArchiveAnswers, ArchiveJob } from './archive-job.js';

/** Longer than the largest archive takes on a slow machine [ms]. */
const patience = 120_000;
/** For the text of a long history and what is made of it [MB]. */
const heap = 1024;

export interface ArchiveMaker {
  /** @returns what the thread has made; null when it failed, took too long or was closed */
  readonly ask: <J extends ArchiveJob>(job: J) => Promise<ArchiveAnswers[J['ask']] | null>;
  readonly close: () => Promise<void>;
}

/** One archive after the other, each in a new thread: whatever a foreign file does to its thread ends with it. */
export function archiveMaker(script: URL): ArchiveMaker {
  let last: Promise<unknown> = Promise.resolve();
  let current: Worker | undefined;
  let closed = false;

  const run = (job: ArchiveJob) =>
    new Promise<never | null>((resolve) => {
      if (closed) return resolve(null);
      const worker = new Worker(script, { resourceLimits: { maxOldGenerationSizeMb: heap } });
      current = worker;
      const timer = setTimeout(() => end(null), patience);
      const end = (answer: unknown) => {
        clearTimeout(timer);
        void worker.terminate();
        resolve(answer as never);
      };
      worker.once('message', end);
      worker.once('error', () => end(null));
      worker.once('exit', () => end(null));
      worker.postMessage(job);
    });

  return {
    ask(job) {
      const answer = last.then(() => run(job));
      last = answer;
      return answer;
    },
    async close() {
      closed = true;
      await current?.terminate();
    },
  };
}
