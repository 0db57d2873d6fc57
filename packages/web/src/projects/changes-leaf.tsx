import { type Cost, costText } from '@cloche/engine';
import { read, useWorkbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import type { Revision } from './api.js';
import { dayAndTime } from './day.js';
import { ask, attempt, useProjects } from './projects-store.js';
import { revisionText, useRevisions } from './revisions.js';
import { shortHash } from './short-hash.js';
import { VerdictTally } from './verdict-tally.js';

const say = projectTexts.revision;

/** The step Changes: what was named, to be read, taken back and compared. */
export function ChangesLeaf() {
  const revisions = useRevisions((s) => s.revisions);
  const told = useProjects((s) => s.told);
  return (
    <>
      <div className="actions">
        <button type="button" className="main-action" onClick={() => ask('revision')}>
          {projectTexts.nameIt}
        </button>
      </div>
      {told && <p role="status">{told}</p>}
      {revisions?.length === 0 && <p className="second">{say.none}</p>}
      <ol className="revisions" aria-label={say.title}>
        {revisions?.map((revision) => (
          <RevisionLine key={revision.number} revision={revision} />
        ))}
      </ol>
    </>
  );
}

function RevisionLine({ revision }: { readonly revision: Revision }) {
  const { number, name, note, by, at, hash, verdicts, cost } = revision;
  const current = useWorkbench((s) => s.reading?.number === number);
  const open = async () => read({ number, name, text: await revisionText(number) });
  return (
    <li aria-current={current || undefined}>
      <p className="head">
        <span className="number">{number}</span>
        <span className="name">{name}</span>
        <span className="hash second" title={hash}>
          {shortHash(hash)}
        </span>
      </p>
      <p className="facts">
        <VerdictTally verdicts={verdicts} />
        <RevisionCost cost={cost} />
      </p>
      <p className="second">
        <time dateTime={at}>{dayAndTime(at)}</time>
        {by !== '' && ` ${say.by_(by)}`}
      </p>
      {note !== '' && <p className="note-text">{note}</p>}
      <p className="foot">
        <button
          type="button"
          className="quiet"
          aria-label={say.openOf(number)}
          disabled={current}
          onClick={() => attempt(open)}
        >
          {say.open}
        </button>
      </p>
    </li>
  );
}

/** What everything to buy cost when the revision was named; what has no price is said, not left out in silence. */
function RevisionCost({ cost }: { readonly cost: Cost | null }) {
  if (cost === null) return <span className="second">{say.noCost}</span>;
  return (
    <span className="number cost">
      {costText(cost)}
      {cost.amount !== null && cost.unpriced > 0 && <span className="second"> {say.unpriced(cost.unpriced)}</span>}
    </span>
  );
}
