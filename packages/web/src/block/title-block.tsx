import { verdictsInOrder } from '../notes/verdict-groups.js';
import { VerdictMark } from '../notes/verdict-mark.js';
import { scaleNumber } from '../plan/view.js';
import { usePlanView } from '../plan/view-store.js';
import { shortHash } from '../projects/short-hash.js';
import { useWorkbench } from '../state/store.js';
import { liveTexts } from '../texts/live.js';
import { texts } from '../texts.js';
import { FileCell } from './file-cell.js';

/** What the sheet knows about itself, along its lower edge. */
export function TitleBlock() {
  const design = useWorkbench((s) => s.computed?.design);
  return (
    <section className="title-block" aria-label={texts.block.label}>
      <div className="cell project">
        <span className="caption">
          {design?.project.invented ? `${texts.block.project}, ${texts.block.invented}` : texts.block.project}
        </span>
        <h1 title={design?.project.name}>{design?.project.name ?? texts.name}</h1>
      </div>
      <Cell caption={texts.block.rules}>{design?.rules.title ?? '–'}</Cell>
      <Cell caption={texts.block.units}>{design ? texts.block[design.project.units] : '–'}</Cell>
      <ScaleCell />
      <RevisionCell />
      <VerdictCell />
      <FileCell />
    </section>
  );
}

function Cell({ caption, children }: { readonly caption: string; readonly children: string }) {
  return (
    <div className="cell">
      <span className="caption">{caption}</span>
      <span className="value" title={children}>
        {children}
      </span>
    </div>
  );
}

function ScaleCell() {
  const view = usePlanView((s) => s.view);
  const inPlan = useWorkbench((s) => s.view === 'plan');
  return <Cell caption={texts.block.scale}>{view && inPlan ? `1:${scaleNumber(view)}` : '–'}</Cell>;
}

function RevisionCell() {
  const revision = useWorkbench((s) => s.computed?.revision);
  const state = useWorkbench((s) => (s.problems.length > 0 ? texts.block.stale : s.busy ? texts.block.computing : ''));
  return (
    <div className="cell revision">
      <span className="caption">
        {texts.block.revision} <span className="busy">{state}</span>
      </span>
      <span className="value" data-revision={revision ?? ''} title={revision}>
        {revision ? shortHash(revision) : '–'}
      </span>
    </div>
  );
}

function VerdictCell() {
  const findings = useWorkbench((s) => s.computed?.findings);
  const pending = useWorkbench((s) => s.computed?.pending === true);
  return (
    <div className="cell verdicts" aria-live="polite">
      <span className="caption">
        {texts.block.verdicts}{' '}
        <span className="busy" aria-hidden="true">
          {pending ? liveTexts.someStale : ''}
        </span>
      </span>
      <span className="value">
        {verdictsInOrder.map((verdict) => (
          <span key={verdict} className="tally-item">
            <VerdictMark verdict={verdict} />
            {findings?.filter((f) => f.verdict === verdict).length ?? '–'}
          </span>
        ))}
      </span>
    </div>
  );
}
