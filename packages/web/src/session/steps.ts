import type { NewStep, Splice } from '@cloche/store';

export type { NewStep, Splice, Step } from '@cloche/store';

const isHigh = (text: string, at: number): boolean => (text.charCodeAt(at) & 0xfc00) === 0xd800;
const isLow = (text: string, at: number): boolean => (text.charCodeAt(at) & 0xfc00) === 0xdc00;

/** The least replacement that makes one text the other, a character of two units never cut; none between equal texts. */
export function spliceBetween(before: string, after: string): readonly Splice[] {
  if (before === after) return [];
  const shorter = Math.min(before.length, after.length);
  let start = 0;
  while (start < shorter && before.charCodeAt(start) === after.charCodeAt(start)) start++;
  if (start > 0 && isHigh(before, start - 1)) start--;
  let end = 0;
  while (
    end < shorter - start &&
    before.charCodeAt(before.length - 1 - end) === after.charCodeAt(after.length - 1 - end)
  )
    end++;
  if (end > 0 && isLow(before, before.length - end)) end--;
  return [{ at: start, out: before.slice(start, before.length - end), in: after.slice(start, after.length - end) }];
}

/** The text after splices; null when one takes out what does not stand in its place. */
export function spliced(text: string, splices: readonly Splice[]): string | null {
  let now = text;
  for (const { at, out, in: put } of splices) {
    if (at > now.length || !now.startsWith(out, at)) return null;
    now = now.slice(0, at) + put + now.slice(at + out.length);
  }
  return now;
}

/** Where a place in one text is in the other, when the change between them lies elsewhere; else the end of the change. */
export function carried(at: number, before: string, after: string): number {
  const [splice] = spliceBetween(before, after);
  if (!splice || at <= splice.at) return at;
  const end = splice.at + splice.out.length;
  return splice.at + splice.in.length + Math.max(0, at - end);
}

/** What takes splices back. */
export const inverse = (splices: readonly Splice[]): readonly Splice[] =>
  splices.map(({ at, out, in: put }) => ({ at, out: put, in: out })).reverse();

/** The text after steps; null when one does not fit. */
export const replayed = (text: string, steps: readonly Pick<NewStep, 'splices'>[]): string | null =>
  steps.reduce<string | null>((now, { splices }) => (now === null ? null : spliced(now, splices)), text);

/** The text before steps; null when they do not lead to this one. */
export const rewound = (text: string, steps: readonly Pick<NewStep, 'splices'>[]): string | null =>
  spliced(text, inverse(steps.flatMap(({ splices }) => splices)));

/** True when a step that came from the server is the one that was sent. */
export const sameStep = (a: NewStep, b: NewStep): boolean =>
  a.window === b.window &&
  a.group === b.group &&
  a.kind === b.kind &&
  a.splices.length === b.splices.length &&
  a.splices.every((s, i) => s.at === b.splices[i]!.at && s.out === b.splices[i]!.out && s.in === b.splices[i]!.in);
