import { TitleBlock } from './block/title-block.js';
import { KeyList } from './commands/key-list.js';
import { useKeys } from './commands/keys.js';
import { FittingSheet } from './fitting/fitting-sheet.js';
import { Leader } from './notes/leader.js';
import { Notes } from './notes/notes.js';
import { ProjectsSheet } from './projects/projects-sheet.js';
import { useProjects } from './projects/projects-store.js';
import { ToldAbove } from './projects/told-above.js';
import { MiddleSheet } from './sheet/middle-sheet.js';
import { useLeaveWarning } from './state/leave-warning.js';
import { useWorkbench } from './state/store.js';
import { SheetIndex } from './steps/sheet-index.js';
import { StepLeaf } from './steps/step-leaf.js';
import { texts } from './texts.js';

/** The whole screen: the list of projects, or one sheet of drawing paper with its index, its margin notes and its title block. */
export function App() {
  useKeys();
  useLeaveWarning();
  const atList = useProjects((s) => s.atList);
  const fitting = useProjects((s) => s.fitting);
  if (atList) return <ProjectsSheet />;
  return fitting ? <FittingSheet /> : <Workbench />;
}

function Workbench() {
  const project = useWorkbench((s) => s.project);
  return (
    <div className="paper" data-project={project ?? undefined}>
      <a className="skip" href="#middle">
        {texts.skip}
      </a>
      <div className="left">
        <SheetIndex />
        <StepLeaf />
      </div>
      <MiddleSheet />
      <ToldAbove />
      <Notes />
      <TitleBlock />
      <Leader />
      <KeyList />
    </div>
  );
}
