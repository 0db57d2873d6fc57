import { useWorkbench } from '../state/store.js';
import { partPath } from './path-text.js';

/** The parts that are pointed at in the list. */
export function PointedLayer() {
  const parts = useWorkbench((s) => s.computed?.design.parts);
  const pointed = useWorkbench((s) => s.pointedParts);
  if (!parts || pointed.size === 0) return null;
  const d = parts
    .filter((part) => pointed.has(part.id))
    .map((part) => partPath(part.shape))
    .join('');
  return <path className="line-pointed" d={d} data-pointed={pointed.size} />;
}
