import { useState } from 'react';
import { type StepName, useWorkbench } from '../state/store.js';
import { drawingTexts } from '../texts/drawing.js';
import { texts } from '../texts.js';
import { take } from './hand.js';
import { openTapeList } from './tape/open.js';
import type { ToolGroup } from './tool.js';
import { toolsOf } from './tools/all.js';

const { hand: say, tape } = drawingTexts;

/** Words for what belongs to the step in hand; what comes after the layout is put in with it. */
const groupOf = (step: StepName): ToolGroup => (step === 'survey' || step === 'needs' ? step : 'layout');

/** What can be put in at this step, as words on one line that unfolds. */
export function PutIn() {
  const group = useWorkbench((s) => groupOf(s.step));
  const [open, setOpen] = useState(false);
  const tools = toolsOf(group);
  const bare = (title: string) => title.replace(/^(a|an|the) /, '');
  return (
    <div className={`put-in${open ? ' open' : ''}`}>
      <fieldset>
        <legend>
          {say.putIn} <span className="second">{texts.steps[group].title}</span>
        </legend>
        <span className="words">
          {group === 'survey' && (
            <button type="button" data-tool="tape-list" onClick={openTapeList}>
              {tape.word}
            </button>
          )}
          {tools.map((tool) => (
            <button key={tool.id} type="button" data-tool={tool.id} title={tool.keys} onClick={() => take(tool)}>
              {bare(tool.title)}
            </button>
          ))}
        </span>
      </fieldset>
      {tools.length > 4 && (
        <button type="button" className="quiet" aria-expanded={open} onClick={() => setOpen(!open)}>
          {open ? say.fewer : say.more}
        </button>
      )}
    </div>
  );
}
