import { wrap } from 'comlink';
import type { DxfProblem, LineDrawing } from './dxf-lines.js';
import type { DxfReader } from './dxf-worker.js';

/** Longer than this no drawing of a room takes to read [ms]. */
const patience = 20_000;

/** Reads a line drawing in a worker of its own, which is ended when it takes too long. */
export async function readDxf(text: string): Promise<LineDrawing | DxfProblem> {
  const worker = new Worker(new URL('./dxf-worker.ts', import.meta.url), { type: 'module' });
  let waiting: ReturnType<typeof setTimeout> | undefined;
  const late = new Promise<DxfProblem>((done) => {
    waiting = setTimeout(() => done('too-large'), patience);
  });
  try {
    return await Promise.race([wrap<DxfReader>(worker).read(text), late]);
  } catch {
    return 'unreadable';
  } finally {
    clearTimeout(waiting);
    worker.terminate();
  }
}
