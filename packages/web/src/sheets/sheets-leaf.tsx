import { useMemo, useState } from 'react';
import { hashOf } from '../projects/address.js';
import { handOver } from '../state/file.js';
import { makePack, type PackState, stopPack, usePack } from '../state/pack.js';
import { fetchPackFile } from '../state/server.js';
import { useWorkbench } from '../state/store.js';
import { fittingTexts } from '../texts/fitting.js';
import { sheetTexts as say } from '../texts/sheets.js';
import { type SheetName, sheetsByUse } from './sheet-names.js';
import { showSheet, useSheet } from './sheet-store.js';

/** The sheets of this revision: each to be looked at and taken by itself, and all of them as one pack. */
export function SheetsLeaf() {
  const computed = useWorkbench((s) => s.computed);
  const readable = useWorkbench((s) => s.problems.length === 0 && s.computed !== null);
  const uses = useMemo(() => (computed ? sheetsByUse(computed.design) : []), [computed]);
  return (
    <>
      <p>{say.unsigned}</p>
      <WholePack readable={readable} />
      <ToFitters />
      {uses.map(([use, sheets]) => (
        <section key={use} className="sheet-list">
          <h3>{say.uses[use]}</h3>
          <ul>
            {sheets.map((sheet) => (
              <SheetLine key={sheet.name} sheet={sheet} readable={readable} />
            ))}
          </ul>
        </section>
      ))}
    </>
  );
}

function SheetLine({ sheet, readable }: { readonly sheet: SheetName; readonly readable: boolean }) {
  const shown = useSheet((s) => s.name === sheet.name);
  const onSheet = useWorkbench((s) => s.view === 'sheet');
  const [taking, setTaking] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);
  const hasPicture = /\.(svg|pdf|csv)$/.test(sheet.name);
  const take = async () => {
    setTaking(true);
    setTrouble(null);
    try {
      handOver(await fetchPackFile(useWorkbench.getState().text, sheet.name), sheet.name);
    } catch (error) {
      setTrouble(error instanceof Error ? error.message : String(error));
    }
    setTaking(false);
  };
  return (
    <li className={shown && onSheet ? 'shown' : undefined}>
      {hasPicture ? (
        <button
          type="button"
          className="title"
          aria-pressed={shown && onSheet}
          disabled={!readable}
          onClick={() => showSheet(sheet.name)}
        >
          {sheet.title}
        </button>
      ) : (
        <span className="title">{sheet.title}</span>
      )}
      <button
        type="button"
        className="quiet"
        disabled={!readable || taking}
        aria-label={say.takeOf(sheet.title)}
        title={sheet.name}
        onClick={() => void take()}
      >
        {taking ? say.taking : say.take}
      </button>
      {trouble && <p className="trouble-inside">{trouble}</p>}
    </li>
  );
}

function WholePack({ readable }: { readonly readable: boolean }) {
  const { pack } = usePack();
  const making = pack.state === 'making';
  const older = useWorkbench((s) => pack.state === 'made' && s.text !== pack.brief);
  const zip = pack.state === 'made' ? pack.files.at(-1) : undefined;
  return (
    <div className="whole-pack">
      <div className="actions">
        {making ? (
          <button type="button" onClick={stopPack}>
            {say.stop}
          </button>
        ) : (
          <button
            type="button"
            className={zip ? undefined : 'main-action'}
            disabled={!readable}
            onClick={() => void makePack()}
          >
            {say.make}
          </button>
        )}
        {zip && (
          <button type="button" className="main-action" onClick={() => handOver(zip.blob, zip.name)}>
            {say.whole} <span className="size">{say.size(zip.blob.size)}</span>
          </button>
        )}
      </div>
      <p role="status">{toldOf(pack)}</p>
      {making && <progress aria-label={say.making} value={pack.share} />}
      {older && <p className="trouble-inside">{say.older}</p>}
    </div>
  );
}

function toldOf(pack: PackState): string {
  switch (pack.state) {
    case 'idle':
      return '';
    case 'making':
      return say.done(pack.done.length);
    case 'made':
      return say.made;
    case 'stopped':
      return say.stopped;
    case 'failed':
      return `${say.failed} ${pack.why}`;
  }
}

/** The sheet for the people who build, with steps to tick off. */
function ToFitters() {
  const project = useWorkbench((s) => s.project);
  if (project === null) return null;
  return (
    <p className="to-fitters">
      <a href={hashOf({ at: 'fitting', id: project })}>{fittingTexts.open}</a>
      <span className="second">{fittingTexts.openHint}</span>
    </p>
  );
}
