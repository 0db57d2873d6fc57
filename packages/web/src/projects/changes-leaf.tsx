import { useEffect } from 'react';
import { create } from 'zustand';
import { read, useWorkbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import { fetchRevision, fetchRevisions, type Revision } from './api.js';
import { dayAndTime } from './day.js';
import { ask, attempt, useProjects } from './projects-store.js';
import { shortHash } from './short-hash.js';
import { VerdictTally } from './verdict-tally.js';

const say = projectTexts.revision;

/** Revisions of the project in hand, newest first; null until they came. */
export const useRevisions = create<{ readonly revisions: readonly Revision[] | null }>(() => ({ revisions: null }));

async function refresh(project: string): Promise<void> {
  const revisions = await fetchRevisions(project);
  if (useWorkbench.getState().project === project)
    useRevisions.setState({ revisions: [...revisions].sort((a, b) => b.number - a.number) });
}

/** The step Changes: what was named, to be read, taken back and compared. */
export function ChangesLeaf() {
  const project = useWorkbench((s) => s.project);
  const news = useWorkbench((s) => s.revisionNews);
  const revisions = useRevisions((s) => s.revisions);
  const told = useProjects((s) => s.told);
  // biome-ignore lint/correctness/useExhaustiveDependencies: news from the server is the reason to fetch again
  useEffect(() => {
    if (project !== null) void attempt(() => refresh(project));
  }, [project, news]);
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
  const { number, name, note, by, at, hash, verdicts } = revision;
  const current = useWorkbench((s) => s.reading?.number === number);
  const open = async () => {
    const { project } = useWorkbench.getState();
    if (project !== null) read({ number, name, text: (await fetchRevision(project, number)).text });
  };
  return (
    <li aria-current={current || undefined}>
      <p className="head">
        <span className="number">{number}</span>
        <span className="name">{name}</span>
        <span className="hash second" title={hash}>
          {shortHash(hash)}
        </span>
      </p>
      <p className="second">
        <time dateTime={at}>{dayAndTime(at)}</time>
        {by !== '' && ` ${say.by_(by)}`}
      </p>
      {note !== '' && <p className="note-text">{note}</p>}
      <p className="foot">
        <VerdictTally verdicts={verdicts} />
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
