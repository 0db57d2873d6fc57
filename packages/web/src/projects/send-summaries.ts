import { useWorkbench, type Workbench } from '../state/store.js';
import { putSummary } from './api.js';
import { countVerdicts } from './count-verdicts.js';
import { pictureOfDesign } from './picture.js';

/** Quiet after the last change before the list is told [ms]. */
const quiet = 1000;

/** What the sheet shows is what the server has, computed to the end. */
const isSettled = (s: Workbench): boolean =>
  s.project !== null && s.safety === 'saved' && !s.busy && s.problems.length === 0 && s.reading === null;

let sent: Workbench['computed'] = null;

/** Tells the list of projects how the project in hand looks, unless it was told already. */
export async function flushSummary(): Promise<void> {
  const now = useWorkbench.getState();
  const { project, computed, seq } = now;
  if (project === null || computed === null || computed === sent || !isSettled(now)) return;
  sent = computed;
  const { design, findings } = computed;
  try {
    await putSummary(project, {
      seq,
      name: design.project.name.slice(0, 200),
      picture: pictureOfDesign(design),
      verdicts: countVerdicts(findings),
    });
  } catch {
    // The list shows the state before until the next change; the project itself is not touched by it.
    sent = null;
  }
}

/** Tells the list each time that the computation has settled. */
export function sendSummaries(): void {
  let timer: ReturnType<typeof setTimeout> | undefined;
  const wait = (): void => {
    clearTimeout(timer);
    timer = setTimeout(() => void flushSummary(), quiet);
  };
  wait();
  useWorkbench.subscribe((now, before) => {
    if (now.computed !== before.computed || now.safety !== before.safety || now.busy !== before.busy) wait();
  });
}
