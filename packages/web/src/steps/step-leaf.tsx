import { layoutLists, needsLists, surveyLists } from '../brief/templates.js';
import { ChangesLeaf } from '../projects/changes-leaf.js';
import { SheetsLeaf } from '../sheets/sheets-leaf.js';
import { LeafLinks } from '../shelf/leaf-links.js';
import { type StepName, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { CheckLeaf } from './check-leaf.js';
import { Entries, Form, Single } from './entries.js';
import { NextStep } from './next-step.js';
import { PartsLeaf } from './parts-leaf.js';

/** The leaf that belongs to the step in hand. */
export function StepLeaf() {
  const step = useWorkbench((s) => s.step);
  const file = useWorkbench((s) => s.opened);
  const { title, about } = texts.steps[step];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a leaf without fields is scrolled by keys
    <section className="leaf" aria-labelledby="leaf-title" tabIndex={0}>
      <h2 id="leaf-title">{title}</h2>
      <p className="second">{about}</p>
      <NextStep step={step} />
      <LeafLinks step={step} />
      {/* Another brief starts with its parts folded as they come. */}
      <Leaf key={`${step} ${file}`} step={step} />
    </section>
  );
}

const survey = Object.values(surveyLists);
const needs = Object.values(needsLists);

function Leaf({ step }: { readonly step: StepName }) {
  switch (step) {
    case 'survey':
      return (
        <>
          <Form path={['project']} title={texts.block.project} />
          <Form path={['room']} title={texts.forms.room} open />
          {survey.map((what) => (
            <Part key={what.title} what={what} open={what === surveyLists.tables} />
          ))}
        </>
      );
    case 'needs':
      return (
        <>
          <Form path={['site']} title={texts.block.rules} />
          {needs.map((what) => (
            <Part key={what.title} what={what} open={what === needsLists.lasers || what === needsLists.cleanliness} />
          ))}
          <Form path={['needs']} title={texts.lists.whole} />
        </>
      );
    case 'layout':
      return Object.values(layoutLists).map((what) => (
        <Part key={what.title} what={what} open={what === layoutLists.enclosures || what === layoutLists.runs} />
      ));
    case 'checks':
      return <CheckLeaf />;
    case 'parts':
      return <PartsLeaf />;
    case 'sheets':
      return <SheetsLeaf />;
    case 'changes':
      return <ChangesLeaf />;
    default:
      return null;
  }
}

function Part({
  what,
  open,
}: {
  readonly what: (typeof survey | typeof needs)[number] | LayoutList;
  readonly open: boolean;
}) {
  return 'single' in what && what.single ? <Single what={what} /> : <Entries what={what} open={open} />;
}

type LayoutList = (typeof layoutLists)[keyof typeof layoutLists];
