import { useEffect, useMemo, useState } from 'react';
import type { Computed } from '../engine/contract.js';
import { go } from '../projects/navigation.js';
import { useWorkbench } from '../state/store.js';
import { fittingTexts as say } from '../texts/fitting.js';
import { Drawings } from './drawings.js';
import { type Fitting, fittingOf } from './fitting.js';
import { FittingHead } from './fitting-head.js';
import { Pieces, Steps } from './fitting-lists.js';
import { KeepButton } from './keep-button.js';
import { openTicks, tick, useTicks } from './ticks.js';

type FittingView = keyof typeof say.views;
const views = Object.keys(say.views) as readonly FittingView[];

/** The sheet for the people who build: piece marks, steps to tick off, drawings; made for a hand and a phone. */
export function FittingSheet() {
  const computed = useWorkbench((s) => s.computed);
  if (!computed) return <p className="waiting">{say.loading}</p>;
  return <Made computed={computed} />;
}

function Made({ computed }: { readonly computed: Computed }) {
  const fitting = useMemo(() => fittingOf(computed.design, computed.revision, computed.itemNames), [computed]);
  const [view, setView] = useState<FittingView>('steps');
  const done = useTicks((s) => s.done);
  useEffect(() => openTicks(fitting.revision), [fitting.revision]);
  return (
    <main className="fitting">
      <FittingHead fitting={fitting} />
      <nav aria-label={say.viewsLabel}>
        {views.map((name) => (
          <button key={name} type="button" aria-pressed={view === name} onClick={() => setView(name)}>
            {say.views[name]}
          </button>
        ))}
      </nav>
      {view === 'steps' && <Steps fitting={fitting} ticking={{ done, onTick: tick }} />}
      {view === 'pieces' && <PiecesView fitting={fitting} />}
      {view === 'sheets' && <Drawings computed={computed} />}
      <footer>
        <p className="second">{say.ticksKept}</p>
        <KeepButton fitting={fitting} computed={computed} />
        <WholeButton />
      </footer>
    </main>
  );
}

function PiecesView({ fitting }: { readonly fitting: Fitting }) {
  const [wanted, setWanted] = useState('');
  return (
    <>
      <label className="find">
        <span>{say.find}</span>
        <input type="search" autoComplete="off" value={wanted} onChange={(e) => setWanted(e.target.value)} />
      </label>
      <Pieces pieces={fitting.pieces} wanted={wanted} />
    </>
  );
}

function WholeButton() {
  const project = useWorkbench((s) => s.project);
  if (project === null) return null;
  return (
    <button type="button" className="quiet" onClick={() => void go({ at: 'project', id: project, step: 'sheets' })}>
      {say.whole}
    </button>
  );
}
