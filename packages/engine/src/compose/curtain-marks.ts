import type { Part, PartRole } from '../design/types.js';
import type { PartDraft } from './draft.js';

const letters: Partial<Record<PartRole, string>> = {
  track: 'T',
  'track curve': 'C',
  connector: 'K',
  support: 'S',
  'curtain panel': 'P',
};

/** Sizes to a tenth of a millimetre: pieces that differ by less are cut alike. */
const tenth = (value: number | undefined): string => (value === undefined ? '' : String(Math.round(value * 1e4)));

/**
 * Gives the parts of one curtain line their ids and piece marks; equal pieces share a mark, numbered in the order in which they
 * first stand along the track.
 * @param prefix start of every mark: `BAY-1` gives `BAY-1-T1`
 * @param idPrefix start of every id: the run or the side that the parts belong to
 */
export function markCurtainParts(drafts: readonly PartDraft[], prefix: string, idPrefix: string): Part[] {
  const marks = new Map<string, string>();
  const counts = new Map<string, number>();
  const next = (name: string): number => {
    const n = (counts.get(name) ?? 0) + 1;
    counts.set(name, n);
    return n;
  };
  return drafts.map((draft) => {
    const id = `${idPrefix}.${draft.role.replace(/ /g, '-')}-${next(draft.role)}`;
    const letter = letters[draft.role];
    if (!letter) return { ...draft, id };
    const key = [letter, draft.item, tenth(draft.length), tenth(draft.width), draft.note ?? ''].join('|');
    const mark = marks.get(key) ?? `${prefix}-${letter}${next(`mark ${letter}`)}`;
    marks.set(key, mark);
    return { ...draft, id, mark };
  });
}
