import { useEffect, useRef, useState } from 'react';
import type { Design, Vec2 } from '../../engine/contract.js';
import { editText, useWorkbench } from '../../state/store.js';
import { drawingTexts } from '../../texts/drawing.js';
import { edited } from '../edit.js';
import { tell } from '../hand.js';
import { lengthText, type Units, unitsOf } from '../length-text.js';
import { sceneOf } from '../scene.js';
import { sideOf } from '../snap/wall-names.js';
import { closeTapeList, useTapeList } from './open.js';
import {
  type DiagonalRow,
  emptyWall,
  readDiagonals,
  readWalls,
  rowsOf,
  type Trouble,
  type WallRow,
} from './read-list.js';
import { isRoom, tapeEdit } from './tape-edit.js';
import { TapeSketch } from './tape-sketch.js';
import { diagonalErrors, spreadCorners, suspects, type Traverse, traverse } from './traverse.js';

const { tape: say, snap } = drawingTexts;

/** The list lies over the sheet while it is filled in. */
export function TapeList({ design }: { readonly design: Design }) {
  const open = useTapeList((s) => s.open);
  return open ? <Dialog design={design} /> : null;
}

const noDiagonal: DiagonalRow = { from: '', to: '', measured: '' };
const replaced = <T,>(rows: readonly T[], at: number, row: T): readonly T[] => rows.map((r, i) => (i === at ? row : r));

function Dialog({ design }: { readonly design: Design }) {
  const data = useWorkbench((s) => s.data);
  const units = unitsOf(data);
  const [rows, setRows] = useState<readonly WallRow[]>([emptyWall, emptyWall, emptyWall, emptyWall]);
  const [crossed, setCrossed] = useState<readonly DiagonalRow[]>([noDiagonal]);
  const dialog = useRef<HTMLDialogElement>(null);
  useEffect(() => dialog.current?.showModal(), []);
  const { walls, troubles } = readWalls(rows, units);
  const drawn = traverse(walls);
  const measured = readDiagonals(crossed, walls.length, units);
  const put = (corners: readonly Vec2[]) => {
    const { edit, told } = tapeEdit(corners, measured.diagonals, sceneOf(data, design));
    editText(edited(useWorkbench.getState().text, edit), null);
    tell(say.done(corners.length), told);
    dialog.current?.close();
  };
  return (
    <dialog ref={dialog} className="tape-list" aria-labelledby="tape-title" onClose={closeTapeList}>
      <form method="dialog" onSubmit={(event) => event.preventDefault()}>
        <h2 id="tape-title">{say.heading}</h2>
        <p className="second">{say.about}</p>
        <div className="tape-halves">
          <div>
            <Walls
              rows={rows}
              set={setRows}
              troubles={troubles}
              drawn={() => setRows(rowsOf(design.room.outline, units))}
            />
            <Diagonals
              rows={crossed}
              set={setCrossed}
              troubles={measured.troubles}
              errors={diagonalErrors(drawn.corners, measured.diagonals)}
              units={units}
            />
          </div>
          <div>
            <TapeSketch drawn={drawn} />
            <Closing drawn={drawn} readable={troubles.length === 0} units={units} />
          </div>
        </div>
        <Actions
          drawn={drawn}
          ready={troubles.length + measured.troubles.length === 0}
          put={put}
          cancel={() => dialog.current?.close()}
          units={units}
        />
      </form>
    </dialog>
  );
}

interface WallsProps {
  readonly rows: readonly WallRow[];
  readonly set: (rows: readonly WallRow[]) => void;
  readonly troubles: readonly Trouble[];
  /** Fills the list with the room as it is drawn. */
  readonly drawn: () => void;
}

const troubleAt = (troubles: readonly Trouble[], row: number, cell: string): string | undefined =>
  troubles.find((t) => t.row === row && t.cell === cell)?.why;

function Cell(props: {
  readonly label: string;
  readonly value: string;
  readonly trouble: string | undefined;
  readonly set: (text: string) => void;
}) {
  return (
    <input
      type="text"
      autoComplete="off"
      spellCheck={false}
      aria-label={props.label}
      aria-invalid={props.trouble !== undefined}
      title={props.trouble ?? props.label}
      value={props.value}
      onChange={(event) => props.set(event.target.value)}
    />
  );
}

