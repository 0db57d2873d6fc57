import { useWorkbench } from '../state/store.js';
import { drawingTexts } from '../texts/drawing.js';
import { dismiss, happen, leave, useHand } from './hand.js';
import { HandField } from './hand-fields.js';
import { unitsOf } from './length-text.js';
import { PutIn } from './put-in.js';
import { type Scene, sceneOf } from './scene.js';
import { fieldsOf, type Session } from './session.js';
import { SnapSwitch } from './snap/snap-switch.js';
import { TapeList } from './tape/tape-list.js';

const { hand: say } = drawingTexts;

/** The foot of the sheet: what can be put in, or what to do next with the tool in hand. */
export function HandFoot({ design }: { readonly design: Scene['design'] }) {
  const session = useHand((s) => s.session);
  const says = useHand((s) => s.says);
  const told = useHand((s) => s.told);
  const shows = useHand((s) => s.shows);
  return (
    <div className="hand-foot">
      {!session && shows && (
        <div className="hand-told">
          {[says, ...told].filter(Boolean).map((text) => (
            <p key={text}>{text}</p>
          ))}
          <button type="button" className="quiet" onClick={dismiss}>
            {say.seen}
          </button>
        </div>
      )}
      <TapeList design={design} />
      {session ? <Guide session={session} design={design} /> : <PutIn />}
      <p className="visually-hidden" role="status">
        {session ? session.says : [says, ...told].join(' ')}
      </p>
    </div>
  );
}

function Guide({ session, design }: { readonly session: Session; readonly design: Scene['design'] }) {
  const data = useWorkbench((s) => s.data);
  const scene = sceneOf(data, design);
  const units = unitsOf(data);
  const { tool, state, typed } = session;
  const which = typed.length !== undefined && typed.angle === undefined && tool.from !== undefined;
  const hint = which ? say.which : tool.hint(state, scene);
  return (
    <section className="hand-guide" aria-label={say.label(tool.title)}>
      <p id="hand-hint" className={session.refused ? 'refused' : ''}>
        {session.refused ? session.says : `${hint} ${say.leaves}`}
      </p>
      <p id="hand-keys" className="visually-hidden">
        {units === 'imperial' ? say.keysImperial : say.keys}
      </p>
      <div className="hand-line">
        {fieldsOf(session, scene).map((field) => (
          <HandField key={field.id} field={field} units={units} />
        ))}
        <span className="hand-actions">
          {tool.back && tool.back(state) !== null && (
            <button type="button" className="quiet" onClick={() => happen({ kind: 'back' })}>
              {say.takeBack}
            </button>
          )}
          {tool.turned && (
            <button type="button" className="quiet" title={say.turnKey} onClick={() => happen({ kind: 'turn' })}>
              {say.turn}
            </button>
          )}
          {!tool.pointsAtThings && (
            <details className="snap-details">
              <summary>{say.snaps}</summary>
              <SnapSwitch />
            </details>
          )}
          <button type="button" className="quiet" onClick={leave}>
            {say.leave}
          </button>
        </span>
      </div>
    </section>
  );
}
