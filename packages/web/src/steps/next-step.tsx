import { listAt, type Path, valueAt } from '../brief/path.js';
import { idsOf } from '../brief/references.js';
import { type Addable, type Adding, layoutLists, needsLists, surveyLists } from '../brief/templates.js';
import { editValues, endEdit, goToStep, type StepName, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { add } from './adding.js';

/** What a step asks for next: a word about it, and what can be done with one press. */
interface Next {
  readonly says: string;
  readonly adds?: readonly (readonly [Addable, Adding])[];
  readonly goes?: StepName;
  /** Names another place in needs that were asked of the whole room. */
  readonly asks?: { readonly of: string; readonly paths: readonly Path[] };
}

const adding = (what: Addable): readonly (readonly [Addable, Adding])[] => what.adds.map((each) => [what, each]);

/** The next thing to do in a step; null when nothing stands in the way. */
export function nextOf(step: StepName, data: unknown): Next | null {
  const has = (...path: string[]) => listAt(data, path).length > 0;
  const say = texts.next;
  const made = has('layout', 'enclosures') || has('layout', 'runs');
  switch (step) {
    case 'survey':
      if (!has('tables')) return { says: say.noTable, adds: adding(surveyLists.tables) };
      if (!has('room', 'doors')) return { says: say.noDoor, adds: adding(surveyLists.doors) };
      return has('lasers') || valueAt(data, ['needs']) !== undefined ? null : { says: say.surveyed, goes: 'needs' };
    case 'needs':
      if (!has('tables')) return { says: say.tableFirst, goes: 'survey' };
      if (!has('lasers')) return { says: say.noLaser, adds: adding(needsLists.lasers) };
      if (!has('needs', 'cleanliness') && !has('needs', 'darkness'))
        return { says: say.noNeed, adds: [...adding(needsLists.cleanliness), ...adding(needsLists.darkness)] };
      return made ? null : { says: say.needed, goes: 'layout' };
    case 'layout':
      if (!has('tables')) return { says: say.tableFirst, goes: 'survey' };
      if (!made)
        return { says: say.nothingMade, adds: [...adding(layoutLists.enclosures), ...adding(layoutLists.runs)] };
      return (
        askedOfRoom(data) ??
        (has('layout', 'signs') || !has('lasers') ? null : { says: say.madeNoSign, adds: adding(layoutLists.signs) })
      );
    case 'checks':
      return made ? null : { says: say.nothingToCheck, goes: 'layout' };
    case 'parts':
      return made ? null : { says: say.noParts, goes: 'layout' };
    case 'sheets':
      return made ? null : { says: say.onlyRoom, goes: 'layout' };
    default:
      return null;
  }
}

/** A class that is asked of the whole room while a clean enclosure stands in it: it was asked before there was one. */
function askedOfRoom(data: unknown): Next | null {
  const [of] = idsOf(data, 'enclosures');
  const paths = listAt(data, ['needs', 'cleanliness']).flatMap((need, i): Path[] =>
    valueAt(need, ['where']) === 'room' ? [['needs', 'cleanliness', i, 'where']] : [],
  );
  return of !== undefined && paths.length > 0 ? { says: texts.next.askedOfRoom, asks: { of, paths } } : null;
}

/** The line at the head of a leaf that tells a newcomer what comes next. */
export function NextStep({ step }: { readonly step: StepName }) {
  const data = useWorkbench((s) => s.data);
  const next = data ? nextOf(step, data) : null;
  if (!next) return null;
  const { goes, asks } = next;
  return (
    <div className="next">
      <p>{next.says}</p>
      <div className="adds">
        {next.adds?.map(([what, each]) => (
          <button key={each.one} type="button" className="main-action" onClick={() => add(what, each)}>
            {texts.forms.add(each.one)}
          </button>
        ))}
        {asks && (
          <button
            type="button"
            className="main-action"
            onClick={() => {
              editValues(
                asks.paths.map((path) => [path, asks.of] as const),
                'asked of',
              );
              endEdit();
            }}
          >
            {texts.next.askOf(asks.of)}
          </button>
        )}
        {goes && (
          <button type="button" className="main-action" onClick={() => goToStep(goes)}>
            {texts.next.goTo(texts.steps[goes].title)}
          </button>
        )}
      </div>
    </div>
  );
}
