import { add2, bounds, type Vec2 } from '@cloche/engine';
import { create } from 'zustand';
import { usePlanView } from '../plan/view-store.js';
import { editText, select, show, useWorkbench } from '../state/store.js';
import { drawingTexts } from '../texts/drawing.js';
import { edited } from './edit.js';
import { gridOf } from './length-text.js';
import { type Scene, sceneOf } from './scene.js';
import { after, begun, type DrawingEvent, type Session } from './session.js';
import { snapBox } from './snap/box.js';
import { snapField } from './snap/field.js';
import { snapPoint } from './snap/point.js';
import { snapOptions } from './snap/settings.js';
import { hideSnap, showSnap } from './snap/shown.js';
import type { SnapField, Snapped, SnapReason, Spot } from './snap/types.js';
import type { Tool } from './tool.js';

interface Hand {
  readonly session: Session | null;
  /** What was done with the tool that was laid down, and what needs a look. */
  readonly says: string;
  readonly told: readonly string[];
  /** Both stand on the sheet until they are seen; what is in hand afterwards shows its own numbers. */
  readonly shows: boolean;
  /** True while the crosshair is moved by keys: it is then drawn, and Enter sets the point. */
  readonly byKeys: boolean;
}

/** The drawing tool in hand, beside the store of the workbench. */
export const useHand = create<Hand>(() => ({ session: null, says: '', told: [], shows: false, byKeys: false }));

export function scene(): Scene | null {
  const { data, computed } = useWorkbench.getState();
  return computed ? sceneOf(data, computed.design) : null;
}

/** Takes a tool in hand: the plan is shown, and nothing else is held. */
export function take(tool: Tool): void {
  const now = scene();
  if (!now) return;
  const missing = tool.missing?.(now) ?? null;
  if (missing !== null) {
    useHand.setState({ says: missing, told: [], shows: true });
    return;
  }
  show('plan');
  select(null);
  const { view } = usePlanView.getState();
  const { min, max } = bounds(now.design.room.outline);
  const middle = view?.middle ?? [(min[0] + max[0]) / 2, (min[1] + max[1]) / 2];
  const grid = gridOf(now.units) * 10;
  const at: Vec2 = [Math.round(middle[0] / grid) * grid, Math.round(middle[1] / grid) * grid];
  useHand.setState({ session: begun(tool, at), says: '', told: [], shows: false, byKeys: false });
}

export function leave(): void {
  hideSnap();
  useHand.setState({ session: null, says: '', byKeys: false });
}

// A tool is laid down with the plan that it draws on, and with the brief.
useWorkbench.subscribe((now, before) => {
  if (now.opened !== before.opened) dismiss();
  if (useHand.getState().session && (now.view !== 'plan' || now.opened !== before.opened)) leave();
});

export const dismiss = (): void => useHand.setState({ says: '', told: [], shows: false });

/** Says what was done to the room, and what of it needs a look. */
export const tell = (says: string, told: readonly string[]): void => useHand.setState({ says, told, shows: true });

export function happen(event: DrawingEvent): void {
  const { session } = useHand.getState();
  const now = scene();
  if (!session || !now) return;
  const out = after(session, event, now);
  if (out.edit) editText(edited(useWorkbench.getState().text, out.edit), null);
  if (event.kind !== 'aim') hideSnap();
  useHand.setState({ session: out.session });
  if (out.edit) {
    const told = out.told ?? [];
    useHand.setState({ says: out.says ?? '', told, shows: !out.made || told.length > 0 });
  }
  if (!out.session && out.made) select(out.made);
}

/** Whole steps go without saying; in line both ways with the same corner is said once. */
const wordsOf = (reasons: readonly SnapReason[]): readonly string[] => [
  ...new Set(reasons.filter(({ kind }) => kind !== 'grid').map(({ text }) => text)),
];

let field: { readonly of: unknown; readonly field: SnapField } | null = null;

/** Built once for a state of the drawing. */
function fieldOf({ design }: Scene, units: Scene['units']): SnapField {
  if (field?.of !== design) field = { of: design, field: snapField(design, [], units) };
  return field.field;
}

/** What is set already is there to be in line with as well. */
function withSet(base: SnapField, set: readonly Vec2[]): SnapField {
  if (set.length === 0) return base;
  const spots = set.map((at, i): Spot => ({ at, kind: 'end', text: drawingTexts.hand.point(i + 1), of: '' }));
  return { ...base, spots: [...base.spots, ...spots] };
}

