import { numberText, sourceText, unitText } from '@cloche/engine';
import { Cures } from '../cures/cures.js';
import type { Finding } from '../engine/contract.js';
import { localNumber } from '../locale.js';
import { goToFinding } from '../plan/go-to.js';
import { placeOfFinding } from '../plan/places.js';
import { AmendedSubject } from '../shelf/amended.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { CalculationSheet } from './calculation-sheet.js';

/** All that stands behind a finding: what was found, the calculation, rule, source, cautions and who decides. */
export function NoteDetail({ id, finding }: { readonly id: string; readonly finding: Finding }) {
  const cautions = [...new Set([...finding.cautions, ...(finding.calculation?.cautions ?? [])])];
  return (
    <div className="note-detail" id={id}>
      <p>{finding.message}</p>
      <ShowPlace finding={finding} />
      <Cures finding={finding} />
      {finding.demand !== null && finding.capacity !== null && (
        <dl className="pair">
          <dt>{texts.notes.demand}</dt>
          <dd>
            {localNumber(numberText(finding.demand))} <span className="unit">{unitText(finding.unit)}</span>
          </dd>
          <dt>{texts.notes.capacity}</dt>
          <dd>
            {localNumber(numberText(finding.capacity))} <span className="unit">{unitText(finding.unit)}</span>
          </dd>
        </dl>
      )}
      {finding.calculation ? (
        <CalculationSheet calculation={finding.calculation} />
      ) : (
        <p className="second">{texts.notes.noCalculation}</p>
      )}
      <AmendedSubject subject={finding.subject} />
      {cautions.length > 0 && (
        <div className="cautions">
          <h4>{texts.notes.cautions}</h4>
          {cautions.map((caution) => (
            <p key={caution}>{caution}</p>
          ))}
        </div>
      )}
      <dl className="lines">
        {finding.rule && (
          <>
            <dt>{texts.notes.rule}</dt>
            <dd>
              {finding.rule.text}
              {finding.rule.overriddenBecause && `, ${texts.notes.overridden} ${finding.rule.overriddenBecause}`}
            </dd>
          </>
        )}
        <dt>{texts.notes.source}</dt>
        <dd>{sourceText(finding.source)}</dd>
        {finding.asks.length > 0 && (
          <>
            <dt>{texts.notes.asks}</dt>
            <dd>{finding.asks.join(', ')}</dd>
          </>
        )}
      </dl>
      <p className="second">{texts.notes.decides(finding.decider)}</p>
    </div>
  );
}

/** Brings the place of a finding into the middle of the sheet. */
function ShowPlace({ finding }: { readonly finding: Finding }) {
  const has = useWorkbench((s) => s.computed !== null && placeOfFinding(s.computed, finding) !== undefined);
  if (!has) return null;
  return (
    <button type="button" className="quiet" onClick={() => goToFinding(finding)}>
      {texts.notes.showPlace}
    </button>
  );
}
