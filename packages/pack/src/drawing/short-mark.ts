import type { Part } from '@cloche/engine';

/** The piece mark without the name of its enclosure or run in front: on drawings that name stands beside. */
export function shortMark(part: Part): string | undefined {
  const prefix = `${part.of.toUpperCase()}-`;
  return part.mark?.startsWith(prefix) ? part.mark.slice(prefix.length) : part.mark;
}

/** Said once on each sheet that shortens marks. */
export const shortMarkNote =
  'Piece marks stand without the name of their enclosure or run, which begins them on lists and stickers.';

export const shortens = (parts: readonly Part[]): boolean => parts.some((part) => shortMark(part) !== part.mark);
