import { openLeaf } from '../schedules/state.js';
import type { StepName } from '../state/store.js';
import { shelfTexts as say } from '../texts/shelf.js';

/** The way from a step to what is in force for it. */
export function LeafLinks({ step }: { readonly step: StepName }) {
  if (step !== 'needs' && step !== 'parts') return null;
  const leaf = step === 'needs' ? 'rules' : 'catalogue';
  return (
    <p>
      <button type="button" className="quiet" onClick={() => openLeaf(leaf)}>
        {say.links[leaf]}
      </button>
    </p>
  );
}
