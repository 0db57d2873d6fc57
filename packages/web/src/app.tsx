import { TitleBlock } from './block/title-block.js';
import { KeyList } from './commands/key-list.js';
import { useKeys } from './commands/keys.js';
import { Leader } from './notes/leader.js';
import { Notes } from './notes/notes.js';
import { MiddleSheet } from './sheet/middle-sheet.js';
import { useLeaveWarning } from './state/leave-warning.js';
import { SheetIndex } from './steps/sheet-index.js';
import { StepLeaf } from './steps/step-leaf.js';
import { texts } from './texts.js';

/** The whole screen: one sheet of drawing paper with its index, its margin notes and its title block. */
export function App() {
  useKeys();
  useLeaveWarning();
  return (
    <div className="paper">
      <a className="skip" href="#middle">
        {texts.skip}
      </a>
      <div className="left">
        <SheetIndex />
        <StepLeaf />
      </div>
      <MiddleSheet />
      <Notes />
      <TitleBlock />
      <Leader />
      <KeyList />
    </div>
  );
}