function Walls({ rows, set, troubles, drawn }: WallsProps) {
  const put = (i: number, row: WallRow) => set(replaced(rows, i, row));
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">{say.wall}</th>
          <th scope="col">{say.length}</th>
          <th scope="col">{say.turn}</th>
          <th scope="col">{say.angle}</th>
          <td />
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a wall is its number
          <tr key={i}>
            <th scope="row">{i + 1}</th>
            <td>
              <Cell
                label={say.lengthOf(i + 1)}
                value={row.length}
                trouble={troubleAt(troubles, i, 'length')}
                set={(length) => put(i, { ...row, length })}
              />
            </td>
            <td>
              <select
                aria-label={say.turnAfter(i + 1)}
                value={row.turn}
                onChange={(event) => put(i, { ...row, turn: event.target.value as WallRow['turn'] })}
              >
                {(['left', 'right', 'angle'] as const).map((turn) => (
                  <option key={turn} value={turn}>
                    {say.turns[turn]}
                  </option>
                ))}
              </select>
            </td>
            <td>
              {row.turn === 'angle' && (
                <Cell
                  label={say.angleAfter(i + 1)}
                  value={row.angle}
                  trouble={troubleAt(troubles, i, 'angle')}
                  set={(angle) => put(i, { ...row, angle })}
                />
              )}
            </td>
            <td>
              {rows.length > 3 && (
                <button
                  type="button"
                  className="quiet"
                  aria-label={say.removeWall(i + 1)}
                  onClick={() => set(rows.filter((_, j) => j !== i))}
                >
                  {say.remove}
                </button>
              )}
            </td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={5}>
            <button type="button" onClick={() => set([...rows, emptyWall])}>
              {say.addWall}
            </button>{' '}
            <button type="button" onClick={drawn}>
              {say.asDrawn}
            </button>
            {troubles[0] && <span className="trouble">{say.inRow(troubles[0].row + 1, troubles[0].why)}</span>}
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

interface DiagonalsProps {
  readonly rows: readonly DiagonalRow[];
  readonly set: (rows: readonly DiagonalRow[]) => void;
  readonly troubles: readonly Trouble[];
  /** Measured less drawn, of the rows that could be read. */
  readonly errors: readonly number[];
  readonly units: Units;
}

function Diagonals({ rows, set, troubles, errors, units }: DiagonalsProps) {
  const put = (i: number, row: DiagonalRow) => set(replaced(rows, i, row));
  const read = rows.map((row, i) => row.measured.trim() !== '' && !troubles.some((t) => t.row === i));
  const errorOf = (i: number): number | undefined =>
    read[i] ? errors[read.slice(0, i).filter(Boolean).length] : undefined;
  return (
    <table>
      <caption>{say.diagonals}</caption>
      <thead>
        <tr>
          <th scope="col">{say.from}</th>
          <th scope="col">{say.to}</th>
          <th scope="col">{say.measured}</th>
          <th scope="col">{say.differs}</th>
        </tr>
      </thead>
      <tbody>
        {rows.map((row, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a diagonal is its row
          <tr key={i}>
            {(['from', 'to', 'measured'] as const).map((cell) => (
              <td key={cell} className={cell}>
                <Cell
                  label={say.diagonalCell(i + 1, say[cell])}
                  value={row[cell]}
                  trouble={troubleAt(troubles, i, cell)}
                  set={(text) => put(i, { ...row, [cell]: text })}
                />
              </td>
            ))}
            <td className="number">{errorOf(i) === undefined ? '' : signed(errorOf(i)!, units)}</td>
          </tr>
        ))}
      </tbody>
      <tfoot>
        <tr>
          <td colSpan={4}>
            <button type="button" onClick={() => set([...rows, noDiagonal])}>
              {say.addDiagonal}
            </button>
            {troubles[0] && <span className="trouble">{say.inRow(troubles[0].row + 1, troubles[0].why)}</span>}
          </td>
        </tr>
      </tfoot>
    </table>
  );
}

const signed = (metres: number, units: Units): string =>
  `${metres > 0 ? '+' : metres < 0 ? '\u2212' : ''}${lengthText(Math.abs(metres), units)}`;

/** Smaller than this, a list closes: nobody tapes finer [m]. */
const closes = 1e-4;

/** How far the list is from closing, which way, and what one wrong length would explain it. */
function Closing({
  drawn,
  readable,
  units,
}: {
  readonly drawn: Traverse;
  readonly readable: boolean;
  readonly units: Units;
}) {
  const { error, legs, perimeter, turnError } = drawn;
  if (!readable) return <p className="second">{say.unread}</p>;
  if (legs.length < 3) return <p className="second">{say.waits}</p>;
  const size = Math.hypot(...error);
  const turns =
    Math.abs(turnError) > 1e-6 ? say.turnError(`${Math.round((turnError * 1800) / Math.PI) / 10}\u00b0`) : null;
  if (size < closes)
    return (
      <div role="status">
        <p>{say.closes}</p>
        {turns && <p>{turns}</p>}
      </div>
    );
  const wrong = suspects(drawn).map((i) => i + 1);
  return (
    <div role="status">
      <p>
        <strong>{say.error(lengthText(size, units))}</strong>
      </p>
      <p>
        {say.lies(
          snap.sides[sideOf([-error[0], -error[1]])],
          lengthText(Math.abs(error[0]), units),
          lengthText(Math.abs(error[1]), units),
        )}
      </p>
      <p className="second">{say.ratio(Math.round(perimeter / size))}</p>
      <p>{wrong.length > 0 ? say.suspects(wrong) : say.noSuspect}</p>
      {turns && <p>{turns}</p>}
    </div>
  );
}

interface ActionsProps {
  readonly drawn: Traverse;
  readonly ready: boolean;
  readonly put: (corners: readonly Vec2[]) => void;
  readonly cancel: () => void;
  readonly units: Units;
}

/** An error is never spread in silence: one of two ways is chosen, or the list is looked at again. */
function Actions({ drawn, ready, put, cancel, units }: ActionsProps) {
  const { corners, error, legs } = drawn;
  const closed = Math.hypot(...error) < closes;
  const spread = closed ? corners : spreadCorners(drawn);
  const can = (points: readonly Vec2[]) => ready && legs.length > 2 && isRoom(points);
  const last = corners.at(-1);
  const lastLength = last ? Math.hypot(...last) : 0;
  return (
    <footer>
      {ready && legs.length > 2 && !isRoom(corners) && <p className="trouble">{say.noRoom}</p>}
      {closed ? (
        <button type="button" className="main" disabled={!can(corners)} onClick={() => put(corners)}>
          {say.take}
        </button>
      ) : (
        <>
          <button type="button" disabled={!can(spread)} onClick={() => put(spread)}>
            {say.spread}
          </button>
          <button type="button" disabled={!can(corners)} onClick={() => put(corners)}>
            {say.leaveLast(legs.length, lengthText(lastLength, units))}
          </button>
        </>
      )}
      <button type="button" className="quiet" onClick={cancel}>
        {say.cancel}
      </button>
      {!closed && legs.length > 2 && <p className="second">{say.spreadAbout}</p>}
    </footer>
  );
}
