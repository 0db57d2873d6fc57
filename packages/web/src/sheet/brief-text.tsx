import { type RefObject, type SyntheticEvent, useEffect, useLayoutEffect, useMemo, useRef } from 'react';
import { carried } from '../session/steps.js';
import { editText, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';

/** The brief itself, as it is stored; lines with a problem are marked. */
export function BriefText() {
  const text = useWorkbench((s) => s.text);
  const caret = useWorkbench((s) => s.caret);
  const problems = useWorkbench((s) => s.problems);
  const area = useRef<HTMLTextAreaElement>(null);
  const gutter = useRef<HTMLPreElement>(null);
  const marked = useMemo(() => new Set(problems.map((p) => p.place?.line)), [problems]);
  const selection = useKeptSelection(area, text);
  useEffect(() => {
    const element = area.current;
    if (caret === null || !element) return;
    element.focus();
    element.setSelectionRange(caret, caret);
    const line = element.value.slice(0, caret).split('\n').length;
    element.scrollTop = (line - 8) * Number.parseFloat(getComputedStyle(element).lineHeight);
    useWorkbench.setState({ caret: null });
  }, [caret]);
  return (
    <div className="brief-text">
      <pre ref={gutter} aria-hidden="true">
        {text.split('\n').map((_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: lines have no other name than their number
          <span key={i} className={marked.has(i + 1) ? 'marked' : undefined}>
            {i + 1}
          </span>
        ))}
      </pre>
      <textarea
        ref={area}
        aria-label={texts.text.label}
        spellCheck={false}
        wrap="off"
        value={text}
        onSelect={selection}
        onChange={(e) => {
          selection(e);
          editText(e.target.value, `text ${wordNumber(e.target.value, e.target.selectionStart)}`);
        }}
        onScroll={() => {
          if (gutter.current && area.current) gutter.current.scrollTop = area.current.scrollTop;
        }}
      />
    </div>
  );
}

/** The caret stays between the same letters when undo or another window changes the text elsewhere. */
function useKeptSelection(area: RefObject<HTMLTextAreaElement | null>, text: string) {
  const selected = useRef({ from: 0, to: 0, text });
  useLayoutEffect(() => {
    const element = area.current;
    const { from, to, text: before } = selected.current;
    if (!element || before === text || element !== document.activeElement) return;
    element.setSelectionRange(carried(from, before, text), carried(to, before, text));
  }, [area, text]);
  return (event: SyntheticEvent<HTMLTextAreaElement>) => {
    const { selectionStart: from, selectionEnd: to, value } = event.currentTarget;
    selected.current = { from, to, text: value };
  };
}

/** Typing within one line counts as one edit. */
const wordNumber = (text: string, at: number): number => text.slice(0, at).split('\n').length;
