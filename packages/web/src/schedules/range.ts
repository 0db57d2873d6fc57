/** A cell by its place in the grid, as shown. */
export interface Spot {
  readonly row: number;
  readonly column: number;
}

/** Cells from where a person began to where they are now. */
export interface Range {
  readonly anchor: Spot;
  readonly active: Spot;
}

export interface Extent {
  readonly rows: number;
  readonly columns: number;
}

const between = (low: number, value: number, high: number): number => Math.max(low, Math.min(high, value));

export const corners = ({ anchor, active }: Range) => ({
  top: Math.min(anchor.row, active.row),
  bottom: Math.max(anchor.row, active.row),
  left: Math.min(anchor.column, active.column),
  right: Math.max(anchor.column, active.column),
});

export function holds(range: Range, { row, column }: Spot): boolean {
  const { top, bottom, left, right } = corners(range);
  return row >= top && row <= bottom && column >= left && column <= right;
}

export const isSingle = ({ anchor, active }: Range): boolean =>
  anchor.row === active.row && anchor.column === active.column;

/** Where a key leads; undefined for keys that do not move. A page is the rows in sight. */
export function moved(key: string, ctrl: boolean, from: Spot, extent: Extent, page: number): Spot | undefined {
  const [lastRow, lastColumn] = [extent.rows - 1, extent.columns - 1];
  const at = (row: number, column: number): Spot => ({
    row: between(0, row, lastRow),
    column: between(0, column, lastColumn),
  });
  switch (key) {
    case 'ArrowUp':
      return at(ctrl ? 0 : from.row - 1, from.column);
    case 'ArrowDown':
      return at(ctrl ? lastRow : from.row + 1, from.column);
    case 'ArrowLeft':
      return at(from.row, ctrl ? 0 : from.column - 1);
    case 'ArrowRight':
      return at(from.row, ctrl ? lastColumn : from.column + 1);
    case 'Home':
      return at(ctrl ? 0 : from.row, 0);
    case 'End':
      return at(ctrl ? lastRow : from.row, lastColumn);
    case 'PageUp':
      return at(from.row - page, from.column);
    case 'PageDown':
      return at(from.row + page, from.column);
    default:
      return undefined;
  }
}
