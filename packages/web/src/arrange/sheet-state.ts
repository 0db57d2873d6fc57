import { useLayers } from './layers.js';
import { useArrange } from './state.js';

/** What the style sheet must know: layers that are not shown or locked, and what the pointer does. */
export function useSheetState() {
  const { hidden, locked } = useLayers();
  const tool = useArrange((s) => s.tool);
  return {
    'data-hidden': hidden.join(' '),
    'data-locked': locked.join(' '),
    'data-tool': tool ?? undefined,
  };
}
