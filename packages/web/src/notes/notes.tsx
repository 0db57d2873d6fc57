import { verdictOrder } from '@cloche/engine';
import { useMemo } from 'react';
import type { Finding, Verdict } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { Bundle } from './bundle.js';
import { bundles } from './bundles.js';
import { Problems } from './problems.js';
import { Questions } from './questions.js';
import { VerdictMark } from './verdict-mark.js';

/** The margin of the sheet: problems, findings by verdict, and what is still to be told. */
export function Notes() {
  const computed = useWorkbench((s) => s.computed);
  const groups = useMemo(() => groupsOf(computed?.findings ?? []), [computed]);
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: the margin is scrolled by keys
    <aside className="notes" aria-label={texts.notes.title} tabIndex={0}>
      <Problems />
      {groups.map(([verdict, findings]) => (
        <details key={verdict} className="note-group" open={verdict !== 'meets'}>
          <summary>
            <h2>
              <VerdictMark verdict={verdict} word />
              <span className="count">{findings.length}</span>
            </h2>
          </summary>
          <ul>
            {bundles(findings).map(([requirement, list]) => (
              <Bundle key={requirement} requirement={requirement} findings={list} />
            ))}
          </ul>
        </details>
      ))}
      {computed && <Questions questions={computed.design.questions} />}
    </aside>
  );
}

/** What needs a person first. */
function groupsOf(findings: readonly Finding[]): readonly (readonly [Verdict, readonly Finding[]])[] {
  return verdictOrder
    .map((verdict) => [verdict, sorted(findings.filter((f) => f.verdict === verdict))] as const)
    .filter(([, list]) => list.length > 0);
}

/** What a need or rule asks for before what is only good to know. */
const sorted = (findings: readonly Finding[]): readonly Finding[] =>
  [...findings].sort(
    (a, b) =>
      Number(b.required) - Number(a.required) || (b.utilisation ?? 0) - (a.utilisation ?? 0) || (a.id < b.id ? -1 : 1),
  );
