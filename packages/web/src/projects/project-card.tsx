import { projectTexts as say } from '../texts/projects.js';
import { firstOf, hashOf } from './address.js';
import { type ProjectLine, pictureOf } from './api.js';
import { dayAndTime } from './day.js';
import { handOverProject } from './export-dialog.js';
import { attempt } from './projects-store.js';
import { takeOut } from './take-in.js';
import { VerdictTally } from './verdict-tally.js';

/** One project as a small drawing sheet: its plan, and a title block with what there is to know about it. */
export function ProjectCard({ project }: { readonly project: ProjectLine }) {
  const { id, revisions, verdicts, changed } = project;
  const name = project.name === '' ? say.noName : project.name;
  return (
    <li className="small-sheet">
      <a href={hashOf(firstOf(id))}>
        <span className="picture">
          {project.hasPicture ? (
            <img src={pictureOf(project)} alt="" loading="lazy" />
          ) : (
            <span className="second">{say.noPicture}</span>
          )}
        </span>
        <span className="name">{name}</span>
      </a>
      <div className="facts">
        <span className="second">
          {say.changed} <time dateTime={changed}>{dayAndTime(changed)}</time>
          {revisions > 0 && `, ${say.revisions(revisions)}`}
        </span>
        <VerdictTally verdicts={verdicts} />
      </div>
      <div className="card-actions">
        <button
          type="button"
          className="quiet"
          aria-label={say.exportOf(name)}
          onClick={() => attempt(() => handOverProject(id))}
        >
          {say.export}
        </button>
        <button
          type="button"
          className="quiet"
          aria-label={say.removeOf(name)}
          onClick={() => attempt(() => takeOut(id, name))}
        >
          {say.remove}
        </button>
      </div>
    </li>
  );
}
