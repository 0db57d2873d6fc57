import { type Path, pathKey } from '../brief/path.js';
import { showPath } from '../state/show-path.js';
import { goToStep, type StepName } from '../state/store.js';

/** The step whose forms hold a path of the brief. */
export function stepOf(path: Path): StepName | undefined {
  const [first, second] = path;
  if (first === 'project' || first === 'room' || first === 'tables' || first === 'equipment') return 'survey';
  if (first === 'site' || first === 'lasers' || first === 'needs') return 'needs';
  return first === 'layout' && second !== undefined ? 'layout' : undefined;
}

/** The part of a form that stands for a path, or for the nearest thing above it. */
function partOf(path: Path): Element | null {
  for (let depth = path.length; depth > 0; depth--) {
    const found = document.querySelector(`.leaf [data-path="${CSS.escape(pathKey(path.slice(0, depth)))}"]`);
    if (found) return found;
  }
  return null;
}

/** Opens the forms down to a path and puts the caret there; where no form holds it, the text is shown at its place. */
export function reveal(path: Path): void {
  const step = stepOf(path);
  if (!step) {
    showPath(path);
    return;
  }
  goToStep(step);
  // The forms of another step are drawn first, and an entry that was added a moment ago.
  requestAnimationFrame(() => requestAnimationFrame(() => open(path)));
}

function open(path: Path): void {
  const part = partOf(path);
  if (!part) {
    showPath(path);
    return;
  }
  for (let each: Element | null = part; each; each = each.parentElement)
    if (each instanceof HTMLDetailsElement) each.open = true;
  part.scrollIntoView({ block: 'nearest' });
  const control = part.querySelector<HTMLElement>('input, select, summary, button');
  control?.focus({ preventScroll: true });
  control?.scrollIntoView({ block: 'nearest' });
}
