import type { Finding } from '../engine/contract.js';
import { cureTexts as say } from '../texts/cures.js';
import type { Cure } from './contract.js';
import { applyCure, searchFor, stopSearch, useCures } from './cure-store.js';

/** Looks for changes that cure a finding, and makes one of them. */
export function Cures({ finding }: { readonly finding: Finding }) {
  const now = useCures((s) => (s.of === finding.id ? s.now : null));
  if (finding.verdict === 'meets') return null;
  return (
    <div className="cures">
      {now?.state !== 'searching' && now?.state !== 'found' && (
        <button type="button" onClick={() => void searchFor(finding.id)}>
          {say.search}
        </button>
      )}
      {now?.state === 'searching' && (
        <p className="searching">
          <progress aria-label={say.searching} value={now.share} />
          <button type="button" onClick={stopSearch}>
            {say.stop}
          </button>
        </p>
      )}
      <div role="status">
        {now?.state === 'failed' && <p>{`${say.failed} ${now.why}`}</p>}
        {now?.state === 'found' && now.search.cures.length === 0 && (
          <p className="second">{now.search.tried === 0 ? say.noLever : say.none(now.search.tried)}</p>
        )}
        {now?.state === 'found' && now.search.cures.length > 0 && (
          <ul>
            {now.search.cures.map((cure) => (
              <CureLine key={cure.change} cure={cure} />
            ))}
          </ul>
        )}
      </div>
    </div>
  );
}

function CureLine({ cure }: { readonly cure: Cure }) {
  const { change, verdict, worse } = cure;
  return (
    <li>
      <p>{verdict === null || verdict === 'meets' ? say.cures(change) : say.helps(change, verdict)}</p>
      <p className="second">{worse.length === 0 ? say.clean : say.worse(worse)}</p>
      <button type="button" onClick={() => applyCure(cure)}>
        {say.apply}
      </button>
    </li>
  );
}
