import { parentPort } from 'node:worker_threads';
import type { ArchiveJob } from './archive/archive-job.js';
import { packProject } from './archive/pack-project.js';
import { unpackProject } from './archive/unpack-project.js';

/** One archive, written or read; in a thread of its own, so that a foreign file can neither stop the server nor fill its memory. */
parentPort?.once('message', (job: ArchiveJob) => {
  parentPort?.postMessage(job.ask === 'pack' ? packProject(job.project) : unpackProject(job.zip));
});
