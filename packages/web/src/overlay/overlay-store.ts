import type { OverlayMark } from '@cloche/engine';
import { create } from 'zustand';
import { engine, useWorkbench } from '../state/store.js';

interface Laid {
  /** The overlay that lies on the plan; one at a time, so that its colours mean one thing. */
  readonly shown: string | null;
  readonly marks: readonly OverlayMark[];
}

export const useOverlay = create<Laid>(() => ({ shown: null, marks: [] }));

/** Lays an overlay on the plan, or takes it off when it lies there. */
export function layOver(id: string | null): void {
  const { shown } = useOverlay.getState();
  useOverlay.setState({ shown: shown === id ? null : id, marks: [] });
  void draw();
}

async function draw(): Promise<void> {
  const { shown } = useOverlay.getState();
  if (!shown || !useWorkbench.getState().computed) return;
  const marks = await engine.overlayMarks(useWorkbench.getState().text, shown);
  if (useOverlay.getState().shown === shown) useOverlay.setState({ marks });
}

// Marks follow the drawing: those of a state that has passed stay until the new ones are there.
useWorkbench.subscribe((now, before) => {
  if (now.computed !== before.computed) void draw();
});
