import { useCallback, useEffect, useRef, useState } from 'react';
import { versionTexts as say } from '../texts/shelf-versions.js';
import { ShelfFile } from './shelf-file.js';
import { fetchShelfLines, type ShelfKind, type ShelfLine } from './shelf-lines.js';

const all: readonly ShelfKind[] = ['catalogue', 'rules'];

/** Opens what lies on the shelf: of one kind, or everything. */
export function ShelfButton({ kind, label }: { readonly kind?: ShelfKind; readonly label: string }) {
  const [open, setOpen] = useState(false);
  return (
    <>
      <button type="button" aria-haspopup="dialog" onClick={() => setOpen(true)}>
        {label}
      </button>
      {open && <ShelfDialog kinds={kind ? [kind] : all} close={() => setOpen(false)} />}
    </>
  );
}

function ShelfDialog({ kinds, close }: { readonly kinds: readonly ShelfKind[]; readonly close: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [lines, setLines] = useState<readonly ShelfLine[] | null>(null);
  const [told, setTold] = useState<{ readonly text: string; readonly good: boolean } | null>(null);
  const refresh = useCallback(async () => {
    try {
      setLines(await fetchShelfLines());
    } catch (error) {
      setTold({ text: error instanceof Error ? error.message : String(error), good: false });
    }
  }, []);
  useEffect(() => {
    const { current } = dialog;
    current?.showModal();
    void refresh();
    return () => current?.close();
  }, [refresh]);
  const changed = async () => {
    await refresh();
    setTold({ text: say.done, good: true });
  };
  return (
    // The event comes late: a dialog that was opened again meanwhile stays.
    <dialog
      ref={dialog}
      className="shelf-dialog"
      aria-label={say.title}
      onClose={() => dialog.current?.open || close()}
    >
      <h2>{say.title}</h2>
      <p className="second">{say.about}</p>
      {lines === null && !told && <p className="second">{say.waiting}</p>}
      {kinds.map((kind) => (
        <section key={kind} className="shelf-files">
          <h3>{say.kinds[kind]}</h3>
          <ul>
            {lines
              ?.filter((line) => line.kind === kind)
              .map((line) => (
                <ShelfFile key={line.name} line={line} changed={changed} />
              ))}
          </ul>
        </section>
      ))}
      <div className="foot">
        <p role="status" className={told?.good === false ? 'trouble-text' : undefined}>
          {told?.text}
        </p>
        <button type="button" onClick={close}>
          {say.close}
        </button>
      </div>
    </dialog>
  );
}
