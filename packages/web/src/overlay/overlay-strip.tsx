import type { OverlayInfo } from '@cloche/engine';
import { useId, useState } from 'react';
import { useWorkbench } from '../state/store.js';
import { overlayTexts as say } from '../texts/overlay.js';
import { layOver, useOverlay } from './overlay-store.js';

/** What can be laid over the plan, and the legend of what lies there. */
export function OverlayStrip() {
  const known = useWorkbench((s) => s.shelf.overlays);
  const shown = useOverlay((s) => s.shown);
  const [open, setOpen] = useState(false);
  const list = useId();
  const info = known.find((each) => each.id === shown);
  return (
    <section className="overlay-strip" aria-label={say.title}>
      {info && !open && <Legend info={info} />}
      {open && (
        <ul id={list}>
          {known.map((each) => (
            <li key={each.id}>
              <button
                type="button"
                aria-pressed={each.id === shown}
                onClick={() => {
                  layOver(each.id);
                  setOpen(false);
                }}
              >
                <span>{each.title}</span>
                {each.key && <kbd>{each.key}</kbd>}
              </button>
            </li>
          ))}
        </ul>
      )}
      <button type="button" aria-expanded={open} aria-controls={list} onClick={() => setOpen(!open)}>
        {info ? info.title : say.title}
      </button>
    </section>
  );
}

function Legend({ info }: { readonly info: OverlayInfo }) {
  const count = useOverlay((s) => s.marks.length);
  return (
    <section className="overlay-legend" aria-label={say.legend(info.title)}>
      <h3>{info.title}</h3>
      <ul>
        {info.legend.map(({ style, means }) => (
          <li key={style}>
            <svg width="22" height="14" aria-hidden="true" className="overlay">
              <rect x="1" y="1" width="20" height="12" className={`laid area ${style}`} />
            </svg>
            <span>{means}</span>
          </li>
        ))}
      </ul>
      <p className="second">
        {say.limits} {info.limits}
      </p>
      <p className="visually-hidden" role="status">
        {say.count(info.title, count)}
      </p>
      <button type="button" className="quiet" onClick={() => layOver(null)}>
        {say.none}
      </button>
    </section>
  );
}
