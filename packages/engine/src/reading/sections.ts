/** One named part of a text: the line `tables:` and all lines up to the next such name. */
export interface Section {
  readonly key: string;
  readonly text: string;
  /** Where it starts in the whole text. */
  readonly at: number;
}

/** Anchors, aliases, tags, directives and document marks reach over the borders of sections; quotes before the mark too. */
const reaching = /(^|[\s[{,:-])[&*!]\S|^(%|---|\.\.\.|\?)|\t|\r|\ufeff/m;
const head = /^([A-Za-z][A-Za-z0-9]*):(?=[ \n]|$)/gm;
const onlyComments = /^(?:[ ]*(?:#.*)?\n)*$/;

/**
 * A YAML text cut at the names that stand at the left edge, so that after an edit only the part that changed is read again.
 * Null where a cut could change the meaning; whether each section is sound by itself (and holds its one name alone) is for the
 * reader to see.
 */
export function sectionsOf(text: string): readonly Section[] | null {
  if (reaching.test(text)) return null;
  const heads = [...text.matchAll(head)];
  if (heads.length === 0 || !onlyComments.test(text.slice(0, heads[0]!.index))) return null;
  if (new Set(heads.map((h) => h[1])).size < heads.length) return null;
  return heads.map((h, i) => ({ key: h[1]!, text: text.slice(h.index, heads[i + 1]?.index), at: h.index }));
}
