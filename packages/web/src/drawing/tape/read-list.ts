import { counterClockwise, cross2, dot2, edges, parseQuantity, type Ring, sub2 } from '@cloche/engine';
import { drawingTexts } from '../../texts/drawing.js';
import { typedLength, type Units, writtenLength } from '../length-text.js';
import type { Diagonal, TapedWall } from './traverse.js';

const { tape: say } = drawingTexts;

/** A row of the list as it is typed. */
export interface WallRow {
  readonly length: string;
  /** `left`, `right` or `angle`: how the next wall turns off. */
  readonly turn: 'left' | 'right' | 'angle';
  /** Degrees to the left, when it is an angle. */
  readonly angle: string;
}

export interface DiagonalRow {
  /** Numbers of corners, counted from 1. */
  readonly from: string;
  readonly to: string;
  readonly measured: string;
}

/** A cell that cannot be read. */
export interface Trouble {
  readonly list: 'walls' | 'diagonals';
  readonly row: number;
  readonly cell: string;
  readonly why: string;
}

export const emptyWall: WallRow = { length: '', turn: 'left', angle: '' };
const isEmpty = ({ length }: WallRow): boolean => length.trim() === '';

/** What was typed, as numbers; rows that are still empty at the end are passed over. */
export function readWalls(rows: readonly WallRow[], units: Units) {
  const walls: TapedWall[] = [];
  const troubles: Trouble[] = [];
  const no = (row: number, cell: string, why: string) => troubles.push({ list: 'walls', row, cell, why });
  for (const [row, each] of rows.entries()) {
    if (isEmpty(each)) {
      // Rows after the last wall wait for more; one between walls is a wall that was forgotten.
      if (rows.slice(row).some((later) => !isEmpty(later))) no(row, 'length', say.gap);
      continue;
    }
    const length = typedLength(each.length, units);
    const turn = turnOf(each);
    if (length === null) no(row, 'length', say.notLength);
    else if (length <= 0) no(row, 'length', say.notPositive);
    if (turn === null) no(row, 'angle', say.notAngle);
    if (length !== null && length > 0 && turn !== null) walls.push({ length, turn });
  }
  return { walls, troubles };
}

function turnOf({ turn, angle }: WallRow): number | null {
  if (turn !== 'angle') return turn === 'left' ? Math.PI / 2 : -Math.PI / 2;
  const alone = /^-?[\d.,]+$/.test(angle.trim());
  const read = parseQuantity(alone ? `${angle.trim()} deg` : angle, 'angle');
  return read.ok ? read.value : null;
}

export function readDiagonals(rows: readonly DiagonalRow[], corners: number, units: Units) {
  const diagonals: Diagonal[] = [];
  const troubles: Trouble[] = [];
  const no = (row: number, cell: string, why: string) => troubles.push({ list: 'diagonals', row, cell, why });
  for (const [row, each] of rows.entries()) {
    if (each.measured.trim() === '') continue;
    const measured = typedLength(each.measured, units);
    const [from, to] = [each.from, each.to].map((text) => Number(text) - 1);
    const known = (n: number) => Number.isInteger(n) && n >= 0 && n < corners;
    if (measured === null || measured <= 0) no(row, 'measured', measured === null ? say.notLength : say.notPositive);
    if (!known(from!)) no(row, 'from', say.noCorner(corners));
    if (!known(to!) || from === to) no(row, 'to', from === to ? say.sameCorner : say.noCorner(corners));
    if (measured !== null && measured > 0 && known(from!) && known(to!) && from !== to)
      diagonals.push({ from: from!, to: to!, measured });
  }
  return { diagonals, troubles };
}

/** The walls of a room as a list that gives them again, the first turned to the east. */
export function rowsOf(outline: Ring, units: Units): readonly WallRow[] {
  const ring = counterClockwise(outline);
  const legs = edges(ring).map(({ from, to }) => sub2(to, from));
  return legs.map((leg, i): WallRow => {
    const next = legs[(i + 1) % legs.length]!;
    const turn = Math.atan2(cross2(leg, next), dot2(leg, next));
    const square = Math.abs(Math.abs(turn) - Math.PI / 2) < 1e-6;
    const length = writtenLength(Math.hypot(...leg), units);
    if (square) return { length, turn: turn > 0 ? 'left' : 'right', angle: '' };
    return { length, turn: 'angle', angle: `${Number(((turn * 180) / Math.PI).toFixed(4))}` };
  });
}
