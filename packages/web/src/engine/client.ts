import type { OverlayMark } from '@cloche/engine';
import { wrap } from 'comlink';
import { texts } from '../texts.js';
import type { Answer, Engine, Problem, Shelf, TextFile } from './contract.js';

export interface EngineClient {
  readonly prepare: (
    catalogueFiles: readonly TextFile[],
    ruleTexts: Readonly<Record<string, string>>,
  ) => Promise<Shelf>;
  /** Computes a brief. Only the newest brief waits: one that was overtaken while the worker was busy is never answered. */
  readonly overlayMarks: (id: string) => Promise<readonly OverlayMark[]>;
  readonly compute: (briefText: string, answered: (answer: Answer) => void) => void;
}

/** A fault of the engine, told like a problem so that the page lives on and the brief can be saved. */
const bugProblem = (error: unknown): Problem => ({
  code: 'workbench/bug',
  path: [],
  message: `${texts.engineBug} ${error instanceof Error ? error.message : String(error)}`,
  hint: texts.engineBugHint,
});

/** The engine in its worker. */
export function engineClient(): EngineClient {
  const remote = wrap<Engine>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));
  let busy = false;
  let waiting: readonly [string, (answer: Answer) => void] | undefined;
  const run = async (text: string, answered: (answer: Answer) => void): Promise<void> => {
    busy = true;
    try {
      answered(await remote.compute(text));
    } catch (error) {
      answered({ ok: false, problems: [bugProblem(error)] });
    } finally {
      busy = false;
      const next = waiting;
      waiting = undefined;
      if (next) void run(...next);
    }
  };
  return {
    prepare: (catalogueFiles, ruleTexts) => remote.prepare(catalogueFiles, ruleTexts),
    overlayMarks: (id) => remote.overlayMarks(id),
    compute: (text, answered) => {
      if (busy) waiting = [text, answered];
      else void run(text, answered);
    },
  };
}
