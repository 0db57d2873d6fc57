import { verdictsInOrder } from '../notes/verdict-groups.js';
import { VerdictMark } from '../notes/verdict-mark.js';
import type { VerdictCount } from './api.js';
import { countOf } from './count-verdicts.js';

/** How many findings of each verdict; none where nobody has computed them yet. */
export function VerdictTally({ verdicts }: { readonly verdicts: VerdictCount | null }) {
  return (
    <span className="verdict-tally">
      {verdicts &&
        verdictsInOrder.map((verdict) => (
          <span key={verdict} className="tally-item">
            <VerdictMark verdict={verdict} />
            {countOf(verdicts, verdict)}
          </span>
        ))}
    </span>
  );
}
