import { useCallback, useState } from 'react';
import { readBack } from '../brief/read-back.js';
import { CatalogueLeaf } from '../shelf/catalogue-leaf.js';
import { PriceListButton } from '../shelf/price-list-button.js';
import { RulesLeaf } from '../shelf/rules-leaf.js';
import { handOver } from '../state/file.js';
import { useWorkbench } from '../state/store.js';
import { scheduleTexts as say } from '../texts/schedules.js';
import { csvFile } from './block-text.js';
import { Grid } from './grid.js';
import type { Spot } from './range.js';
import { rowName, type Schedule, type ScheduleId, schedules } from './schedule.js';
import { type LeafId, openLeaf, unsort, useLook } from './state.js';
import { type GridModel, useGrid } from './use-grid.js';
import { useNeedsGrid } from './use-needs-grid.js';

const groups: readonly (readonly [string, readonly LeafId[]])[] = [
  [say.groups.survey, ['tables', 'tableEquipment', 'equipment']],
  [say.groups.needs, ['lasers', 'cleanliness', 'darkness', 'light', 'access', 'ways', 'temperature', 'needs']],
  [say.groups.layout, ['enclosures', 'runs', 'covers', 'signs', 'stops', 'interlocks', 'sensors']],
  [say.groups.money, ['prices', 'changes']],
  [say.groups.shelf, ['rules', 'catalogue']],
];

/** The brief as schedules, one at a time, and what is in force for it: site rules and catalogue. */
export default function ScheduleView() {
  const leaf = useLook((s) => s.leaf);
  const file = useWorkbench((s) => s.opened);
  return (
    <div className="schedule">
      {leaf === 'rules' ? (
        <RulesLeaf picker={<Picker />} />
      ) : leaf === 'catalogue' ? (
        <CatalogueLeaf picker={<Picker />} />
      ) : (
        <Leaf key={`${leaf} ${file}`} id={leaf} />
      )}
    </div>
  );
}

function Picker() {
  const leaf = useLook((s) => s.leaf);
  return (
    <select
      className="schedule-picker"
      aria-label={say.label}
      value={leaf}
      onChange={(e) => openLeaf(e.target.value as LeafId)}
    >
      {groups.map(([group, ids]) => (
        <optgroup key={group} label={group}>
          {ids.map((id) => (
            <option key={id} value={id}>
              {say.titles[id]}
            </option>
          ))}
        </optgroup>
      ))}
    </select>
  );
}

const Leaf = ({ id }: { readonly id: ScheduleId }) => (id === 'needs' ? <NeedsLeaf /> : <ListLeaf id={id} />);

const NeedsLeaf = () => <ScheduleLeaf model={useNeedsGrid()} />;

const ListLeaf = ({ id }: { readonly id: ScheduleId }) => <ScheduleLeaf model={useGrid(schedules[id])} />;

function ScheduleLeaf({ model }: { readonly model: GridModel }) {
  const { schedule } = model;
  const { id } = schedule;
  const sorting = useLook((s) => s.sorting);
  const [spot, setSpot] = useState<Spot>({ row: 0, column: 0 });
  const told = useCallback((at: Spot) => setSpot(at), []);
  const save = () => {
    const head = schedule.columns.map((field) => ({ text: field.label, figure: false }));
    handOver(new Blob([csvFile([head, ...model.out()])], { type: 'text/csv' }), `${id}.csv`);
  };
  return (
    <>
      <header className="schedule-head">
        <Picker />
        <span className="second">{say.count(model.rows.length)}</span>
        <span className="spring" />
        {id === 'prices' && <PriceListButton />}
        <button type="button" onClick={save} disabled={model.rows.length === 0}>
          {say.csv}
        </button>
      </header>
      {model.rows.length === 0 && <p className="second">{model.canAdd ? say.none : say.noneHere}</p>}
      {sorting && (
        <p className="second">
          {say.sorted(schedule.columns[sorting.column]?.label ?? '')}{' '}
          <button type="button" className="quiet" onClick={unsort}>
            {say.unsort}
          </button>
        </p>
      )}
      {(model.rows.length > 0 || model.canAdd) && <Grid model={model} told={told} />}
      <Answers model={model} schedule={schedule} spot={spot} />
    </>
  );
}

/** What the sheet says to the cell in focus, and how a pasted block went. */
function Answers({
  model,
  schedule,
  spot,
}: {
  readonly model: GridModel;
  readonly schedule: Schedule;
  readonly spot: Spot;
}) {
  const data = useWorkbench((s) => s.data);
  const column = schedule.columns[spot.column];
  const field = column && { ...(model.fieldAt?.(spot.row, spot.column) ?? column), label: column.label };
  const path = model.rows[spot.row];
  const view = field ? model.cell(spot.row, spot.column) : undefined;
  const text = model.whole?.(spot.row) ?? view?.text ?? '';
  const back = field && view && 'quantity' in field.shape ? readBack(text, field.shape.quantity) : null;
  const trouble = view?.refusal?.reason ?? view?.problem;
  return (
    <footer className="answers">
      <p>
        {field && (
          <span className="second">
            {say.edit(field.label, path ? (model.nameOf?.(path) ?? rowName(data, path)) : say.newRowName)}:{' '}
          </span>
        )}
        {trouble ? (
          <span className="trouble-text">{trouble}</span>
        ) : view?.applies === false ? (
          say.doesNotApply
        ) : (
          `${view?.text ?? ''}${back ? `, ${say.reads(back)}` : ''}`
        )}
      </p>
      <div role="status">
        {model.refused.length > 0 && (
          <p className="refusals">
            {model.taken > 0 && `${say.taken(model.taken)} `}
            <span className="trouble-text">{say.refused(model.refused.length)}</span>{' '}
            <button type="button" className="quiet" onClick={model.forgetRefused}>
              {say.forget}
            </button>
          </p>
        )}
      </div>
      <p className="second">{say.keys}</p>
    </footer>
  );
}
