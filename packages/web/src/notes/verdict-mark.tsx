import type { Verdict } from '../engine/contract.js';
import { texts } from '../texts.js';

/** Verdicts by shape and colour, in a square of 18. The word always stands beside it. */
export function VerdictShape({ verdict }: { readonly verdict: Verdict }) {
  switch (verdict) {
    case 'meets':
      return (
        <g className="verdict meets">
          <circle cx="9" cy="9" r="8" />
          <path className="sign" d="M5 9.4L8 12.3L13.2 6.2" />
        </g>
      );
    case 'attention':
      return (
        <g className="verdict attention">
          <path d="M9 1.2L17.2 16H0.8Z" />
          <path className="sign" d="M9 6.2V10.8M9 13V13.6" />
        </g>
      );
    case 'fails':
      return (
        <g className="verdict fails">
          <path d="M5.7 1H12.3L17 5.7V12.3L12.3 17H5.7L1 12.3V5.7Z" />
          <path className="sign" d="M6 6L12 12M12 6L6 12" />
        </g>
      );
    case 'not assessed':
      return (
        <g className="verdict open">
          <circle cx="9" cy="9" r="7.5" />
        </g>
      );
  }
}

export function VerdictMark({ verdict, word = false }: { readonly verdict: Verdict; readonly word?: boolean }) {
  return (
    <span className="verdict-mark">
      <svg width="18" height="18" viewBox="0 0 18 18" aria-hidden={word} role={word ? undefined : 'img'}>
        <title>{texts.verdicts[verdict]}</title>
        <VerdictShape verdict={verdict} />
      </svg>
      {word && <span className="word">{texts.verdicts[verdict]}</span>}
    </span>
  );
}
