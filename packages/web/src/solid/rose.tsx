import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { lookFrom, useSpace } from './space-store.js';
import { lookNames } from './stand.js';

/** The points of the compass from which the space is looked at, above in their middle; beside them the corner and what is in hand. */
export function Rose() {
  const { looks, looksShort, looksLabel, hand, handLabel } = texts.space;
  const none = useWorkbench((s) => s.selected === null);
  const onFoot = useSpace((s) => s.walk !== null);
  if (onFoot) return null;
  return (
    <fieldset className="rose">
      <legend className="visually-hidden">{looksLabel}</legend>
      <svg viewBox="-50 -50 100 100" aria-hidden="true">
        <circle r="27" />
        <path d="M0 -27V-15M0 27V15M-27 0H-15M27 0H15" />
      </svg>
      {lookNames.map((look) => (
        <button
          key={look}
          type="button"
          className={`to-${look}`}
          aria-label={looks[look]}
          title={looks[look]}
          onClick={() => lookFrom(look)}
        >
          {looksShort[look]}
        </button>
      ))}
      <button type="button" className="to-hand" aria-label={handLabel} disabled={none} onClick={() => lookFrom('hand')}>
        {hand}
      </button>
    </fieldset>
  );
}
