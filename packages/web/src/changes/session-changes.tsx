import { useMemo } from 'react';
import { openFinding, useWorkbench } from '../state/store.js';
import { changesTexts } from '../texts/changes.js';
import { ChangesView } from './changes-view.js';

/** The brief as it was opened or last saved beside the brief as it stands now. */
export function SessionChanges() {
  const saved = useWorkbench((s) => s.savedText);
  const now = useWorkbench((s) => s.text);
  const states = useMemo(
    () => [
      { label: changesTexts.saved, text: saved },
      { label: changesTexts.now, text: now },
    ],
    [saved, now],
  );
  return <ChangesView states={states} onOpenFinding={openFinding} />;
}
