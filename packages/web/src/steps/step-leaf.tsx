import { addable } from '../brief/templates.js';
import { type StepName, useWorkbench } from '../state/store.js';
import { texts } from '../texts.js';
import { CheckLeaf } from './check-leaf.js';
import { Entries, Group, SingleForm } from './entries.js';
import { PartsLeaf } from './parts-leaf.js';
import { RoomCorners } from './room-corners.js';
import { SheetsLeaf } from './sheets-leaf.js';

/** The leaf that belongs to the step in hand. */
export function StepLeaf() {
  const step = useWorkbench((s) => s.step);
  const { title, about } = texts.steps[step];
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: a leaf without fields is scrolled by keys
    <section className="leaf" aria-labelledby="leaf-title" tabIndex={0}>
      <h2 id="leaf-title">{title}</h2>
      <p className="second">{about}</p>
      <Leaf step={step} />
    </section>
  );
}

function Leaf({ step }: { readonly step: StepName }) {
  switch (step) {
    case 'survey':
      return (
        <>
          <SingleForm path={['project']} title={texts.block.project} />
          <SingleForm path={['room']} title={texts.forms.room} open />
          <RoomCorners />
          <Entries what={addable.tables} open />
          <Entries what={addable.doors} />
          <Entries what={addable.windows} />
          <Entries what={addable.columns} />
          <Entries what={addable.obstructions} />
          {(['sprinklers', 'detectors', 'exitSigns', 'boards', 'beams', 'airTerminals', 'luminaires'] as const).map(
            (list) => (
              <Group key={list} list={['room', list]} title={texts.lists[list]} />
            ),
          )}
        </>
      );
    case 'needs':
      return (
        <>
          <SingleForm path={['site']} title={texts.block.rules} open />
          <Entries what={addable.lasers} open />
          {(['cleanliness', 'darkness', 'ways', 'access', 'light', 'temperature'] as const).map((list) => (
            <Group key={list} list={['needs', list]} title={texts.lists[list]} />
          ))}
          <SingleForm path={['needs']} title={texts.lists.whole} />
        </>
      );
    case 'layout':
      return (
        <>
          <Group list={['layout', 'enclosures']} title={texts.lists.enclosures} open />
          <Entries what={addable.runs} open />
          {(['covers', 'signs', 'stops', 'interlocks', 'sensors'] as const).map((list) => (
            <Group key={list} list={['layout', list]} title={texts.lists[list]} />
          ))}
        </>
      );
    case 'checks':
      return <CheckLeaf />;
    case 'parts':
      return <PartsLeaf />;
    case 'sheets':
      return <SheetsLeaf />;
    default:
      return null;
  }
}
