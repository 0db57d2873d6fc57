import type { Part, PartRole } from '../design/types.js';

/** A part before it has its id and piece mark. */
export type PartDraft = Omit<Part, 'id' | 'mark'>;

/** Letter of the piece mark by function; roles without one carry no mark. */
const letters: Partial<Record<PartRole, string>> = {
  post: 'P',
  beam: 'B',
  'cross beam': 'X',
  rail: 'R',
  'side panel': 'W',
  'roof panel': 'D',
  'fan filter unit': 'F',
  light: 'L',
  cover: 'V',
  'strip panel': 'Q',
  'slot cover': 'O',
};

const millimetres = (value: number | undefined): string => (value === undefined ? '' : String(Math.round(value * 1e4)));

/** What makes two pieces equal: function, item, and sizes to a tenth of a millimetre. */
const pieceKey = (d: PartDraft): string =>
  [d.role, d.item, millimetres(d.length), millimetres(d.width), millimetres(d.thickness), d.note ?? ''].join('|');

/**
 * Gives ids and piece marks: equal pieces share a mark, numbered in the order in which they first stand.
 * @param prefix start of every mark: the enclosure's or run's id in capitals
 */
export function finishParts(of: string, drafts: readonly PartDraft[]): Part[] {
  const prefix = of.toUpperCase();
  const marks = new Map<string, string>();
  const perLetter = new Map<string, number>();
  const perRole = new Map<string, number>();
  const next = (counts: Map<string, number>, key: string): number => {
    const n = (counts.get(key) ?? 0) + 1;
    counts.set(key, n);
    return n;
  };
  return drafts.map((draft) => {
    const id = `${of}.${draft.role.replace(/ /g, '-')}-${next(perRole, draft.role)}`;
    const letter = letters[draft.role];
    if (!letter) return { ...draft, id };
    const key = pieceKey(draft);
    const mark = marks.get(key) ?? `${prefix}-${letter}${next(perLetter, letter)}`;
    marks.set(key, mark);
    return { ...draft, id, mark };
  });
}
