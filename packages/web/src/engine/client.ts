import type { OverlayMark } from '@cloche/engine';
import { wrap } from 'comlink';
import { texts } from '../texts.js';
import type { Answer, ComparisonAnswer, Engine, Problem, Shelf, TextFile } from './contract.js';

export interface EngineClient {
  readonly prepare: (
    catalogueFiles: readonly TextFile[],
    ruleTexts: Readonly<Record<string, string>>,
  ) => Promise<Shelf>;
  readonly overlayMarks: (id: string) => Promise<readonly OverlayMark[]>;
  /** Computes a brief. Only the newest brief waits: one that was overtaken while the worker was busy is never answered. */
  readonly compute: (briefText: string, answered: (answer: Answer) => void) => void;
  /** Lays two briefs beside each other, the newest pair only. */
  readonly compare: (texts: readonly [string, string], answered: (answer: ComparisonAnswer) => void) => void;
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
  return {
    prepare: (catalogueFiles, ruleTexts) => remote.prepare(catalogueFiles, ruleTexts),
    overlayMarks: (id) => remote.overlayMarks(id),
    compute: newestOnly<string, Answer>(
      async (text) => remote.compute(text),
      (bug) => ({ ok: false, problems: [bug] }),
    ),
    compare: newestOnly<readonly [string, string], ComparisonAnswer>(
      async ([before, after]) => remote.compare(before, after),
      (bug) => ({ ok: false, problems: { before: [], after: [bug] } }),
    ),
  };
}

/** Asks one thing after the other; while one is asked, only the newest waits. A fault is answered as a problem. */
function newestOnly<Asked, Given>(
  ask: (asked: Asked) => Promise<Given>,
  failed: (bug: Problem) => Given,
): (asked: Asked, answered: (given: Given) => void) => void {
  let busy = false;
  let waiting: readonly [Asked, (given: Given) => void] | undefined;
  const run = async (asked: Asked, answered: (given: Given) => void): Promise<void> => {
    busy = true;
    try {
      answered(await ask(asked));
    } catch (error) {
      answered(failed(bugProblem(error)));
    } finally {
      busy = false;
      const next = waiting;
      waiting = undefined;
      if (next) void run(...next);
    }
  };
  return (asked, answered) => {
    if (busy) waiting = [asked, answered];
    else void run(asked, answered);
  };
}
