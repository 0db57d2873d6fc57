import { useState } from 'react';
import { projectTexts as say } from '../texts/projects.js';
import type { ProjectLine } from './api.js';
import { dayAndTime } from './day.js';
import { Dialog } from './dialog.js';
import { attempt } from './projects-store.js';
import { emptyBin, putBack } from './take-in.js';

const nameOf = ({ name }: ProjectLine): string => (name === '' ? say.noName : name);

/** What was taken out: put back one by one, or thrown away for good after a question. */
export function Bin({ projects }: { readonly projects: readonly ProjectLine[] }) {
  const [asking, setAsking] = useState(false);
  return (
    <details className="group bin">
      <summary>
        <span className="title">{say.bin(projects.length)}</span>
      </summary>
      <ul>
        {projects.map((project) => (
          <li key={project.id}>
            <span>{nameOf(project)}</span>
            <button
              type="button"
              aria-label={say.putBackOf(nameOf(project))}
              onClick={() => attempt(() => putBack(project.id))}
            >
              {say.putBack}
            </button>
          </li>
        ))}
      </ul>
      <p className="empty-bin">
        <button type="button" aria-haspopup="dialog" onClick={() => setAsking(true)}>
          {say.emptying.open}
        </button>
      </p>
      {asking && <EmptyBin projects={projects} close={() => setAsking(false)} />}
    </details>
  );
}

/** Tells project by project what is lost before it is. */
function EmptyBin({ projects, close }: { readonly projects: readonly ProjectLine[]; readonly close: () => void }) {
  // What is thrown away is what this question named, whatever comes into the bin while it stands.
  const [named] = useState(projects);
  const empty = () =>
    attempt(async () => {
      close();
      await emptyBin(named.map(({ id }) => id));
    });
  return (
    <Dialog title={say.emptying.title(named.length)} onClose={close}>
      <p>{say.emptying.about}</p>
      <ul className="came-with">
        {named.map((project) => (
          <li key={project.id}>
            <p className="head">
              <span className="name">{nameOf(project)}</span>{' '}
              <span className="second">
                {say.emptying.holds(project.seq, project.revisions)}, {say.changed} {dayAndTime(project.changed)}
              </span>
            </p>
          </li>
        ))}
      </ul>
      <div className="actions">
        <button type="button" onClick={close}>
          {say.emptying.keep}
        </button>
        <button type="button" className="main-action" onClick={empty}>
          {say.emptying.empty(named.length)}
        </button>
      </div>
    </Dialog>
  );
}
