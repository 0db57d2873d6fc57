import { useSnapping } from '../drawing/snap/index.js';
import { useLayers } from './layers.js';
import { useArrange } from './state.js';

/** What the style sheet must know: layers that are not shown or locked, and what the pointer does. */
export function useSheetState() {
  const { hidden, locked } = useLayers();
  const tool = useArrange((s) => s.tool);
  const moving = useSnapping();
  return {
    'data-hidden': hidden.join(' '),
    'data-locked': locked.join(' '),
    'data-tool': tool ?? undefined,
    'data-moving': moving || undefined,
  };
}
