import { type Decider, type Direction, utilisationText } from '@cloche/engine';
import { useState } from 'react';
import type { FindingChange } from '../engine/contract.js';
import { VerdictMark } from '../notes/verdict-mark.js';
import { useWorkbench } from '../state/store.js';
import { changesTexts } from '../texts/changes.js';
import { texts } from '../texts.js';

interface CompareFindingsProps {
  readonly changes: readonly FindingChange[];
  /** Opens a finding of the later state where its calculation stands. */
  readonly onOpen?: ((id: string) => void) | undefined;
}

const open: Readonly<Record<Direction, boolean>> = { worse: true, better: true, other: false };

/** Findings that changed: what is worse, what is better, and the rest folded. */
export function CompareFindings({ changes, onOpen }: CompareFindingsProps) {
  const [who, choose] = useState<Decider | null>(null);
  const known = [...new Set(changes.map((c) => c.decider))].sort();
  const decider = who !== null && known.includes(who) ? who : null;
  const shown = decider === null ? changes : changes.filter((c) => c.decider === decider);
  const told = shown.filter((c) => c.change !== 'basis' || c.direction !== 'other');
  const basis = shown.filter((c) => c.change === 'basis' && c.direction === 'other');
  const { findings } = changesTexts;
  return (
    <>
      {known.length > 1 && <DeciderChoice changes={changes} known={known} decider={decider} choose={choose} />}
      {(['worse', 'better', 'other'] as const).map((direction) => (
        <Group
          key={`${decider} ${direction}`}
          title={findings[direction]}
          name={direction}
          changes={told.filter((c) => c.direction === direction)}
          atFirst={open[direction]}
          onOpen={onOpen}
        />
      ))}
      <Group
        key={`${decider} basis`}
        title={findings.basis}
        name="basis"
        changes={basis}
        atFirst={false}
        onOpen={onOpen}
      />
    </>
  );
}

/** Whose decisions are shown, each with how many of the differences are theirs. */
function DeciderChoice({
  changes,
  known,
  decider,
  choose,
}: {
  readonly changes: readonly FindingChange[];
  readonly known: readonly Decider[];
  readonly decider: Decider | null;
  readonly choose: (who: Decider | null) => void;
}) {
  const word = (who: Decider | null, text: string, count: number) => (
    <button key={text} type="button" aria-pressed={decider === who} onClick={() => choose(who)}>
      {text} <span className="second">{count}</span>
    </button>
  );
  return (
    <fieldset className="deciders">
      <legend>{texts.notes.decidedBy}</legend>
      {word(null, texts.notes.everybody, changes.length)}
      {known.map((who) => word(who, who, changes.filter((c) => c.decider === who).length))}
    </fieldset>
  );
}

interface GroupProps extends CompareFindingsProps {
  readonly title: string;
  readonly name: string;
  readonly atFirst: boolean;
}

/** Many findings may rest on other numbers: they are drawn when they are asked for. */
function Group({ title, name, changes, atFirst, onOpen }: GroupProps) {
  const [shown, setShown] = useState(atFirst);
  if (changes.length === 0) return null;
  return (
    <details
      className="finding-changes"
      data-direction={name}
      open={shown}
      onToggle={(event) => setShown(event.currentTarget.open)}
    >
      <summary>
        <h4>{title}</h4>
        <span className="count">{changes.length}</span>
      </summary>
      <ul>{shown && changes.map((change) => <FindingRow key={change.id} change={change} onOpen={onOpen} />)}</ul>
    </details>
  );
}

function FindingRow({
  change,
  onOpen,
}: {
  readonly change: FindingChange;
  readonly onOpen: CompareFindingsProps['onOpen'];
}) {
  const { before, after, direction } = change;
  const discipline = useWorkbench(
    (s) => s.shelf.disciplines.find((each) => each.id === change.discipline)?.title ?? change.discipline,
  );
  const inside = (
    <>
      <Verdicts change={change} />
      <span className="requirement">
        {change.requirement}
        <span className="subject">
          {changesTexts.findings.whose(change.subject, discipline.toLowerCase(), change.decider)}
        </span>
      </span>
      <Utilisations before={before?.utilisation ?? null} after={after?.utilisation ?? null} />
      {direction === 'worse' && after && <span className="message">{after.message}</span>}
    </>
  );
  return (
    <li className="finding-change" data-finding-change={change.id}>
      {onOpen && after ? (
        <button type="button" onClick={() => onOpen(change.id)}>
          {inside}
        </button>
      ) : (
        <div>{inside}</div>
      )}
    </li>
  );
}

/** The verdict before and after; one mark where it stayed, a word where there was or is none. */
function Verdicts({ change: { before, after } }: { readonly change: FindingChange }) {
  const { findings } = changesTexts;
  if (before && after && before.verdict === after.verdict)
    return (
      <span className="verdicts">
        <VerdictMark verdict={after.verdict} />
      </span>
    );
  return (
    <span className="verdicts">
      {before ? <VerdictMark verdict={before.verdict} /> : <span className="second">{findings.appeared}</span>}
      <span aria-hidden="true" className="second">
        →
      </span>
      <span className="visually-hidden">{findings.to}</span>
      {after ? <VerdictMark verdict={after.verdict} /> : <span className="second">{findings.gone}</span>}
    </span>
  );
}

function Utilisations({ before, after }: { readonly before: number | null; readonly after: number | null }) {
  const [was, is] = [before, after].map((u) => (u === null ? '' : utilisationText(u)));
  if (was === '' && is === '') return null;
  return (
    <span className="utilisations number">
      <span className="visually-hidden">{texts.notes.utilisation} </span>
      {was !== is && was !== '' && <span className="second">{was} → </span>}
      {is === '' ? changesTexts.findings.gone : is}
    </span>
  );
}
