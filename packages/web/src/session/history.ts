import { inverse, type NewStep, type Splice } from './steps.js';

/** Something that is undone in one go. */
interface Entry {
  readonly group: string;
  readonly splices: readonly Splice[];
  readonly below: Entry | null;
}

/** What can be undone and what can be done again, newest on top. No texts: splices lead from one to the next, so nothing limits it. */
export interface History {
  readonly done: Entry | null;
  readonly undone: Entry | null;
}

export const emptyHistory: History = { done: null, undone: null };

/** History is a fold over the steps of a project, whichever window made them. */
export function withStep({ done, undone }: History, { kind, group, splices }: Omit<NewStep, 'window'>): History {
  switch (kind) {
    case 'edit':
      return done?.group === group
        ? { done: { ...done, splices: [...done.splices, ...splices] }, undone: null }
        : { done: { group, splices, below: done }, undone: null };
    case 'undo':
      return done ? { done: done.below, undone: { ...done, below: undone } } : { done, undone };
    case 'redo':
      return undone ? { done: { ...undone, below: done }, undone: undone.below } : { done, undone };
  }
}

export const withSteps = (history: History, steps: readonly Omit<NewStep, 'window'>[]): History =>
  steps.reduce(withStep, history);

export type HistoryStep = Omit<NewStep, 'window'>;

/** The step that takes the last entry back. */
export const undoStep = ({ done }: History): HistoryStep | null =>
  done && { kind: 'undo', group: done.group, splices: inverse(done.splices) };

/** The step that does again what was last undone. */
export const redoStep = ({ undone }: History): HistoryStep | null =>
  undone && { kind: 'redo', group: undone.group, splices: undone.splices };
