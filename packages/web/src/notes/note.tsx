import { utilisationText } from '@cloche/engine';
import { memo, useEffect, useId, useRef } from 'react';
import type { Finding } from '../engine/contract.js';
import { localNumber } from '../locale.js';
import { focusFinding, openFinding, useWorkbench } from '../state/store.js';
import { liveTexts } from '../texts/live.js';
import { texts } from '../texts.js';
import { NoteDetail } from './note-detail.js';
import { VerdictMark } from './verdict-mark.js';

/** One finding in the margin: opens to its calculation, and points at its place. */
export const Note = memo(function Note({ finding }: { readonly finding: Finding }) {
  const open = useWorkbench((s) => s.openFinding === finding.id);
  const focused = useWorkbench((s) => s.focusedFinding === finding.id);
  const stale = useWorkbench((s) => s.computed?.stale.has(finding.id) === true);
  const id = useId();
  const row = useRef<HTMLLIElement>(null);
  // A mark on the plan opens its note, which may stand outside of the visible margin.
  useEffect(() => {
    if (open) row.current?.scrollIntoView({ block: 'nearest' });
  }, [open]);
  return (
    <li
      ref={row}
      className={`note${open ? ' open' : ''}${focused ? ' focused' : ''}${stale ? ' stale' : ''}`}
      data-finding={finding.id}
      onPointerEnter={() => focusFinding(finding.id)}
      onPointerLeave={() => focusFinding(null)}
      onFocus={() => focusFinding(finding.id)}
      onBlur={() => focusFinding(null)}
    >
      <button
        type="button"
        aria-expanded={open}
        aria-controls={id}
        onClick={() => openFinding(open ? null : finding.id)}
      >
        <VerdictMark verdict={finding.verdict} />
        <span className="requirement">
          {finding.requirement}
          <span className="subject">
            {finding.subject}
            {finding.required && `, ${texts.notes.required}`}
            {stale && `, ${liveTexts.stale}`}
          </span>
        </span>
        {finding.utilisation !== null && <Utilisation value={finding.utilisation} />}
      </button>
      {open && stale && <p className="stale-detail">{liveTexts.staleDetail}</p>}
      {open && <NoteDetail id={id} finding={finding} />}
    </li>
  );
});

/** Widest utilisation that the bar shows; above it the number alone speaks. */
const barEnd = 1.5;

/** Demand over capacity as a number and a thin bar with its mark at 1. */
function Utilisation({ value }: { readonly value: number }) {
  const x = (u: number) => (Math.min(u, barEnd) / barEnd) * 46;
  return (
    <span className="utilisation">
      <span className="visually-hidden">{texts.notes.utilisation} </span>
      <span className="number">{localNumber(utilisationText(value))}</span>
      <svg width="46" height="9" aria-hidden="true">
        <path className="rail" d="M0 4.5H46" />
        <path className="used" d={`M0 4.5H${x(value)}`} />
        <path className="limit" d={`M${x(1)} 0V9`} />
      </svg>
    </span>
  );
}