/** Points the tool at a place under the pointer: drawn to what is near. */
export function pointAt(at: Vec2, held: { readonly alt: boolean; readonly shift: boolean }): void {
  const { session } = useHand.getState();
  const { view } = usePlanView.getState();
  const now = scene();
  if (!session || !view || !now) return;
  const rest = snappedFor(session, at, held, now);
  const outline = session.tool.outline?.(session.state, now);
  if (rest.reasons.length === 0) hideSnap();
  else if (outline) showSnap(add2(bounds(outline).min, rest.at), rest.reasons, 'under');
  else showSnap(rest.at, rest.reasons);
  useHand.setState({ byKeys: false });
  happen({ kind: 'aim', at: rest.at, reasons: wordsOf(rest.reasons) });
}

function snappedFor(
  { tool, state, typed }: Session,
  at: Vec2,
  held: { readonly alt: boolean; readonly shift: boolean },
  now: Scene,
): { readonly at: Vec2; readonly reasons: readonly SnapReason[] } {
  const { view } = usePlanView.getState();
  if (!view || tool.pointsAtThings) return { at, reasons: [] };
  const from = tool.from?.(state);
  const set = tool.set?.(state) ?? [];
  const options = snapOptions(view, now.units, { free: held.alt, ...(from ? { from } : {}) });
  const base = withSet(fieldOf(now, now.units), set);
  const outline = tool.outline?.(state, now);
  if (outline) {
    const { by, reasons } = snapBox(base, outline, at, { ...options, anchor: [0, 0] });
    return { at: by, reasons };
  }
  const closing = set.length > 2 && Math.hypot(set[0]![0] - at[0], set[0]![1] - at[1]) <= options.reach;
  if (!tool.square || held.shift || !from || closing || Object.keys(typed).length > 0)
    return quiet(tool, snapPoint(base, at, options));
  return squared(base, from, at, options);
}

/** That a thing of the wall is on a wall goes without saying. */
const quiet = (tool: Tool, rest: Snapped): Snapped =>
  tool.slides ? { ...rest, reasons: rest.reasons.filter(({ kind }) => kind !== 'wall') } : rest;

/** The leg runs straight east or north, whichever the pointer is farther along; along it the point snaps. */
function squared(base: SnapField, from: Vec2, at: Vec2, options: Parameters<typeof snapPoint>[2]) {
  const k = Math.abs(at[0] - from[0]) >= Math.abs(at[1] - from[1]) ? 0 : 1;
  const upon = (p: Vec2): Vec2 => (k === 0 ? [p[0], from[1]] : [from[0], p[1]]);
  const rest = snapPoint(base, upon(at), options);
  const straight = upon(rest.at);
  const same = Math.hypot(straight[0] - rest.at[0], straight[1] - rest.at[1]) < 1e-6;
  // A corner beside the leg still tells how far to go; it is then only in line.
  return { at: straight, reasons: same ? rest.reasons : rest.reasons.filter(({ kind }) => kind === 'angle') };
}

/** How near a pressed key must be to call a place by its name [m]. */
const exactly = 1e-4;

/** Moves the crosshair by keys: exactly, and says what it lies on. */
export function moveBy(by: Vec2): void {
  const { session } = useHand.getState();
  const { view } = usePlanView.getState();
  const now = scene();
  if (!session || !view || !now) return;
  // Steps of a tenth of a millimetre keep a long way of arrow keys on round places.
  const at: Vec2 = [session.at[0] + by[0], session.at[1] + by[1]].map(
    (v) => Math.round(v * 1e4) / 1e4,
  ) as unknown as Vec2;
  const set = session.tool.set?.(session.state) ?? [];
  const base = withSet(fieldOf(now, now.units), set);
  const rest = snapPoint(base, at, { ...snapOptions(view, now.units), reach: exactly });
  const told = session.tool.pointsAtThings ? [] : rest.reasons.filter(({ kind }) => kind !== 'grid');
  if (told.length > 0) showSnap(at, told);
  else hideSnap();
  useHand.setState({ byKeys: true });
  happen({ kind: 'aim', at, reasons: wordsOf(told), byKey: true });
}

/** Sets the point: pointed at, near is what the screen cannot tell apart; by keys it is exact. */
export function putHere(): void {
  const { view } = usePlanView.getState();
  const { byKeys, session } = useHand.getState();
  const exact = byKeys || !view || Object.keys(session?.typed ?? {}).length > 0;
  happen({ kind: 'put', near: exact ? exactly : nearOnScreen / view.scale });
}

/** Pixels within which a click meets the first corner. */
const nearOnScreen = 9;
