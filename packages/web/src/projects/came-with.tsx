import { useState } from 'react';
import { putVersion } from '../shelf/shelf-lines.js';
import { changeShelf } from '../shelf/shelf-store.js';
import { useWorkbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import type { ShelfDifference } from './api.js';
import { Dialog } from './dialog.js';
import { ask, messageOf, useProjects } from './projects-store.js';

const say = projectTexts.cameWith;

/** Tells that a project taken in was computed with other data files than those of this shelf, and offers to take them. */
export function CameWith() {
  const files = useProjects((s) => s.cameWith);
  const project = useWorkbench((s) => s.computed?.design.project.name ?? '');
  const [done, setDone] = useState<ReadonlyMap<ShelfDifference, string>>(new Map());
  const [busy, setBusy] = useState(false);
  const coming = files.filter(({ text }) => text !== null);
  const open = coming.filter((file) => done.get(file) !== say.taken);
  const close = () => ask(null);
  const takeAll = async () => {
    setBusy(true);
    const told = new Map(done);
    for (const file of open) told.set(file, await put(file, project));
    setDone(told);
    setBusy(false);
  };
  return (
    <Dialog title={say.title} onClose={close}>
      <p>{say.about}</p>
      <ul className="came-with">
        {files.map((file) => (
          <li key={`${file.kind} ${file.name}`}>
            <p className="head">
              <span className="name">{file.name}</span> <span className="second">{say.what[file.what]}</span>
            </p>
            <p className={done.get(file) === say.taken ? 'second lines' : 'trouble-text lines'}>{done.get(file)}</p>
          </li>
        ))}
      </ul>
      {coming.length > 0 && <p className="second">{say.safe}</p>}
      <p role="status">{coming.length > 0 && open.length === 0 && say.allTaken(coming.length < files.length)}</p>
      <div className="actions">
        {open.length > 0 && (
          <button type="button" className="main-action" disabled={busy} onClick={takeAll}>
            {say.take(open.length)}
          </button>
        )}
        <button type="button" onClick={close}>
          {open.length > 0 ? say.keepShelf : say.close}
        </button>
      </div>
    </Dialog>
  );
}

async function put({ kind, name, text }: ShelfDifference, project: string): Promise<string> {
  try {
    const wrong = await changeShelf(putVersion({ kind, name }, { text: text ?? '', because: say.because(project) }));
    return wrong ?? say.taken;
  } catch (error) {
    return messageOf(error);
  }
}
