import { type ReactNode, useState } from 'react';
import { unitsOf } from '../drawing/length-text.js';
import { wallNames } from '../drawing/snap/wall-names.js';
import type { Vec2 } from '../engine/contract.js';
import { useWorkbench } from '../state/store.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { alignTo, copyBeside, copyInRow, mirrorAt, moveBy, spreadAlong, turnBy } from './act.js';
import { lines } from './lined-up.js';
import { QuantityField, siOf } from './quantity-field.js';
import { outlineOf } from './walls.js';

interface RowProps {
  readonly name: string;
  /** Its buttons stand in three columns. */
  readonly thirds?: boolean;
  readonly children: ReactNode;
}

/** One kind of action: its name and its fields and buttons. */
function Row({ name, thirds = false, children }: RowProps) {
  return (
    <fieldset className={thirds ? 'action-row thirds' : 'action-row'}>
      <legend className="visually-hidden">{name}</legend>
      <span className="action-name" aria-hidden="true">
        {name}
      </span>
      <span className="action-parts">{children}</span>
    </fieldset>
  );
}

/** What can be done with what is in hand: one line for each. */
export function ActionsForm({ several }: { readonly several: boolean }) {
  return (
    <div className="actions-form">
      {several && <LineUp />}
      <Move />
      <Turn />
      <Mirror />
      <Copy />
    </div>
  );
}

function LineUp() {
  return (
    <>
      <Row name={say.lineUp} thirds>
        {lines.map((line) => (
          <button key={line} type="button" onClick={() => alignTo(line)} title={say.lines[line].about}>
            {say.lines[line].name}
          </button>
        ))}
      </Row>
      <Row name={say.spread}>
        {([0, 1] as const).map((axis) => (
          <button key={axis} type="button" onClick={() => spreadAlong(axis)}>
            {say.axes[axis]}
          </button>
        ))}
      </Row>
    </>
  );
}

/** What a person starts from, in the units of the project. */
const useStart = (metric: string, imperial: string): string =>
  useWorkbench((s) => (unitsOf(s.data) === 'imperial' ? imperial : metric));

function Move() {
  const nothing = useStart('0 mm', '0 in');
  const [east, setEast] = useState(nothing);
  const [north, setNorth] = useState(nothing);
  const by = [siOf(east, 'length'), siOf(north, 'length')] as const;
  return (
    <Row name={say.move}>
      <QuantityField label={say.toEast} text={east} set={setEast} dimension="length" />
      <QuantityField label={say.toNorth} text={north} set={setNorth} dimension="length" />
      <button
        type="button"
        disabled={by[0] === null || by[1] === null || (by[0] === 0 && by[1] === 0)}
        onClick={() => moveBy([by[0] ?? 0, by[1] ?? 0])}
      >
        {say.doMove}
      </button>
    </Row>
  );
}

function Turn() {
  const [text, setText] = useState('90 deg');
  const angle = siOf(text, 'angle');
  return (
    <Row name={say.turn}>
      <QuantityField label={say.byAngle} text={text} set={setText} dimension="angle" />
      <button type="button" disabled={!angle} onClick={() => turnBy(angle ?? 0)}>
        {say.doTurn}
      </button>
    </Row>
  );
}

const ownMiddle = 'middle';

function Mirror() {
  const data = useWorkbench((s) => s.data);
  const [about, setAbout] = useState(ownMiddle);
  const outline = outlineOf(data);
  const names = wallNames(outline);
  const wall = about === ownMiddle ? null : Number(about);
  const mirrorAboutWall = (index: number) => {
    const [a, b] = [outline[index], outline[(index + 1) % outline.length]];
    if (a && b) mirrorAt(Math.atan2(b[1] - a[1], b[0] - a[0]), a);
  };
  return (
    <Row name={say.mirror}>
      <select aria-label={say.mirrorAbout} value={about} onChange={(e) => setAbout(e.target.value)}>
        <option value={ownMiddle}>{say.ownMiddle}</option>
        {names.map((name, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a wall is its number
          <option key={i} value={i}>
            {say.aboutWall(name, i)}
          </option>
        ))}
      </select>
      {wall === null ? (
        ([0, 1] as const).map((axis) => (
          <button key={axis} type="button" onClick={() => mirrorAt(axis === 0 ? Math.PI / 2 : 0)}>
            {say.axes[axis]}
          </button>
        ))
      ) : (
        <button type="button" onClick={() => mirrorAboutWall(wall)}>
          {say.doMirror}
        </button>
      )}
    </Row>
  );
}

const ways = { east: [1, 0], north: [0, 1], west: [-1, 0], south: [0, -1] } as const satisfies Record<string, Vec2>;
type Way = keyof typeof ways;
/** More copies than anybody places at once; a slip of the finger must not fill the brief. */
const mostInRow = 50;

function Copy() {
  const start = useStart('1 m', '3 ft');
  const [count, setCount] = useState('3');
  const [step, setStep] = useState(start);
  const [way, setWay] = useState<Way>('east');
  const [n, metres] = [Number(count), siOf(step, 'length')];
  const right = Number.isInteger(n) && n >= 2 && n <= mostInRow;
  return (
    <Row name={say.copy}>
      <button type="button" onClick={copyBeside}>
        {say.beside}
      </button>
      <span className="small-field">
        <label>
          {say.inRow}{' '}
          <input
            type="text"
            inputMode="numeric"
            className="count-field"
            aria-label={say.rowCount}
            value={count}
            onChange={(e) => setCount(e.target.value)}
            aria-invalid={!right}
            title={right ? say.rowCount : say.rowLimits(mostInRow)}
          />
        </label>
      </span>
      <QuantityField label={say.everyStep} text={step} set={setStep} dimension="length" />
      <select aria-label={say.rowWay} value={way} onChange={(e) => setWay(e.target.value as Way)}>
        {(Object.keys(ways) as Way[]).map((each) => (
          <option key={each} value={each}>
            {say.ways[each]}
          </option>
        ))}
      </select>
      <button
        type="button"
        disabled={!right || metres === null || metres <= 0}
        onClick={() => copyInRow(n, [ways[way][0] * (metres ?? 0), ways[way][1] * (metres ?? 0)])}
      >
        {say.doCopy}
      </button>
    </Row>
  );
}
