import { type KeyboardEvent, useEffect, useId, useRef, useState } from 'react';
import { commandTexts as say } from '../texts/commands.js';
import { allCommands } from './all.js';
import { type Answerable, answersTo, possible } from './answers.js';
import { useAskLine } from './ask-store.js';
import { answerableThings } from './things.js';

/** A line on the sheet that takes words: what a person wants to do, or a thing that they look for. */
export function AskLine() {
  const [typed, setTyped] = useState('');
  const [at, setAt] = useState(0);
  const input = useRef<HTMLInputElement>(null);
  const list = useId();
  const asked = useAskLine((s) => s.asked);
  useEffect(() => {
    if (asked > 0) input.current?.focus();
  }, [asked]);
  const answers = answersTo(typed, [...possible(allCommands()), ...(typed === '' ? [] : answerableThings())]);
  const open = typed.trim() !== '';
  const leave = () => {
    setTyped('');
    setAt(0);
  };
  const take = (answer: Answerable | undefined) => {
    if (!answer) return;
    leave();
    input.current?.blur();
    answer.run();
  };
  const onKeyDown = (event: KeyboardEvent) => {
    const by = { ArrowDown: 1, ArrowUp: -1 }[event.key];
    if (by !== undefined) setAt((at + by + answers.length) % Math.max(1, answers.length));
    else if (event.key === 'Enter') take(answers[at]);
    else if (event.key === 'Escape') {
      if (typed === '') input.current?.blur();
      leave();
    } else return;
    event.preventDefault();
  };
  return (
    <div className="ask-line">
      <input
        ref={input}
        type="text"
        role="combobox"
        autoComplete="off"
        spellCheck={false}
        aria-label={say.ask}
        aria-expanded={open}
        aria-controls={list}
        aria-autocomplete="list"
        aria-activedescendant={open && answers[at] ? `${list}-${at}` : undefined}
        placeholder={say.ask}
        title={say.askHint}
        value={typed}
        onChange={(e) => {
          setTyped(e.target.value);
          setAt(0);
        }}
        onKeyDown={onKeyDown}
        onBlur={leave}
      />
      <span className="key" aria-hidden="true">
        /
      </span>
      <div id={list} role="listbox" aria-label={say.ask} hidden={!open || answers.length === 0}>
        {answers.map((answer, i) => (
          // biome-ignore lint/a11y/useKeyWithClickEvents: the line takes the keys
          // biome-ignore lint/a11y/useFocusableInteractive: the focus stays in the line
          <div
            key={answer.id}
            id={`${list}-${i}`}
            role="option"
            aria-selected={i === at}
            onPointerDown={(e) => e.preventDefault()}
            onPointerEnter={() => setAt(i)}
            onClick={() => take(answer)}
          >
            <span className="title">{answer.title}</span>
            {answer.keys ? <kbd>{answer.keys}</kbd> : <span className="second">{answer.group}</span>}
          </div>
        ))}
      </div>
      <p className={open && answers.length === 0 ? 'none second' : 'visually-hidden'} role="status">
        {!open ? '' : answers.length === 0 ? say.nothing : say.found(answers.length)}
      </p>
    </div>
  );
}
