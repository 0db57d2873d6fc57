import type { Design, Finding } from '../engine/contract.js';
import type { Piece } from './pieces.js';

/** What is drawn strong: the thing in hand, parts pointed at, the subject of a note in focus. */
export interface InFocus {
  readonly selected: string | null;
  readonly pointed: ReadonlySet<string>;
  readonly subject: string | null;
}

/** What a finding is about, as far as it is something that can be drawn: a barrier's parts are those of what it belongs to. */
export const subjectOf = (findings: readonly Finding[], focused: string | null): string | null =>
  findings.find((f) => f.id === focused)?.subject ?? null;

export const isMarked = ({ id, thing, part }: Piece, { selected, pointed, subject }: InFocus): boolean =>
  thing === selected ||
  id === selected ||
  pointed.has(id) ||
  (subject !== null && (thing === subject || id === subject || part?.item === subject));

/** The barrier that a finding speaks of, drawn as a face. */
export const markedBarrier = (design: Design, subject: string | null) =>
  design.barriers.find((b) => b.id === subject) ?? null;
