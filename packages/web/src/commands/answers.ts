import type { Command } from './command.js';

/** Something that can be answered: a command, or a thing in the room. */
export interface Answerable {
  readonly id: string;
  readonly title: string;
  readonly group: string;
  readonly keys?: string | undefined;
  readonly run: () => void;
}

/** Answers that are shown at once. */
export const mostAnswers = 8;

const plain = (text: string): string => text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase();
const wordsOf = (text: string): readonly string[] =>
  plain(text)
    .split(/[^\p{L}\p{N}]+/u)
    .filter(Boolean);

/** How well a title answers what was typed: every typed word begins a word of it; 0 is best, null is not at all. */
export function rank(typed: string, title: string): number | null {
  const asked = wordsOf(typed);
  const words = wordsOf(title);
  let sum = 0;
  for (const each of asked) {
    const place = words.findIndex((word) => word.startsWith(each));
    if (place < 0) return null;
    sum += place + (words[place] === each ? 0 : 0.5);
  }
  return sum;
}

/** What answers to some typed words, the best first; nothing typed finds nothing. */
export function answersTo(typed: string, from: readonly Answerable[]): readonly Answerable[] {
  if (wordsOf(typed).length === 0) return [];
  return from
    .map((each) => ({ each, rank: rank(typed, each.title) }))
    .filter((found): found is { each: Answerable; rank: number } => found.rank !== null)
    .sort((a, b) => a.rank - b.rank || a.each.title.length - b.each.title.length || (a.each.id < b.each.id ? -1 : 1))
    .slice(0, mostAnswers)
    .map(({ each }) => each);
}

export const possible = (commands: readonly Command[]): readonly Answerable[] =>
  commands.filter((each) => each.can?.() ?? true);
