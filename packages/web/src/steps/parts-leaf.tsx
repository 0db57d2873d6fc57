import { numberText } from '@cloche/engine';
import { useMemo } from 'react';
import { localNumber } from '../locale.js';
import { millimetres } from '../plan/dimensions.js';
import { goToParts } from '../plan/go-to.js';
import { AmendedItem } from '../shelf/amended.js';
import { pointParts, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { type PartLine, partLines } from './part-lines.js';

/** Everything to buy, grouped; a line that is chosen shows its pieces in the drawing and why they exist. */
export function PartsLeaf() {
  const computed = useWorkbench((s) => s.computed);
  const groups = useMemo(() => partLines(computed?.design.parts ?? []), [computed]);
  if (!computed || groups.size === 0) return <p>{texts.parts.none}</p>;
  const mass = computed.design.parts.reduce((sum, p) => sum + p.mass, 0);
  return (
    <>
      <p>
        {texts.parts.total} {localNumber(numberText(mass))} <span className="unit">kg</span>
      </p>
      {[...groups].map(([group, lines]) => (
        <details key={group} className="group parts" open>
          <summary>
            <span className="title">{group}</span>
            <span className="count">{lines.reduce((n, l) => n + l.count, 0)}</span>
          </summary>
          <ul>
            {lines.map((line) => (
              <PartRow key={line.key} line={line} name={computed.itemNames[line.item] ?? line.item} />
            ))}
          </ul>
        </details>
      ))}
    </>
  );
}

function PartRow({ line, name }: { readonly line: PartLine; readonly name: string }) {
  const pointed = useWorkbench((s) => s.pointedParts.has(line.ids[0]!));
  return (
    <li className={pointed ? 'part pointed' : 'part'}>
      <button type="button" aria-pressed={pointed} onClick={() => pointParts(pointed ? [] : line.ids)}>
        <span className="item">
          {line.mark && <span className="mark">{line.mark}</span>}
          {name}
        </span>
        <span className="length">
          {line.length !== null && (
            <>
              {millimetres(line.length)} <span className="unit">mm</span>
            </>
          )}
        </span>
        <span className="count">{line.count}</span>
      </button>
      {pointed && (
        <div className="why">
          <p className="second">
            {line.because} {localNumber(numberText(line.mass))} kg.
          </p>
          <AmendedItem item={line.item} />
          <button type="button" className="quiet" onClick={() => goToParts(line.ids)}>
            {texts.parts.show}
          </button>
        </div>
      )}
    </li>
  );
}
