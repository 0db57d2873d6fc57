import { listAt, valueAt } from '../brief/path.js';
import { type Addable, layoutLists, needsLists, surveyLists } from '../brief/templates.js';
import { goToStep, type StepName, stepNames, useWorkbench, type Workbench } from '../state/store.js';
import { texts } from '../texts.js';

/** The eight steps as numbered lines, each with its state. */
export function SheetIndex() {
  const step = useWorkbench((s) => s.step);
  return (
    <nav className="index" aria-label={texts.index}>
      <ol>
        {stepNames.map((name, i) => (
          <IndexLine key={name} name={name} number={i + 1} current={name === step} />
        ))}
      </ol>
    </nav>
  );
}

function IndexLine({
  name,
  number,
  current,
}: {
  readonly name: StepName;
  readonly number: number;
  readonly current: boolean;
}) {
  const state = useWorkbench((s) => stateOf(name, s));
  return (
    <li>
      <button type="button" aria-current={current ? 'step' : undefined} onClick={() => goToStep(name)}>
        <span className="number">{number}</span>
        <span className="title">{texts.steps[name].title}</span>
        <span className="state">{state}</span>
      </button>
    </li>
  );
}

/** What there is to know about a step, in two words. */
function stateOf(name: StepName, s: Workbench): string {
  const say = texts.stepState;
  switch (name) {
    case 'survey':
      return s.problems.length > 0 ? say.problems(s.problems.length) : say.things(countOf(s, survey));
    case 'needs':
      return say.needs(countOf(s, needs));
    case 'layout':
      return say.things(countOf(s, layout));
    case 'checks':
      return checkState(s);
    case 'parts':
      return s.computed ? say.pieces(s.computed.design.parts.reduce((n, p) => n + p.count, 0)) : '';
    case 'sheets':
      return s.problems.length === 0 && s.computed ? say.ready : say.waits;
    case 'changes':
      return s.text === s.savedText ? say.unchanged : say.changed;
    default:
      return say.toCome;
  }
}

const survey = Object.values(surveyLists);
const needs = Object.values(needsLists);
const layout = Object.values(layoutLists);

/** Entries of lists, and objects that are there. */
const countOf = (s: Workbench, lists: readonly Addable[]): number =>
  lists.reduce(
    (n, { list, single }) => n + (single ? Number(valueAt(s.data, list) !== undefined) : listAt(s.data, list).length),
    0,
  );

function checkState({ computed }: Workbench): string {
  if (!computed) return '';
  const count = (verdict: string) => computed.findings.filter((f) => f.verdict === verdict).length;
  const [fails, attention, open] = [count('fails'), count('attention'), count('not assessed')];
  if (fails > 0) return texts.stepState.fails(fails);
  if (attention > 0) return texts.stepState.attention(attention);
  return open > 0 ? texts.stepState.open(open) : texts.stepState.settled;
}
