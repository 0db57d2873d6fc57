const count = (n: number): string => (n === 1 ? '1 thing' : `${n} things`);
const list = (ids: readonly string[]): string =>
  ids.length < 2 ? (ids[0] ?? '') : `${ids.slice(0, -1).join(', ')} and ${ids.at(-1)}`;
const verb = (ids: readonly string[], one: string, more: string): string => (ids.length === 1 ? one : more);

/** Everything about several things in hand, and about moving, turning and copying them. */
export const arrangeTexts = {
  inHand: (n: number) => `${count(n)} in hand`,
  numbers: (n: number) => `What can be done with ${count(n)}`,
  leave: 'Leave',
  arrange: 'Arrange',
  placedByOthers: (ids: readonly string[]) =>
    `${list(ids)} ${verb(ids, 'goes', 'go')} with what ${verb(ids, 'it belongs', 'they belong')} to.`,
  staysInWall: (ids: readonly string[]) =>
    `${list(ids)} ${verb(ids, 'stands', 'stand')} in a wall and would leave it; ${verb(ids, 'it stays', 'they stay')}.`,
  onlySquare: (ids: readonly string[]) =>
    `${list(ids)} ${verb(ids, 'lies', 'lie')} along the walls: moved, but not turned.`,
  onlyAlongWall: (ids: readonly string[]) =>
    `${list(ids)} can only move along ${verb(ids, 'its wall', 'their walls')}.`,
  twoToAlign: 'Take at least two things in hand to line them up.',
  threeToSpread: 'Take at least three things in hand to give them equal gaps.',
  overlapBy: (length: string) => `There is no room between them: they overlap by ${length} each.`,
  copyWhatItIsAt: (ids: readonly string[]) =>
    `${list(ids)} ${verb(ids, 'belongs', 'belong')} to something else; copy that with ${verb(ids, 'it', 'them')}.`,
  clipping: (n: number) => `A part of a brief: ${count(n)}`,
  pasteNeedsTable: (ids: readonly string[]) =>
    `${list(ids)} ${verb(ids, 'names', 'name')} something that is not here. Take the table that ${verb(ids, 'it belongs', 'they belong')} on in hand, then paste again.`,
  wentAlong: (ids: readonly string[]) => `Taken out with it: ${list(ids)}.`,
  needsWentAlong: (n: number) =>
    n === 1 ? '1 need that named it went as well.' : `${n} needs that named it went as well.`,
  compass: { east: 'east', north: 'north', west: 'west', south: 'south' },
  noWall: 'There is no such wall.',
  wallNeedsLength: 'A wall needs a length above zero.',
  wallVanishes: (side: string) => `The wall in the ${side} would vanish. Give a length that leaves some of it.`,
  wallsCross: 'Walls would cross. Give a length that leaves the room whole.',
  wallTurns: (side: string) =>
    `The corner moved, and the wall in the ${side} turned with it: no wall runs beside this one.`,
  wallMoves: (side: string, by: string, beside: string) =>
    `The wall in the ${side} moved by ${by}; the wall in the ${beside} took it up.`,
  nothingMoves: 'Nothing of this can be moved.',
} as const;
