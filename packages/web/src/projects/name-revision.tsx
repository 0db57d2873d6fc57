import { type FormEvent, useState } from 'react';
import { engine, useWorkbench, type Workbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import { nameRevision } from './api.js';
import { countVerdicts } from './count-verdicts.js';
import { Dialog } from './dialog.js';
import { ask, messageOf } from './projects-store.js';

const say = projectTexts.revision;
/** Who named the last revision in this browser: mostly the same person. */
const place = 'cloche.revision-by';

/** What is computed is what the server has: only then does a hash name the step. */
const isReady = (s: Workbench): boolean =>
  s.safety === 'saved' && !s.busy && s.problems.length === 0 && s.computed !== null && s.reading === null;

/** Asks for name, note and who, and keeps the state as it is now under them. */
export function NameRevision() {
  const ready = useWorkbench(isReady);
  const [trouble, setTrouble] = useState<string | null>(null);
  const [keeping, setKeeping] = useState(false);
  const close = () => ask(null);
  const keep = async (event: FormEvent<HTMLFormElement>): Promise<void> => {
    event.preventDefault();
    const form = new FormData(event.currentTarget);
    const field = (name: string) => String(form.get(name) ?? '').trim();
    const now = useWorkbench.getState();
    const { project, seq, computed, text } = now;
    if (field('name') === '') return setTrouble(say.needsName);
    if (!isReady(now) || project === null || computed === null) return;
    localStorage.setItem(place, field('by'));
    setKeeping(true);
    try {
      await nameRevision(project, {
        name: field('name'),
        note: field('note'),
        by: field('by'),
        seq,
        hash: computed.revision,
        verdicts: countVerdicts(computed.findings),
        cost: await engine.cost(text),
      });
      close();
    } catch (error) {
      setTrouble(messageOf(error));
    }
    setKeeping(false);
  };
  return (
    <Dialog title={say.dialog} onClose={close}>
      <p className="second">{say.about}</p>
      <form onSubmit={keep} noValidate>
        <label>
          <span>{say.name}</span>
          <input
            name="name"
            maxLength={120}
            placeholder={say.nameHint}
            aria-invalid={trouble === say.needsName}
            aria-describedby="revision-trouble"
          />
        </label>
        <label>
          <span>{say.note}</span>
          <textarea name="note" rows={3} maxLength={4000} />
        </label>
        <label>
          <span>{say.by}</span>
          <input name="by" maxLength={120} autoComplete="name" defaultValue={localStorage.getItem(place) ?? ''} />
        </label>
        <p id="revision-trouble" className="told problem" role="status">
          {trouble ?? (ready ? '' : say.waits)}
        </p>
        <div className="actions">
          <button type="submit" className="main-action" disabled={!ready || keeping}>
            {say.keep}
          </button>
          <button type="button" onClick={close}>
            {say.cancel}
          </button>
        </div>
      </form>
    </Dialog>
  );
}
