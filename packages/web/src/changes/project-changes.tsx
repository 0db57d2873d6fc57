import { useStates } from '../projects/revisions.js';
import { openFinding } from '../state/store.js';
import { ChangesView } from './changes-view.js';

/** Named revisions, the project as it was opened, and as it stands now: any two of them beside each other. */
export function ProjectChanges() {
  return <ChangesView states={useStates()} onOpenFinding={openFinding} />;
}
