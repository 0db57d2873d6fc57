import { useEffect, useState } from 'react';
import { CameWith } from '../projects/came-with.js';
import { ExportDialog } from '../projects/export-dialog.js';
import { NameRevision } from '../projects/name-revision.js';
import { go } from '../projects/navigation.js';
import { ask, useProjects } from '../projects/projects-store.js';
import type { Safety } from '../session/sync.js';
import { redo, undo, useWorkbench } from '../state/store.js';
import { projectTexts as say } from '../texts/projects.js';
import { texts } from '../texts.js';

/** The project as something kept: where it is safe, and what can be done with it as a whole. */
export function FileCell() {
  const safety = useWorkbench((s) => s.safety);
  const shown = useCalm(safety);
  const [canUndo, canRedo] = [useWorkbench((s) => s.canUndo), useWorkbench((s) => s.canRedo)];
  const reading = useWorkbench((s) => s.reading !== null);
  const asking = useProjects((s) => s.asking);
  return (
    <div className="cell file">
      <span className="caption" data-safety={safety}>
        {say.safety[shown]}
      </span>
      {/* Read aloud only when it wants attention: every edit is saved. */}
      <span className="visually-hidden" role="status">
        {shown === 'saved' || shown === 'saving' ? '' : say.safety[shown]}
      </span>
      <span className="value">
        <button type="button" onClick={() => go({ at: 'list' })}>
          {say.toList}
        </button>
        <button type="button" onClick={undo} disabled={!canUndo || reading}>
          {texts.file.undo}
        </button>
        <button type="button" onClick={redo} disabled={!canRedo || reading}>
          {texts.file.redo}
        </button>
        <button type="button" onClick={() => ask('revision')}>
          {say.nameIt}
        </button>
        <button type="button" onClick={() => ask('export')}>
          {say.export}
        </button>
      </span>
      {asking === 'revision' && <NameRevision />}
      {asking === 'export' && <ExportDialog />}
      {asking === 'shelf' && <CameWith />}
    </div>
  );
}

/** Saving takes a moment and is told only when it takes longer: a word that flickers with every movement tells nothing. */
function useCalm(safety: Safety): Safety {
  const [shown, setShown] = useState(safety);
  useEffect(() => {
    if (safety !== 'saving') {
      setShown(safety);
      return;
    }
    const timer = setTimeout(() => setShown('saving'), 600);
    return () => clearTimeout(timer);
  }, [safety]);
  return shown;
}
