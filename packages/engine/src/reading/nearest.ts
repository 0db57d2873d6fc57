const plain = (word: string): string => word.toLowerCase().replace(/[^a-z0-9]/g, '');

/**
 * Number of single-letter edits (insert, delete, replace, swap of neighbours) between two words.
 * Source: optimal string alignment distance, a textbook algorithm.
 */
export function editDistance(a: string, b: string): number {
  let before: number[] = [];
  let previous = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let least = Math.min(previous[j]! + 1, row[j - 1]! + 1, previous[j - 1]! + (same ? 0 : 1));
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) least = Math.min(least, before[j - 2]! + 1);
      row.push(least);
    }
    before = previous;
    previous = row;
  }
  return previous[b.length]!;
}

/** All words, the most alike first; case, spaces and signs do not count. Equal ones by alphabet. */
export function byLikeness(word: string, known: readonly string[]): string[] {
  const wanted = plain(word);
  return known
    .map((name) => ({ name, distance: editDistance(wanted, plain(name)) }))
    .sort((a, b) => a.distance - b.distance || (a.name < b.name ? -1 : 1))
    .map(({ name }) => name);
}

/** The few known words that someone may have meant; empty when none is alike. */
export function nearest(word: string, known: readonly string[], most = 2): string[] {
  const wanted = plain(word);
  const allowed = Math.max(2, Math.floor(wanted.length / 3));
  const alike = (name: string) => {
    const other = plain(name);
    if (wanted.length >= 3 && (other.startsWith(wanted) || wanted.startsWith(other))) return true;
    return editDistance(wanted, other) <= Math.min(allowed, Math.max(wanted.length, other.length) - 1);
  };
  return byLikeness(word, known).filter(alike).slice(0, most);
}

/** `Did you mean sill?`, or what is known when nothing is alike. */
export function meantHint(word: string, known: readonly string[]): string {
  const near = nearest(word, known);
  if (near.length > 0) return `Did you mean ${near.join(' or ')}?`;
  if (known.length === 0) return 'There is none of these yet.';
  const shown = [...known].sort();
  const more = shown.length > 20 ? ` and ${shown.length - 20} more` : '';
  return `Known here: ${shown.slice(0, 20).join(', ')}${more}.`;
}
