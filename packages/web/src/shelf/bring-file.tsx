import { type FormEvent, useId, useRef, useState } from 'react';
import { shelfTexts as say } from '../texts/shelf.js';
import { putOnShelf } from './shelf-store.js';

/** Brings a file of catalogue or site rules onto the shelf, with a reason. */
export function BringFile({ kind, name }: { readonly kind: 'catalogue' | 'rules'; readonly name: string }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  const [file, setFile] = useState<{ readonly name: string; readonly text: string } | null>(null);
  const [because, setBecause] = useState('');
  const [told, setTold] = useState<{ readonly text: string; readonly good: boolean } | null>(null);
  const choose = async (chosen: File | undefined) => {
    if (!chosen) return;
    setTold(null);
    setFile({ name: chosen.name.replace(/\.(ya?ml|json)$/i, ''), text: await chosen.text() });
  };
  const put = async (event: FormEvent) => {
    event.preventDefault();
    if (!file) return;
    if (because.trim() === '') return setTold({ text: say.becauseNeeded, good: false });
    try {
      const trouble = await putOnShelf(kind, file.name, file.text, because.trim());
      setTold(
        trouble === null ? { text: say.putDone, good: true } : { text: `${say.putFailed}\n${trouble}`, good: false },
      );
    } catch (error) {
      setTold({ text: `${say.putFailed}\n${error instanceof Error ? error.message : String(error)}`, good: false });
    }
  };
  return (
    <>
      <button type="button" onClick={() => dialog.current?.showModal()}>
        {say.bring}
      </button>
      <dialog ref={dialog} className="shelf-dialog" aria-labelledby={`${id}-title`}>
        <form onSubmit={put}>
          <h2 id={`${id}-title`}>{say.bringTitle(kind)}</h2>
          <p className="second">{say.bringAbout}</p>
          <div className="pairs">
            <label htmlFor={`${id}-file`}>{say.file}</label>
            <input
              id={`${id}-file`}
              type="file"
              accept=".yaml,.yml,.json"
              onChange={(e) => void choose(e.target.files?.[0])}
            />
            <label htmlFor={`${id}-name`}>{say.name}</label>
            <input
              id={`${id}-name`}
              value={file?.name ?? name}
              disabled={!file}
              onChange={(e) => file && setFile({ ...file, name: e.target.value })}
            />
            <label htmlFor={`${id}-because`}>{say.putReason}</label>
            <input id={`${id}-because`} value={because} onChange={(e) => setBecause(e.target.value)} />
          </div>
          <p role="status" className={told?.good ? 'lines' : 'lines trouble-text'}>
            {told?.text}
          </p>
          <p className="buttons">
            <button type="submit" className="main-action" disabled={!file}>
              {say.put}
            </button>
            <button type="button" onClick={() => dialog.current?.close()}>
              {say.cancel}
            </button>
          </p>
        </form>
      </dialog>
    </>
  );
}
