import { lazy, Suspense } from 'react';
import { ProjectChanges } from '../changes/project-changes.js';
import { AskLine } from '../commands/ask-line.js';
import { SheetPlan } from '../plan/sheet-plan.js';
import { SheetView } from '../sheets/sheet-view.js';
import { show, useWorkbench, type View } from '../state/store.js';
import { texts } from '../texts.js';
import { BriefText } from './brief-text.js';
import { BugCatcher } from './bug-catcher.js';

/** The library that draws in space is large and only fetched when it is asked for. */
const SpaceView = lazy(() => import('../solid/space-view.js'));

/** A work of its own, fetched when it is asked for. */
const ScheduleView = lazy(() => import('../schedules/schedule-view.js'));

const views: readonly View[] = ['plan', 'space', 'schedules', 'text', 'sheet'];
/** In the step of changes, what differs stands before them. */
const comparingViews: readonly View[] = ['changes', ...views];
/** Views that show the brief itself, or what was drawn of it before, and say so on their own. */
const ownViews: readonly View[] = ['text', 'changes', 'schedules'];

/** The sheet itself: plan, space, text or printed plan of the same thing. */
export function MiddleSheet() {
  const view = useWorkbench((s) => s.view);
  const heldBack = useWorkbench((s) => s.problems.length > 0 && s.computed !== null);
  const comparing = useWorkbench((s) => s.step === 'changes');
  return (
    <main className="middle" id="middle" tabIndex={-1}>
      <div className="sheet-head">
        <fieldset className="views">
          <legend className="visually-hidden">{texts.views.label}</legend>
          {(comparing ? comparingViews : views).map((name) => (
            <button key={name} type="button" aria-pressed={view === name} onClick={() => show(name)}>
              {texts.views[name]}
            </button>
          ))}
        </fieldset>
        <AskLine />
      </div>
      {heldBack && !ownViews.includes(view) && <p className="held-back">{texts.plan.heldBack}</p>}
      <div className="drawing">
        <BugCatcher key={view}>
          <Shown view={view} />
        </BugCatcher>
      </div>
    </main>
  );
}

function Shown({ view }: { readonly view: View }) {
  const computed = useWorkbench((s) => s.computed);
  const refused = useWorkbench((s) => s.problems.length > 0);
  if (view === 'text') return <BriefText />;
  if (view === 'changes') return <ProjectChanges />;
  if (view === 'schedules')
    return (
      <Suspense fallback={<p className="waiting">{texts.plan.waiting}</p>}>
        <ScheduleView />
      </Suspense>
    );
  if (!computed) return <p className="waiting">{refused ? texts.plan.nothing : texts.plan.waiting}</p>;
  if (view === 'sheet') return <SheetView computed={computed} />;
  if (view === 'plan') return <SheetPlan computed={computed} />;
  return (
    <Suspense fallback={<p className="waiting">{texts.space.waiting}</p>}>
      <SpaceView design={computed.design} />
    </Suspense>
  );
}
