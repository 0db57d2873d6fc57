import { type Cost, inOrder, type OverlayMark } from '@cloche/engine';
import { type Remote, wrap } from 'comlink';
import { texts } from '../texts.js';
import type {
  Answer,
  ComparisonAnswer,
  Computed,
  Engine,
  Finding,
  LaterTold,
  Problem,
  Shelf,
  SoonTold,
  TextFile,
} from './contract.js';
import { lane, paced } from './lane.js';
import { patchedList, patchedRecord } from './patch.js';

export interface EngineClient {
  readonly prepare: (
    catalogueFiles: readonly TextFile[],
    ruleTexts: Readonly<Record<string, string>>,
  ) => Promise<Shelf>;
  /**
   * Computes a brief and answers twice: what follows the hand at once, and again when the heavy checks are done. The newest brief
   * wins: one that was overtaken while a worker was busy is never computed.
   */
  readonly compute: (briefText: string, answered: (answer: Answer) => void) => void;
  /** Another brief is opened: nothing of the one before is shown any more. */
  readonly open: () => void;
  /** Marks of an overlay on a brief. */
  readonly overlayMarks: (briefText: string, id: string) => Promise<readonly OverlayMark[]>;
  /** What everything to buy for a brief costs; null when it cannot be computed. */
  readonly cost: (briefText: string) => Promise<Cost | null>;
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

interface Question {
  readonly text: string;
  readonly asked: number;
  readonly opening: number;
  readonly answered: (answer: Answer) => void;
}

interface Pair {
  readonly pair: readonly [string, string];
  readonly answered: (answer: ComparisonAnswer) => void;
}

interface Soon extends Pick<Computed, 'design' | 'findings' | 'itemNames'> {
  readonly of: Question;
}

interface Later extends Pick<Computed, 'findings' | 'revision'> {
  readonly of: Question;
}

/** What is known of the brief in hand; each half belongs to the question that it answers. */
interface Known {
  readonly soon: Soon | null;
  readonly later: Later | null;
  /** Tells why the newest text cannot be used, as long as it is the newest. */
  readonly refusal: (() => void) | null;
}

const nothing: Known = { soon: null, later: null, refusal: null };

const nobody: ReadonlySet<string> = new Set();
const noFindings: readonly Finding[] = [];

/** From the edit to the answer in the page, for whoever watches the performance of the page. */
function measure(which: 'light' | 'all', of: Question): void {
  const name = `cloche ${which} findings`;
  performance.measure(name, { start: of.asked });
  performance.clearMeasures(name);
}

const newWorker = (): Remote<Engine> =>
  wrap<Engine>(new Worker(new URL('./worker.ts', import.meta.url), { type: 'module' }));

/** The engine in two workers: one follows the hand, the other runs the heavy checks behind it. */
export function engineClient(): EngineClient {
  const quick = newWorker();
  let heavy: Remote<Engine> | undefined;
  let shelf: readonly [readonly TextFile[], Readonly<Record<string, string>>] = [[], {}];
  let opening = 0;
  let known = nothing;
  // What each channel told last: patches speak of it, whatever becomes of the answer.
  let told: Omit<Soon, 'of'> | null = null;
  const laterTold = { quick: noFindings, heavy: noFindings };

  const show = () => {
    const { soon, later } = known;
    if (!soon || !later) return;
    const pending = later.of !== soon.of;
    const value = {
      design: soon.design,
      findings: inOrder([...soon.findings, ...later.findings]),
      revision: later.revision,
      itemNames: soon.itemNames,
      stale: pending ? new Set(later.findings.map((f) => f.id)) : nobody,
      pending,
    };
    soon.of.answered({ ok: true, value });
    known.refusal?.();
  };
  const takeSoon = (of: Question, patch: SoonTold) => {
    told = {
      design: patchedRecord(told?.design ?? null, patch.design),
      itemNames: patchedRecord(told?.itemNames ?? null, patch.itemNames),
      findings: patchedList(told?.findings ?? noFindings, patch.findings),
    };
    if (of.opening === opening) known = { ...known, soon: { of, ...told }, refusal: null };
  };
  const takeLater = (of: Question, by: keyof typeof laterTold, { findings, revision }: LaterTold) => {
    laterTold[by] = patchedList(laterTold[by], findings);
    if (of.opening === opening) known = { ...known, later: { of, findings: laterTold[by], revision } };
  };
  const refuse = (of: Question, problems: readonly Problem[]) => {
    if (of.opening !== opening) return;
    const refusal = () => of.answered({ ok: false, problems });
    known = { ...known, refusal };
    refusal();
  };

  const askQuick = lane(async (of: Question) => {
    try {
      if (known.later) {
        const answer = await quick.soon(of.text);
        if (!answer.ok) return refuse(of, answer.problems);
        takeSoon(of, answer.value);
        askHeavyInTime(of);
      } else {
        const answer = await quick.whole(of.text);
        if (!answer.ok) return refuse(of, answer.problems);
        takeSoon(of, answer.value.soon);
        takeLater(of, 'quick', answer.value.later);
        // Warms the second worker up.
        askHeavy(of);
      }
      if (of.opening === opening) show();
      measure('light', of);
    } catch (error) {
      refuse(of, [bugProblem(error)]);
    }
  });
  const askHeavy = lane(async (of: Question) => {
    try {
      const answer = await wakeHeavy().later(of.text);
      // What the quick worker could read, this one can.
      if (!answer.ok) return refuse(of, answer.problems);
      takeLater(of, 'heavy', answer.value);
      if (of.opening === opening) show();
      measure('all', of);
    } catch (error) {
      refuse(of, [bugProblem(error)]);
    }
  });
  const askCompare = lane(async ({ pair, answered }: Pair) => {
    try {
      answered(await wakeHeavy().compare(...pair));
    } catch (error) {
      answered({ ok: false, problems: { before: [], after: [bugProblem(error)] } });
    }
  });
  // With few cores the heavy checks would take theirs from what follows the hand.
  const askHeavyInTime = paced(askHeavy, { quiet: 100, longest: navigator.hardwareConcurrency > 2 ? 500 : 2000 });
  /** The second worker starts when the first sheet is drawn, so that it takes no time from it. */
  const wakeHeavy = (): Remote<Engine> => {
    if (heavy) return heavy;
    heavy = newWorker();
    void heavy.prepare(...shelf);
    return heavy;
  };

  return {
    prepare: (...files) => {
      shelf = files;
      void heavy?.prepare(...files);
      return quick.prepare(...files);
    },
    overlayMarks: (text, id) => wakeHeavy().overlayMarks(text, id),
    cost: async (text) => {
      const told = await wakeHeavy().cost(text);
      return told.ok ? told.value : null;
    },
    compare: (pair, answered) => askCompare({ pair, answered }),
    compute: (text, answered) => askQuick({ text, asked: performance.now(), opening, answered }),
    open: () => {
      opening++;
      known = nothing;
    },
  };
}
