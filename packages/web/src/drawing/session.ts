import type { Vec2 } from '@cloche/engine';
import { valueAt } from '../brief/path.js';
import { drawingTexts } from '../texts/drawing.js';
import type { Edit } from './edit.js';
import { placeWords } from './place-words.js';
import type { Scene } from './scene.js';
import type { Aim, Tool, ToolField, Typed } from './tool.js';

/** A tool in hand: what is set so far, where it points, what was typed for the next point. */
export interface Session {
  readonly tool: Tool;
  readonly state: unknown;
  readonly at: Vec2;
  /** Why the pointer rests where it does, in words. */
  readonly reasons: readonly string[];
  readonly typed: Typed;
  /** What was last done, or why it could not be; said to screen readers. */
  readonly says: string;
  /** True when `says` is a refusal. */
  readonly refused: boolean;
}

export type DrawingEvent =
  | { readonly kind: 'aim'; readonly at: Vec2; readonly reasons: readonly string[]; readonly byKey?: true }
  | { readonly kind: 'put'; readonly near: number }
  | { readonly kind: 'type'; readonly field: string; readonly value: number | null }
  | { readonly kind: 'turn' }
  | { readonly kind: 'back' };

export interface Outcome {
  /** Null when the tool was laid down. */
  readonly session: Session | null;
  readonly edit?: Edit;
  /** What was done, still to be said after the tool was laid down. */
  readonly says?: string;
  readonly told?: readonly string[];
  /** The thing that was put in. */
  readonly made?: string;
}

export const begun = (tool: Tool, at: Vec2): Session => ({
  tool,
  state: tool.start,
  at,
  reasons: [],
  typed: {},
  says: '',
  refused: false,
});

/** Places are compared exactly unless something is pointed at on the screen. */
const aimOf = ({ at, typed }: Session, near = 0): Aim => ({ at, typed, near });

export const placeOf = (session: Session, scene: Scene): Vec2 =>
  session.tool.place(session.state, aimOf(session), scene);
export const fieldsOf = (session: Session, scene: Scene): readonly ToolField[] =>
  session.tool.fields(session.state, aimOf(session), scene);
/** True when what was typed settles the next point. */
export function isSettled(session: Session, scene: Scene): boolean {
  const typed = Object.keys(session.typed).length;
  return typed > 0 && typed >= (session.tool.enough ?? fieldsOf(session, scene).length);
}
export const shownOf = (session: Session, scene: Scene) => session.tool.show(session.state, aimOf(session), scene);

/** The one function through which everything goes that is done with a tool in hand. */
export function after(session: Session, event: DrawingEvent, scene: Scene): Outcome {
  switch (event.kind) {
    case 'aim': {
      const aimed = { ...session, at: event.at, reasons: event.reasons };
      if (!event.byKey) return { session: aimed };
      const says = placeWords(placeOf(aimed, scene), event.reasons, scene.units);
      return { session: { ...aimed, says, refused: false } };
    }
    case 'type': {
      const { [event.field]: _, ...others } = session.typed;
      const typed = event.value === null ? others : { ...others, [event.field]: event.value };
      return { session: { ...session, typed, refused: false } };
    }
    case 'turn': {
      const { turned } = session.tool;
      if (!turned) return { session };
      return { session: { ...session, state: turned(session.state), says: drawingTexts.hand.turned, refused: false } };
    }
    case 'back':
      return { session: stepBack(session) };
    case 'put':
      return put(session, event.near, scene);
  }
}

/** First what was typed is given up, then the last point. */
function stepBack(session: Session): Session {
  if (Object.keys(session.typed).length > 0) return { ...session, typed: {}, says: '', refused: false };
  const state = session.tool.back?.(session.state) ?? null;
  return state === null ? session : { ...session, state, says: drawingTexts.hand.back, refused: false };
}

function put(session: Session, near: number, scene: Scene): Outcome {
  const { tool, state } = session;
  const place = placeOf(session, scene);
  const next = tool.put(state, aimOf(session, near), scene);
  if (next.kind === 'no') return { session: { ...session, says: next.why, refused: true } };
  if (next.kind === 'on') {
    const says = drawingTexts.hand.set(placeWords(place, session.reasons, scene.units));
    return { session: { ...session, state: next.state, at: place, typed: {}, says, refused: false } };
  }
  const { edit, says, told = [] } = next;
  const id = edit.kind === 'entry' ? valueAt(edit.entry, ['id']) : undefined;
  // The next one of the kind stands the same way round.
  const again = tool.once ? null : { ...begun(tool, place), state: tool.turned ? state : tool.start, says };
  return { session: again, edit, says, told, ...(typeof id === 'string' ? { made: id } : {}) };
}
