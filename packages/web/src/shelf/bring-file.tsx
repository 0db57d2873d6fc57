import { type FormEvent, useId, useRef, useState } from 'react';
import { shelfTexts as say } from '../texts/shelf.js';
import { putVersion } from './shelf-lines.js';
import { changeShelf, useShelf } from './shelf-store.js';

/** A file's name as the shelf can take it: without its ending, and with what browsers add to copies made plain. */
const shelfNameOf = (name: string): string =>
  name
    .replace(/\.(ya?ml|json)$/i, '')
    .replace(/[^A-Za-z0-9_-]+/g, '-')
    .replace(/^[-_]+|-+$/g, '')
    .slice(0, 61);

/** Brings a file of catalogue or site rules onto the shelf, with a reason. */
export function BringFile({ kind, name }: { readonly kind: 'catalogue' | 'rules'; readonly name: string }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const id = useId();
  const [file, setFile] = useState<{ readonly name: string; readonly from: string; readonly text: string } | null>(
    null,
  );
  const files = useShelf((s) => s.files);
  const profiles = useShelf((s) => s.profiles);
  const [because, setBecause] = useState('');
  const [told, setTold] = useState<{ readonly text: string; readonly good: boolean } | null>(null);
  // The shelf knows site rules by their profile, catalogue files by their whole name.
  const place = (stem: string) => ({ kind, name: kind === 'rules' ? stem : `${stem}.yaml` });
  const choose = async (chosen: File | undefined) => {
    if (!chosen) return;
    setTold(null);
    setFile({ name: shelfNameOf(chosen.name), from: chosen.name, text: await chosen.text() });
  };
  const put = async (event: FormEvent) => {
    event.preventDefault();
    if (!file) return;
    if (because.trim() === '') return setTold({ text: say.becauseNeeded, good: false });
    if (!/^[A-Za-z0-9][A-Za-z0-9_-]{0,60}$/.test(file.name)) return setTold({ text: say.nameForm, good: false });
    try {
      const { text, from } = file;
      const trouble = await changeShelf(putVersion(place(file.name), { text, because: because.trim(), file: from }));
      setTold(
        trouble === null ? { text: say.putDone, good: true } : { text: `${say.putFailed}\n${trouble}`, good: false },
      );
    } catch (error) {
      setTold({ text: `${say.putFailed}\n${error instanceof Error ? error.message : String(error)}`, good: false });
    }
  };
  const known = file && (kind === 'rules' ? profiles.map(({ id: p }) => p) : files.map((f) => f.name));
  return (
    <>
      <button
        type="button"
        onClick={() => {
          setTold(null);
          dialog.current?.showModal();
        }}
      >
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
            <input id={`${id}-because`} maxLength={1000} value={because} onChange={(e) => setBecause(e.target.value)} />
          </div>
          {file && known && !told?.good && (
            <p className="second">
              {known.includes(place(file.name).name)
                ? say.replaces(place(file.name).name)
                : say.joins(place(file.name).name)}
            </p>
          )}
          <p role="status" className={told?.good ? 'lines' : 'lines trouble-text'}>
            {told?.text}
          </p>
          <p className="buttons">
            <button type="submit" className="main-action" disabled={!file || told?.good}>
              {say.put}
            </button>
            <button type="button" onClick={() => dialog.current?.close()}>
              {told?.good ? say.close : say.cancel}
            </button>
          </p>
        </form>
      </dialog>
    </>
  );
}
