import type { OverlayState } from './overlay.js';

/** A short piece of line as the overlay draws it. */
export function Swatch({ of }: { readonly of: OverlayState | 'moved' }) {
  return (
    <svg className="swatch" width="30" height="14" viewBox="0 0 30 14" aria-hidden="true">
      {of === 'moved' ? (
        <g className="move">
          <path d="M2 7H21" />
          <path className="head" d="M28 7L19 3.6V10.4Z" />
        </g>
      ) : (
        <g className={`shape ${of}`}>
          <path d="M2 7H28" />
          {of === 'removed' && <path className="cross" d="M11 3L19 11M19 3L11 11" />}
        </g>
      )}
    </svg>
  );
}
