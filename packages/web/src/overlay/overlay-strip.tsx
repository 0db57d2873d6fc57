import type { OverlayInfo } from '@cloche/engine';
import { useId, useLayoutEffect, useRef, useState } from 'react';
import { verdictsInOrder } from '../notes/verdict-groups.js';
import { VerdictMark } from '../notes/verdict-mark.js';
import { usePlanView } from '../plan/view-store.js';
import { useWorkbench } from '../state/store.js';
import { overlayTexts as say } from '../texts/overlay.js';
import { layOver, useOverlay } from './overlay-store.js';
import { isVerdictAlone } from './overlay-values.js';

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
  const marks = useOverlay((s) => s.marks);
  const alone = verdictsInOrder.filter((verdict) =>
    marks.some((m) => m.mark === 'value' && m.verdict === verdict && isVerdictAlone(m)),
  );
  return (
    <section className="overlay-legend" ref={useKeptClear()} aria-label={say.legend(info.title)}>
      <header>
        <h3>{info.title}</h3>
        <button type="button" className="quiet" onClick={() => layOver(null)}>
          {say.none}
        </button>
      </header>
      <ul>
        {info.legend.map(({ style, means }) => (
          <li key={style}>
            <svg width="22" height="14" aria-hidden="true" className="overlay">
              <rect x="1" y="1" width="20" height="12" className={`laid area ${style}`} />
            </svg>
            <span>{means}</span>
          </li>
        ))}
        {alone.map((verdict) => (
          <li key={verdict} className="verdict-alone">
            <VerdictMark verdict={verdict} word />
          </li>
        ))}
      </ul>
      <p className="second">
        {say.limits} {info.limits}
      </p>
      <p className="visually-hidden" role="status">
        {say.count(info.title, marks.length)}
      </p>
    </section>
  );
}

/** Tells the plan how much of the foot of the sheet the legend takes, so that the whole room stands above it. */
function useKeptClear() {
  const ref = useRef<HTMLElement>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return;
    const tell = () => usePlanView.setState({ legend: element.offsetHeight });
    const observer = new ResizeObserver(tell);
    observer.observe(element);
    tell();
    return () => {
      observer.disconnect();
      usePlanView.setState({ legend: 0 });
    };
  }, []);
  return ref;
}
