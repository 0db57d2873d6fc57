import type { Vec2 } from '@cloche/engine';
import type { Design } from '../engine/contract.js';
import { usePlanView } from '../plan/view-store.js';
import { editText, endEdit, selectSeveral, useWorkbench } from '../state/store.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { type Arranged, arrangedText } from './arranged.js';
import { besideShift, boxIn } from './boxes.js';
import { clippingOf, pasted } from './clipping.js';
import { type Copied, copied } from './copies.js';
import { isLocked } from './layers.js';
import { type Axis, aligned, distributed, type Line } from './lined-up.js';
import { idsLike } from './members.js';
import { mirroring, turning } from './motion.js';
import { shifted } from './shifted.js';
import { tellAll } from './state.js';
import { takenOut } from './taken-out.js';
import { middleOfPlaces, transformed } from './transformed.js';

const now = useWorkbench.getState;

/** Writes what was arranged as one step of undo and tells what was not possible. */
export function write(arranged: Arranged, done: readonly string[] = []): void {
  const { text } = now();
  const next = arrangedText(text, arranged);
  const still = next === text && arranged.told.length === 0 ? [say.nothingToDo] : [];
  tellAll(next === text ? [...arranged.told, ...still] : [...done, ...arranged.told]);
  if (next === text) return;
  endEdit();
  editText(next, null);
}

export const moveBy = (by: Vec2): void => write(shifted(now().data, now().selection, by));

export function turnBy(angle: number): void {
  const { data, selection } = now();
  const middle = middleOfPlaces(data, selection);
  if (middle) write(transformed(data, selection, turning(middle, angle)));
  else tellAll([say.nothingTurns]);
}

/** About a line through a point, or through the middle of what is in hand. @param angle of the line from east [rad] */
export function mirrorAt(angle: number, through?: Vec2): void {
  const { data, selection } = now();
  const point = through ?? middleOfPlaces(data, selection);
  if (point) write(transformed(data, selection, mirroring(point, angle)));
  else tellAll([say.nothingTurns]);
}

/** Does something with the drawing when it shows the brief as it stands; what is drawn late must not decide where things go. */
function onceDrawn(run: (design: Design) => void): void {
  const isDrawn = () => now().computedData === now().data;
  const { computed, busy } = now();
  if (computed && isDrawn()) run(computed.design);
  else if (!busy) tellAll([say.drawnBehind]);
  else
    unlisten = useWorkbench.subscribe((state) => {
      if (state.busy) return;
      unlisten();
      if (state.computed && isDrawn()) run(state.computed.design);
      else tellAll([say.drawnBehind]);
    });
}
let unlisten = (): void => {};

export const alignTo = (line: Line): void =>
  onceDrawn((design) => write(aligned(now().data, now().selection, line, boxIn(design))));

export const spreadAlong = (axis: Axis): void =>
  onceDrawn((design) => write(distributed(now().data, now().selection, axis, boxIn(design))));

/** The card that had the focus may be gone: the sheet then takes it, so that keys go on working there. */
function keepFocus(): void {
  requestAnimationFrame(() => {
    if (document.activeElement === document.body) document.querySelector<SVGElement>('.sheet-drawing')?.focus();
  });
}

function writeCopies({ text, ids, told }: Copied): void {
  tellAll(ids.length > 0 ? [say.copied(ids), ...told] : told);
  if (ids.length === 0) return;
  endEdit();
  editText(text, null);
  selectSeveral(ids);
  keepFocus();
}

export const copyBeside = (): void =>
  onceDrawn((design) => writeCopies(copied(now().text, now().selection, besideShift(design, now().selection))));

/** @param count of all that then stand in the row @param step from one to the next [m] */
export const copyInRow = (count: number, step: Vec2): void =>
  writeCopies(copied(now().text, now().selection, step, count - 1));

export function takeOut(): void {
  const { text, selection } = now();
  const { text: next, told } = takenOut(text, selection);
  if (next === text) return;
  tellAll([say.tookOut(selection), ...told]);
  endEdit();
  editText(next, null);
  selectSeveral([]);
  keepFocus();
}

/** Everything of the kind in hand; everything when that is in hand already, or nothing is. */
export function takeAll(): void {
  const { data, selection } = now();
  const free = (ids: readonly string[]) => ids.filter((id) => !isLocked(data, id));
  const alike = free(idsLike(data, selection[0] ?? null));
  const whole = selection.length > 0 && alike.every((id) => selection.includes(id)) ? free(idsLike(data, null)) : alike;
  selectSeveral(whole);
  tellAll([say.inHand(whole.length)]);
}

/** Text on its way to the clipboard, and back when the browser gives none. */
let lastClipping = '';

export async function copyToClipboard(): Promise<boolean> {
  const { data, selection } = now();
  const { text, told } = clippingOf(data, selection);
  if (text === '') {
    tellAll(told.length > 0 ? told : [say.nothingToCopy]);
    return false;
  }
  lastClipping = text;
  tellAll([say.onClipboard(selection.length), ...told]);
  try {
    await navigator.clipboard.writeText(text);
  } catch {
    // A browser may forbid it; the clipping then only serves this window.
  }
  return true;
}

export async function cutToClipboard(): Promise<void> {
  if (await copyToClipboard()) takeOut();
}

/** Puts a clipping into the brief. @returns false when the text is none */
export function pasteText(clipping: string): boolean {
  const { text, selection } = now();
  const { view } = usePlanView.getState();
  const made = pasted(text, clipping, { inHand: selection, middle: view?.middle ?? [0, 0] });
  if (!made) return false;
  if (made.ids.length === 0) tellAll(made.told);
  else writeCopies(made);
  return true;
}

export async function pasteFromClipboard(): Promise<void> {
  let clipping = lastClipping;
  try {
    clipping = await navigator.clipboard.readText();
  } catch {
    // Without leave to read the clipboard, what was copied in this window is put in.
  }
  if (!pasteText(clipping)) tellAll([say.noClipping]);
}
