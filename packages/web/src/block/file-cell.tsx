import { ExportDialog } from '../projects/export-dialog.js';
import { NameRevision } from '../projects/name-revision.js';
import { go } from '../projects/navigation.js';
import { ask, useProjects } from '../projects/projects-store.js';
import { redo, undo, useWorkbench } from '../state/store.js';
import { projectTexts as say } from '../texts/projects.js';
import { texts } from '../texts.js';

/** The project as something kept: where it is safe, and what can be done with it as a whole. */
export function FileCell() {
  const safety = useWorkbench((s) => s.safety);
  const [canUndo, canRedo] = [useWorkbench((s) => s.canUndo), useWorkbench((s) => s.canRedo)];
  const reading = useWorkbench((s) => s.reading !== null);
  const asking = useProjects((s) => s.asking);
  return (
    <div className="cell file">
      <span className="caption" role="status" data-safety={safety}>
        {say.safety[safety]}
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
    </div>
  );
}
