import { useRef } from 'react';
import { mayLeave, openFile, saveBrief } from '../state/file.js';
import { freshBrief } from '../state/fresh-brief.js';
import { openBrief, redo, undo, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

/** The brief as a file: its name, whether it is saved, and what can be done with it. */
export function FileCell() {
  const fileName = useWorkbench((s) => s.fileName);
  const saved = useWorkbench((s) => s.text === s.savedText);
  const canUndo = useWorkbench((s) => s.history.past.length > 0);
  const canRedo = useWorkbench((s) => s.history.future.length > 0);
  return (
    <div className="cell file">
      <span className="caption">
        {texts.block.saved} {fileName}, {saved ? texts.block.savedAs : texts.block.unsaved}
      </span>
      <span className="value">
        <button type="button" onClick={undo} disabled={!canUndo}>
          {texts.file.undo}
        </button>
        <button type="button" onClick={redo} disabled={!canRedo}>
          {texts.file.redo}
        </button>
        <button type="button" onClick={saveBrief}>
          {texts.file.save}
        </button>
        <OpenButton />
        <button type="button" onClick={() => mayLeave() && openBrief({ name: texts.file.newName, text: freshBrief })}>
          {texts.file.fresh}
        </button>
        <ExampleChoice />
      </span>
    </div>
  );
}

function OpenButton() {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" onClick={() => input.current?.click()}>
        {texts.file.open}
      </button>
      <input
        ref={input}
        type="file"
        accept=".yaml,.yml,.json"
        hidden
        aria-label={texts.file.open}
        onChange={(e) => {
          const file = e.target.files?.[0];
          if (file) void openFile(file);
          e.target.value = '';
        }}
      />
    </>
  );
}

function ExampleChoice() {
  const examples = useWorkbench((s) => s.examples);
  const open = (name: string) => {
    const example = examples.find((e) => e.name === name);
    if (example && mayLeave()) openBrief(example);
  };
  return (
    <select aria-label={texts.file.chooseExample} value="" onChange={(e) => open(e.target.value)}>
      <option value="">{texts.file.example}</option>
      {examples.map((example) => (
        <option key={example.name} value={example.name}>
          {example.title}
        </option>
      ))}
    </select>
  );
}
