import { useState } from 'react';
import { withEdits } from '../brief/document.js';
import { editText, useWorkbench } from '../state/store.js';
import type { CellInput, EditPlan, Refusal } from './plan-edits.js';

interface Outcome {
  readonly refused: readonly Refusal[];
  /** Cells that the last edit took. */
  readonly taken: number;
}

const nothing: Outcome = { refused: [], taken: 0 };

/**
 * What became of what was typed and pasted: edits go into the brief, refusals stay until their cell is written again.
 * @param answers whether a new input stands for one that was refused
 */
export function useOutcome(answers: (input: CellInput, refusal: Refusal) => boolean) {
  const [outcome, setOutcome] = useState(nothing);
  return {
    outcome,
    take: (inputs: readonly CellInput[], plan: EditPlan): void => {
      if (plan.edits.length > 0) editText(withEdits(useWorkbench.getState().text, plan.edits), null);
      const kept = outcome.refused.filter((refusal) => !inputs.some((input) => answers(input, refusal)));
      setOutcome({ refused: [...kept, ...plan.refused], taken: plan.taken });
    },
    forgetRefused: () => setOutcome(nothing),
  };
}
