import type { Decider } from '@cloche/engine';
import { useMemo, useState } from 'react';
import type { Finding, Verdict } from '../engine/contract.js';
import { showFor, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { Bundle } from './bundle.js';
import { bundles } from './bundles.js';
import { Problems } from './problems.js';
import { Questions } from './questions.js';
import { foldedAtFirst, verdictsInOrder } from './verdict-groups.js';
import { VerdictMark } from './verdict-mark.js';

/** The margin of the sheet: problems, findings by verdict, and what is still to be told. */
export function Notes() {
  const computed = useWorkbench((s) => s.computed);
  const decider = useWorkbench((s) => s.decider);
  const findings = computed?.findings ?? [];
  const shown = decider === null ? findings : findings.filter((f) => f.decider === decider);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the margin is scrolled by keys
    <aside className="notes" aria-label={texts.notes.title} tabIndex={0}>
      <Problems />
      {findings.length > 0 && <Deciders findings={findings} />}
      {verdictsInOrder.map((verdict) => (
        <Group key={verdict} verdict={verdict} findings={shown} />
      ))}
      {computed && <Questions questions={computed.design.questions} />}
    </aside>
  );
}

/** Whose decisions are shown, as a line of words. */
function Deciders({ findings }: { readonly findings: readonly Finding[] }) {
  const decider = useWorkbench((s) => s.decider);
  const known = [...new Set(findings.map((f) => f.decider))].sort();
  const word = (who: Decider | null, text: string) => (
    <button key={text} type="button" aria-pressed={decider === who} onClick={() => showFor(who)}>
      {text}
    </button>
  );
  return (
    <fieldset className="deciders">
      <legend>{texts.notes.decidedBy}</legend>
      {word(null, texts.notes.everybody)}
      {known.map((who) => word(who, who))}
    </fieldset>
  );
}

/** The findings of one verdict. What a person folds or opens stays so. */
function Group({ verdict, findings }: { readonly verdict: Verdict; readonly findings: readonly Finding[] }) {
  const [chosen, setChosen] = useState<boolean | null>(null);
  const list = useMemo(() => sorted(findings.filter((f) => f.verdict === verdict)), [findings, verdict]);
  const inHand = useWorkbench((s) => list.some((f) => f.id === s.openFinding));
  if (list.length === 0) return null;
  const open = inHand || (chosen ?? !foldedAtFirst(verdict, findings));
  return (
    <details
      className="note-group"
      open={open}
      onToggle={(e) => {
        if (e.target === e.currentTarget && e.currentTarget.open !== open) setChosen(e.currentTarget.open);
      }}
    >
      <summary>
        <h2>
          <VerdictMark verdict={verdict} word />
          <span className="count">{list.length}</span>
        </h2>
      </summary>
      <ul>
        {open &&
          bundles(list).map(([requirement, each]) => (
            <Bundle key={requirement} requirement={requirement} findings={each} />
          ))}
      </ul>
    </details>
  );
}

/** What a need or rule asks for before what is only good to know. */
const sorted = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort(
    (a, b) =>
      Number(b.required) - Number(a.required) || (b.utilisation ?? 0) - (a.utilisation ?? 0) || (a.id < b.id ? -1 : 1),
  );
