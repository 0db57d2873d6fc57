import type { Comparison } from '@cloche/engine';
import { type ReactNode, useState } from 'react';
import type { Computed } from '../engine/contract.js';
import { changesTexts } from '../texts/changes.js';
import { CompareFindings } from './compare-findings.js';
import { CompareParts } from './compare-parts.js';
import { ComparePlan } from './compare-plan.js';
import { CompareSummary } from './compare-summary.js';
import { CompareThings, FieldRow } from './compare-things.js';

export interface CompareSheetProps {
  readonly before: Pick<Computed, 'design'>;
  readonly after: Pick<Computed, 'design'>;
  readonly comparison: Comparison;
  /** Opens a finding of the later state, where that state is the one in the workbench. */
  readonly onOpenFinding?: ((id: string) => void) | undefined;
}

/** What differs between two states, on one sheet: in short, drawn, and told. */
export function CompareSheet({ before, after, comparison, onOpenFinding }: CompareSheetProps) {
  const [pointed, point] = useState<string | null>(null);
  const { project, geometry, findings, parts, rules, falls, catalogueChanged } = comparison;
  const say = changesTexts;
  if (isSame(comparison)) return <p className="waiting">{say.same}</p>;
  return (
    <div className="compare-sheet">
      <CompareSummary comparison={comparison} />
      <ComparePlan before={before.design} after={after.design} changes={geometry} pointed={pointed} onPoint={point} />
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: the lists are scrolled by keys */}
      <section className="compare-lists" aria-label={say.label} tabIndex={0}>
        <Part title={say.geometry.title} count={geometry.length}>
          <CompareThings changes={geometry} pointed={pointed} onPoint={point} />
        </Part>
        {project.length > 0 && (
          <Part title={say.project.title} count={project.length}>
            {project.map((field) => (
              <FieldRow key={field.field} field={field} />
            ))}
          </Part>
        )}
        {(rules.length > 0 || catalogueChanged) && (
          <Part title={say.rules.title} count={rules.length}>
            <ul className="compare-rules">
              {rules.map((rule) => (
                <li key={rule.id}>
                  {rule.meaning}: {rule.after} <span className="second">{say.geometry.was(rule.before)}</span>
                </li>
              ))}
              {catalogueChanged && <li>{say.rules.catalogue}</li>}
            </ul>
          </Part>
        )}
        <Part title={say.findings.title} count={findings.length}>
          <CompareFindings changes={findings} onOpen={onOpenFinding} />
        </Part>
        <Part title={say.parts.title} count={parts.items.length}>
          <CompareParts parts={parts} />
        </Part>
        {falls.length > 0 && (
          <Part title={say.falls.title} count={falls.reduce((n, f) => n + f.findings.length, 0)}>
            <p className="second">{say.falls.about}</p>
            <dl className="compare-falls">
              {falls.map((f) => (
                <div key={f.decider}>
                  <dt>{f.decider}</dt>
                  <dd>{say.falls.results(f.findings.length)}</dd>
                </div>
              ))}
            </dl>
          </Part>
        )}
      </section>
    </div>
  );
}

const isSame = ({ project, geometry, findings, parts, rules, catalogueChanged }: Comparison): boolean =>
  project.length + geometry.length + findings.length + parts.items.length + rules.length === 0 && !catalogueChanged;

function Part({
  title,
  count,
  children,
}: {
  readonly title: string;
  readonly count: number;
  readonly children: ReactNode;
}) {
  return (
    <section className="compare-part">
      <h3>
        {title} <span className="count">{count}</span>
      </h3>
      {count === 0 ? <p className="second">{changesTexts.none}</p> : children}
    </section>
  );
}
