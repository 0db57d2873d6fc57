import type { Conflict } from '../session/merge-data.js';
import type { Spot } from '../session/spot.js';
import { withMine } from '../session/with-mine.js';
import { askAgain, editText, read, settleConflict, takeBack, useWorkbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import { restoreProject } from './api.js';
import { attempt } from './projects-store.js';

/** What the person has to know about the text as a whole, over the lower edge of the sheet; nothing when all is well. */
export function ToldAbove() {
  const safety = useWorkbench((s) => s.safety);
  return (
    <div className="told-above">
      <ReadingStrip />
      {safety === 'gone' && <Gone />}
      {safety === 'refused' && <Refused />}
      <Conflicts />
    </div>
  );
}

function ReadingStrip() {
  const reading = useWorkbench((s) => s.reading);
  const say = projectTexts.revision;
  if (!reading) return null;
  return (
    <section className="strip" aria-label={say.number(reading.number)}>
      <p>{say.reading(reading.number, reading.name)}</p>
      <div className="actions">
        <button type="button" className="main-action" onClick={() => read(null)}>
          {say.backToNow}
        </button>
        <button type="button" onClick={takeBack}>
          {say.takeBack}
        </button>
      </div>
    </section>
  );
}

function Gone() {
  const project = useWorkbench((s) => s.project);
  const say = projectTexts.gone;
  const putBack = async () => {
    if (project === null) return;
    await restoreProject(project);
    askAgain();
  };
  return (
    <section className="strip" aria-labelledby="gone-title">
      <h2 id="gone-title">{say.title}</h2>
      <p>{say.about}</p>
      <div className="actions">
        <button type="button" className="main-action" onClick={() => attempt(putBack)}>
          {projectTexts.putBack}
        </button>
      </div>
    </section>
  );
}

function Refused() {
  const refusal = useWorkbench((s) => s.refusal);
  const say = projectTexts.refused;
  return (
    <section className="strip" aria-labelledby="refused-title">
      <h2 id="refused-title">{say.title}</h2>
      <p>{refusal}</p>
      <p className="second">{say.hint}</p>
    </section>
  );
}

function Conflicts() {
  const conflicts = useWorkbench((s) => s.conflicts);
  const say = projectTexts.conflicts;
  return (
    <section className="strip conflicts" aria-labelledby="conflicts-title" hidden={conflicts.length === 0}>
      <h2 id="conflicts-title" role="status">
        {conflicts.length > 0 && say.title(conflicts.length)}
      </h2>
      <p className="second">{say.about}</p>
      <ul>
        {conflicts.map((conflict) => (
          <ConflictLine key={JSON.stringify(conflict.spot)} conflict={conflict} />
        ))}
      </ul>
    </section>
  );
}

function ConflictLine({ conflict }: { readonly conflict: Conflict }) {
  const say = projectTexts.conflicts;
  const what = placeText(conflict.spot);
  return (
    <li>
      <span className="what">{what}</span>
      {conflict.spot.length > 0 && (
        <span className="values">
          {say.theirs} <b>{valueText(conflict.theirs)}</b>, {say.mine} <b>{valueText(conflict.mine)}</b>
        </span>
      )}
      <span className="actions">
        <button type="button" aria-label={say.takeOf(what)} onClick={() => takeMine(conflict)}>
          {say.take}
        </button>
        <button type="button" aria-label={say.leaveOf(what)} onClick={() => settleConflict(conflict)}>
          {say.leave}
        </button>
      </span>
    </li>
  );
}

/** Puts the value that was written here in the place of the one that stands: an edit, which can be undone. */
function takeMine(conflict: Conflict): void {
  editText(withMine(useWorkbench.getState().text, conflict), null);
  settleConflict(conflict);
}

const placeText = (spot: Spot): string =>
  spot.length === 0
    ? projectTexts.conflicts.wholeText
    : spot
        // A thing is known by its id alone, whatever list it stands in.
        .filter((_, i) => typeof spot[i + 1] !== 'object')
        .map((part) => (typeof part === 'object' ? part.id : String(part)))
        .join(' · ');

/** A value in few words. */
function valueText(value: unknown): string {
  if (value === undefined) return projectTexts.conflicts.takenOut;
  const text = Array.isArray(value)
    ? value.map(valueText).join(', ')
    : typeof value === 'object' && value !== null
      ? Object.entries(value)
          .map(([key, each]) => `${key} ${valueText(each)}`)
          .join(', ')
      : String(value);
  return text.length > 80 ? `${text.slice(0, 79)}…` : text;
}
