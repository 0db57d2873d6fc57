import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { PackEnd, PackFonts, PackJob, PackNews, PackProgress } from './pack-job.js';

export interface PackMakers {
  /**
   * Makes one pack in a thread of its own.
   * @returns how it ended; null when it was cancelled
   */
  readonly make: (
    job: PackJob,
    signal: AbortSignal,
    onProgress?: (news: PackProgress) => void,
  ) => Promise<PackEnd | null>;
  readonly close: () => Promise<void>;
}

/** A core is left to the server itself, and to the browser beside it. */
const most = Math.max(1, Math.min(2, availableParallelism() - 1));

/**
 * Threads that make packs: started when first needed, kept for the next pack. A job that is cancelled while it runs takes its thread
 * with it, since nothing else stops a computation in the middle.
 */
export function packMakers(url: URL, fonts: PackFonts): PackMakers {
  const idle: Worker[] = [];
  const busy = new Set<Worker>();
  let waiting: (() => void)[] = [];

  const started = (): Worker => {
    const worker = new Worker(url, { workerData: fonts });
    // A thread that ends while it is idle is forgotten; while it works, the job itself tells.
    worker.on('error', () => undefined);
    worker.on('exit', () => {
      const place = idle.indexOf(worker);
      if (place >= 0) idle.splice(place, 1);
    });
    return worker;
  };
  const free = async (signal: AbortSignal): Promise<Worker | null> => {
    while (busy.size >= most && !signal.aborted)
      await new Promise<void>((resolve) => {
        waiting.push(resolve);
        signal.addEventListener('abort', () => resolve(), { once: true });
      });
    if (signal.aborted) return null;
    const worker = idle.pop() ?? started();
    busy.add(worker);
    return worker;
  };
  const release = (worker: Worker, keep: boolean) => {
    busy.delete(worker);
    if (keep) idle.push(worker);
    else void worker.terminate();
    const all = waiting;
    waiting = [];
    for (const go of all) go();
  };

  return {
    async make(job, signal, onProgress) {
      const worker = await free(signal);
      if (!worker) return null;
      const end = await run(worker, job, signal, onProgress);
      release(worker, end !== null && end.news !== 'fault');
      return end;
    },
    async close() {
      await Promise.all([...idle, ...busy].map((worker) => worker.terminate()));
    },
  };
}

function run(
  worker: Worker,
  job: PackJob,
  signal: AbortSignal,
  onProgress: ((news: PackProgress) => void) | undefined,
): Promise<PackEnd | null> {
  return new Promise((resolve) => {
    const end = (news: PackEnd | null) => {
      worker.off('message', hear).off('error', fail).off('exit', fail);
      signal.removeEventListener('abort', cancel);
      resolve(news);
    };
    const hear = (news: PackNews) => (news.news === 'progress' ? onProgress?.(news) : end(news));
    const fail = (why: unknown) => end({ news: 'fault', message: String(why) });
    const cancel = () => end(null);
    signal.addEventListener('abort', cancel, { once: true });
    worker.on('message', hear).on('error', fail).on('exit', fail);
    worker.postMessage(job);
  });
}
