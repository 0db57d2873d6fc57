import { useEffect, useRef, useState } from 'react';
import { placeOfFinding } from '../plan/places.js';
import { toScreen } from '../plan/view.js';
import { usePlanView } from '../plan/view-store.js';
import { useWorkbench } from '../state/store.js';

interface Ends {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
}

/** A fine line from the note in focus to its place in the plan. */
export function Leader() {
  const finding = useWorkbench((s) => s.focusedFinding ?? s.openFinding);
  const computed = useWorkbench((s) => s.computed);
  const shown = useWorkbench((s) => s.view === 'plan');
  const { view, size } = usePlanView();
  const svg = useRef<SVGSVGElement>(null);
  const [ends, setEnds] = useState<Ends | null>(null);
  // biome-ignore lint/correctness/useExhaustiveDependencies: the ends move with the view and the size of the sheet
  useEffect(() => {
    const measure = () => setEnds(shown ? endsOf(finding, svg.current) : null);
    measure();
    const notes = document.querySelector('.notes');
    notes?.addEventListener('scroll', measure, { passive: true });
    return () => notes?.removeEventListener('scroll', measure);
  }, [finding, computed, view, size, shown]);
  return (
    <svg className="leader" ref={svg} aria-hidden="true">
      {ends && <path d={`M${ends.from[0]} ${ends.from[1]}h-10L${ends.to[0]} ${ends.to[1]}`} />}
    </svg>
  );
}

function endsOf(id: string | null, svg: SVGSVGElement | null): Ends | null {
  const { computed } = useWorkbench.getState();
  const { view, size } = usePlanView.getState();
  const finding = computed?.findings.find((f) => f.id === id);
  const place = computed && finding ? placeOfFinding(computed, finding) : undefined;
  const note = id === null ? null : document.querySelector(`[data-finding="${CSS.escape(id)}"]`);
  const plan = document.querySelector('.plan');
  const notes = document.querySelector('.notes');
  if (!place || !note || !plan || !notes || !view || !svg) return null;
  const origin = svg.getBoundingClientRect();
  const [noteBox, planBox, notesBox] = [
    note.getBoundingClientRect(),
    plan.getBoundingClientRect(),
    notes.getBoundingClientRect(),
  ];
  // Beside the sheet the note can point; under it (narrow screens) a line would only cross other notes.
  if (notesBox.left < planBox.right - 1) return null;
  const y = Math.min(Math.max(noteBox.top + 18, notesBox.top + 4), notesBox.bottom - 4);
  const [px, py] = toScreen(view, size, place);
  if (px < 0 || py < 0 || px > size.width || py > size.height) return null;
  return {
    from: [notesBox.left - origin.left, y - origin.top],
    to: [planBox.left + px - origin.left, planBox.top + py - origin.top],
  };
}
