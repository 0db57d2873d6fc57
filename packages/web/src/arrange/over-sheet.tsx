import { useEffect } from 'react';
import type { Design } from '../engine/contract.js';
import type { PlanView, Size } from '../plan/view.js';
import { arrangeTexts } from '../texts/arrange.js';
import { pasteText } from './act.js';
import { GapInput, SizeInputs, WallInputs } from './dimension-inputs.js';
import { LayersPanel } from './layers-panel.js';
import { KeptInputs } from './measure/kept-inputs.js';
import { MeasurePanel } from './measure/measure-panel.js';
import { leaveMeasure } from './measure/state.js';
import { togglePanel, usePanel } from './panel.js';
import { SelectionCard } from './selection-card.js';
import { takeTool, useArrange } from './state.js';

interface Drawn {
  readonly design: Design;
  readonly view: PlanView | null;
  readonly size: Size;
}

/** Everything about arranging that stands over the sheet: typed dimensions, cards, panels, what was last done. */
export function ArrangeOverSheet({ design, view, size }: Drawn) {
  usePaste();
  return (
    <>
      {view && (
        <>
          <WallInputs design={design} view={view} size={size} />
          <SizeInputs design={design} view={view} size={size} />
          <GapInput design={design} view={view} size={size} />
          <KeptInputs design={design} view={view} size={size} />
        </>
      )}
      <SheetAids />
      <MeasurePanel design={design} />
      <LayersPanel />
      <SelectionCard design={design} />
      <Said />
    </>
  );
}

function SheetAids() {
  const tool = useArrange((s) => s.tool);
  const layers = usePanel((s) => s.open === 'layers');
  return (
    <div className="sheet-aids">
      <button
        type="button"
        aria-pressed={tool === 'measure'}
        onClick={() => (tool === 'measure' ? leaveMeasure() : takeTool('measure'))}
      >
        {arrangeTexts.measure.title}
      </button>
      <button type="button" aria-pressed={layers} onClick={() => togglePanel('layers')}>
        {arrangeTexts.layers.title}
      </button>
    </div>
  );
}

/** What was last done or could not be done: shown for a while at the foot of the sheet, and read out. */
function Said() {
  const { said, saidCount, quiet } = useArrange();
  return (
    <p className={quiet ? 'visually-hidden' : 'said'} role="status">
      {said.length > 0 && <span key={saidCount}>{said.join(' ')}</span>}
    </p>
  );
}

const isField = (target: EventTarget | null): boolean =>
  target instanceof HTMLElement && target.closest('input, textarea, select, [contenteditable="true"]') !== null;

/** What is pasted onto the sheet, not into a field: a part of a brief goes into the brief. */
function usePaste(): void {
  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      if (isField(event.target) || document.querySelector('dialog[open]')) return;
      if (pasteText(event.clipboardData?.getData('text/plain') ?? '')) event.preventDefault();
    };
    document.addEventListener('paste', onPaste);
    return () => document.removeEventListener('paste', onPaste);
  }, []);
}
