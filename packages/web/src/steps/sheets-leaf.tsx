import { handOver } from '../state/file.js';
import { makePack, type PackState, stopPack, usePack } from '../state/pack.js';
import type { MadeFile } from '../state/server.js';
import { show, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

/** The pack of this revision, made by the server: how far it is, then its files. */
export function SheetsLeaf() {
  const readable = useWorkbench((s) => s.problems.length === 0 && s.computed !== null);
  const { pack } = usePack();
  const making = pack.state === 'making';
  return (
    <>
      <p>{texts.sheets.contents}</p>
      <p>{texts.block.unsigned}</p>
      <div className="actions">
        {making ? (
          <button type="button" onClick={stopPack}>
            {texts.sheets.cancel}
          </button>
        ) : (
          <button type="button" className="main-action" disabled={!readable} onClick={() => void makePack()}>
            {texts.sheets.make}
          </button>
        )}
        <button type="button" onClick={() => show('sheet')} disabled={!readable}>
          {texts.sheets.preview}
        </button>
      </div>
      <p role="status">{toldOf(pack)}</p>
      {making && <progress aria-label={texts.sheets.making} value={pack.share} />}
      {making && (
        <ul className="pack-files">
          {pack.done.map((name) => (
            <li key={name} className="second">
              {name}
            </li>
          ))}
        </ul>
      )}
      {pack.state === 'made' && <Files files={pack.files} brief={pack.brief} />}
    </>
  );
}

function toldOf(pack: PackState): string {
  switch (pack.state) {
    case 'idle':
      return '';
    case 'making':
      return texts.sheets.done(pack.done.length);
    case 'made':
      return texts.sheets.made;
    case 'stopped':
      return texts.sheets.stopped;
    case 'failed':
      return `${texts.sheets.failed} ${pack.why}`;
  }
}

/** The files, each to be taken by itself, and all of them in one. */
function Files({ files, brief }: { readonly files: readonly MadeFile[]; readonly brief: string }) {
  const older = useWorkbench((s) => s.text !== brief);
  const zip = files.at(-1);
  return (
    <>
      {older && <p className="trouble-inside">{texts.sheets.older}</p>}
      {zip && (
        <button type="button" className="main-action" onClick={() => handOver(zip.blob, zip.name)}>
          {texts.sheets.whole}
        </button>
      )}
      <ul className="pack-files" aria-label={texts.sheets.files}>
        {files.slice(0, -1).map((file) => (
          <li key={file.name}>
            <button type="button" onClick={() => handOver(file.blob, file.name)}>
              <span>{file.name}</span>
              <span className="second">{texts.sheets.size(file.blob.size)}</span>
            </button>
          </li>
        ))}
      </ul>
    </>
  );
}
