import { handOver, saveBrief } from '../state/file.js';
import { useWorkbench } from '../state/store.js';
import { projectTexts } from '../texts/projects.js';
import { exportProject } from './api.js';
import { Dialog } from './dialog.js';
import { ask, attempt, tell, useProjects } from './projects-store.js';

const say = projectTexts.exporting;

export async function handOverProject(id: string): Promise<void> {
  const { name, blob } = await exportProject(id);
  handOver(blob, name);
}

/** What leaves the workbench: the brief alone, or the project with all that belongs to it. */
export function ExportDialog() {
  const project = useWorkbench((s) => s.project);
  const told = useProjects((s) => s.told);
  const close = () => {
    tell(null);
    ask(null);
  };
  return (
    <Dialog title={say.title} onClose={close}>
      <ul className="exports">
        <li>
          <button
            type="button"
            onClick={() => {
              saveBrief();
              close();
            }}
          >
            {say.brief}
          </button>
          <p className="second">{say.briefHint}</p>
        </li>
        <li>
          <button
            type="button"
            onClick={() =>
              attempt(async () => {
                if (project !== null) await handOverProject(project);
                close();
              })
            }
          >
            {say.project}
          </button>
          <p className="second">{say.projectHint}</p>
        </li>
      </ul>
      <p className="told problem" role="status">
        {told}
      </p>
      <div className="actions">
        <button type="button" onClick={close}>
          {projectTexts.revision.cancel}
        </button>
      </div>
    </Dialog>
  );
}
