import { knownRules, parseQuantity, type RuleId } from '@cloche/engine';
import { type ReactNode, useEffect, useMemo, useState } from 'react';
import { shownText, valueAt } from '../brief/path.js';
import { handOver } from '../state/file.js';
import { useWorkbench } from '../state/store.js';
import { shelfTexts as say } from '../texts/shelf.js';
import { versionTexts } from '../texts/shelf-versions.js';
import { texts } from '../texts.js';
import { BringFile } from './bring-file.js';
import { ChangeForm } from './change-form.js';
import { giveBack, keepRule, type OwnValue, ownRules } from './overrides.js';
import type { ProfileRule } from './rule-data.js';
import { ShelfButton } from './shelf-dialog.js';
import { loadShelf, useShelf } from './shelf-store.js';

const shapeOf = (id: string) => (knownRules as Readonly<Record<string, (typeof knownRules)[RuleId]>>)[id]?.shape;
const meaningOf = (id: string): string => knownRules[id as RuleId]?.meaning ?? id;

/** Why a value cannot be one of this rule, as far as its form tells; its limits are the engine's to check. */
function wrongFor(id: string, value: string): string | null {
  const shape = shapeOf(id);
  if (!shape || 'choice' in shape) return null;
  if ('dimension' in shape) {
    const read = parseQuantity(value, shape.dimension);
    return read.ok ? null : `${read.problems[0]?.message ?? ''} ${read.problems[0]?.hint ?? ''}`.trim();
  }
  return value !== '' && Number.isFinite(Number(value)) ? null : texts.forms.number;
}

/** The site rules in force: each value with its meaning, its source and how well that is backed. */
export function RulesLeaf({ picker }: { readonly picker: ReactNode }) {
  const { profiles, state, trouble } = useShelf();
  const named = useWorkbench((s) => shownText(valueAt(s.data, ['site', 'rules'])));
  const inForce = useWorkbench((s) => s.computed?.design.inputs.rules);
  const data = useWorkbench((s) => s.data);
  const own = useMemo(() => ownRules(data), [data]);
  const [only, setOnly] = useState(false);
  const [changing, setChanging] = useState<string | null>(null);
  useEffect(() => void loadShelf(), []);
  const profile = profiles.find(({ id }) => id === (named || 'eu')) ?? profiles[0];
  const groups = useMemo(() => {
    const byGroup = new Map<string, ProfileRule[]>();
    for (const rule of profile?.rules ?? []) {
      const group = rule.id.split('.')[0]!;
      byGroup.set(group, [...(byGroup.get(group) ?? []), rule]);
    }
    return [...byGroup];
  }, [profile]);
  return (
    <>
      <header className="schedule-head">
        {picker}
        {profile && <span className="second">{say.profile(profile.title)}</span>}
        <span className="spring" />
        {own.size > 0 && (
          <label className="tick">
            <input type="checkbox" checked={only} onChange={(e) => setOnly(e.target.checked)} /> {say.onlyChanged}
          </label>
        )}
        {profile && (
          <button
            type="button"
            onClick={() => handOver(new Blob([profile.text], { type: 'text/yaml' }), `${profile.id}.yaml`)}
          >
            {say.save}
          </button>
        )}
        <ShelfButton kind="rules" label={versionTexts.openOf} />
        <BringFile kind="rules" name={profile?.id ?? ''} />
      </header>
      {trouble && <p className="trouble-text">{trouble}</p>}
      {!profile && state !== 'there' && <p className="second">{say.waiting}</p>}
      {profile && (
        <section className="shelf-scroll" aria-label={say.profile(profile.title)} data-rules={inForce}>
          <p className="second">
            {profile.jurisdiction}. {profile.caution} {own.size > 0 && say.changedCount(own.size)}
          </p>
          <table className="rules">
            <thead>
              <tr>
                <th scope="col">{say.headings.meaning}</th>
                <th scope="col" className="figure">
                  {say.headings.value}
                </th>
                <th scope="col">{say.headings.source}</th>
                <th scope="col">
                  <span className="visually-hidden">{say.change}</span>
                </th>
              </tr>
            </thead>
            {groups.map(([group, rules]) => {
              const shown = rules.filter(({ id }) => !only || own.has(id));
              if (shown.length === 0) return null;
              return (
                <tbody key={group}>
                  <tr>
                    <th scope="rowgroup" colSpan={4} className="group-name">
                      {say.groups[group] ?? group}
                    </th>
                  </tr>
                  {shown.map((rule) => (
                    <RuleRow
                      key={rule.id}
                      rule={rule}
                      own={own.get(rule.id)}
                      changing={changing === rule.id}
                      change={(on) => setChanging(on ? rule.id : null)}
                    />
                  ))}
                </tbody>
              );
            })}
          </table>
        </section>
      )}
    </>
  );
}

function RuleRow({
  rule,
  own,
  changing,
  change,
}: {
  readonly rule: ProfileRule;
  readonly own: OwnValue | undefined;
  readonly changing: boolean;
  readonly change: (on: boolean) => void;
}) {
  const shape = shapeOf(rule.id);
  const meaning = meaningOf(rule.id);
  const index = own?.path.at(-1);
  const problem = useWorkbench((s) =>
    own ? s.problems.find(({ path }) => path[1] === 'overrides' && path[2] === index) : undefined,
  );
  return (
    <>
      <tr className={own ? 'own' : undefined} data-rule={rule.id}>
        <th scope="row">{meaning}</th>
        <td className="figure">
          {own ? own.value : rule.value}
          {own && <span className="second below">{say.instead(rule.value)}</span>}
        </td>
        <td>
          {own ? (
            say.reason(own.because)
          ) : (
            <>
              {rule.work}
              {rule.clause && <span className="second">, {rule.clause}</span>}{' '}
              <span className="mark-word">{say.marks[rule.mark] ?? rule.mark}</span>
            </>
          )}
          {problem && <span className="trouble-text below">{`${problem.message} ${problem.hint}`}</span>}
        </td>
        <td className="acts">
          {!changing && (
            <button type="button" className="quiet" aria-label={say.changeWhat(meaning)} onClick={() => change(true)}>
              {say.change}
            </button>
          )}
          {own && !changing && (
            <button type="button" className="quiet" onClick={() => giveBack(own)}>
              {say.back}
            </button>
          )}
        </td>
      </tr>
      {changing && (
        <tr>
          <td colSpan={4}>
            <ChangeForm
              what={meaning}
              value={own?.value ?? rule.value}
              because={own?.because ?? ''}
              {...(shape && 'choice' in shape ? { choices: shape.choice } : {})}
              check={(value) => wrongFor(rule.id, value)}
              keep={(value, because) => {
                keepRule(rule.id, value, because);
                change(false);
              }}
              leave={() => change(false)}
            />
          </td>
        </tr>
      )}
    </>
  );
}
