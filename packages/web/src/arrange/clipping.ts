import { bounds, type Vec2 } from '@cloche/engine';
import { parseDocument, stringify } from 'yaml';
import { briefData } from '../brief/document.js';
import { fieldsAt } from '../brief/fields.js';
import { idsInUse } from '../brief/find.js';
import { listAt, type Path, valueAt } from '../brief/path.js';
import { arrangeTexts as say } from '../texts/arrange.js';
import { tell } from './arranged.js';
import { type Copied, freshIds, idsInside, type Piece, piecesOf, placed, renamed } from './copies.js';
import { memberOf } from './members.js';
import { placesOf } from './transformed.js';
import { isInside, outlineOf } from './walls.js';

const lists: readonly Path[] = [
  ['tables'],
  ['equipment'],
  ['lasers'],
  ...[
    'doors', 'windows', 'columns', 'beams', 'obstructions', 'sprinklers', 'detectors', 'exitSigns', 'boards', 'airTerminals',
    'luminaires',
  ].map((list): Path => ['room', list]),
  ...['enclosures', 'runs', 'covers', 'signs', 'stops', 'interlocks', 'sensors'].map((list): Path => ['layout', list]),
]; // biome-ignore format: one list

/** Longer texts are no part of a brief. */
const longest = 500_000;

/** Things in hand as a piece of brief text, which another project can take in. Equipment alone stands under the id of its table. */
export function clippingOf(
  data: unknown,
  ids: readonly string[],
): { readonly text: string; readonly told: readonly string[] } {
  const { pieces, told } = piecesOf(data, ids);
  const root: Record<string, unknown> = {};
  for (const { list, entry, on } of pieces) {
    if (on !== undefined) push(root, ['tables'], { id: on, equipment: [entry] });
    else push(root, list, entry);
  }
  if (pieces.length === 0) return { text: '', told };
  return { text: `# ${say.clipping(pieces.length)}\n${stringify(root, { lineWidth: 0 })}`, told };
}

function push(root: Record<string, unknown>, list: Path, entry: unknown): void {
  let object = root;
  for (const key of list.slice(0, -1)) {
    object[key as string] ??= {};
    object = object[key as string] as Record<string, unknown>;
  }
  const last = String(list.at(-1));
  object[last] = [...((object[last] as unknown[] | undefined) ?? []), entry];
}

export interface PasteOptions {
  /** Things in hand: a laser or equipment without its table goes onto the table among them. */
  readonly inHand: readonly string[];
  /** Where a group goes whose places lie outside the room. */
  readonly middle: Vec2;
}

/** A piece of brief text put into the brief under free ids; null when the text is no such piece. */
export function pasted(text: string, clipping: string, { inHand, middle }: PasteOptions): Copied | null {
  const data = briefData(text);
  const found = readPieces(clipping);
  if (!found) return null;
  const table = inHand.find((id) => memberOf(data, id)?.list === 'tables');
  const used = idsInUse(data);
  const seated = found.map((piece) => seat(piece, found, used, table, data));
  const kept = seated.flatMap((piece) => (typeof piece === 'string' ? [] : [piece]));
  const homeless = seated.filter((piece): piece is string => typeof piece === 'string');
  const taken = kept.flatMap(idsInside).filter((id) => used.has(id));
  const names = freshIds(new Set([...used, ...kept.flatMap(idsInside)]), taken);
  const pieces = kept.map((piece) => renamed(piece, names));
  const told = tell(homeless, say.pasteNeedsTable);
  if (pieces.length === 0) return { text, ids: [], told };
  const first = placed(text, pieces, [0, 0]);
  const by = shiftInto(first.text, first.ids, taken.length > 0, middle);
  return { ...(by[0] === 0 && by[1] === 0 ? first : placed(text, pieces, by)), told };
}

/** Beside what has the same places already [m]. */
const beside: Vec2 = [0.3, -0.3];

function shiftInto(text: string, ids: readonly string[], again: boolean, middle: Vec2): Vec2 {
  const data = briefData(text);
  const outline = outlineOf(data);
  const points = ids.flatMap((id) => {
    const member = memberOf(data, id);
    return member && member.on === null ? placesOf(data, member) : [];
  });
  const by: Vec2 = again ? beside : [0, 0];
  const at = (shift: Vec2) => points.map(([x, y]): Vec2 => [x + shift[0], y + shift[1]]);
  if (points.length === 0 || isInside(outline, at(by))) return by;
  if (isInside(outline, at([-by[0], -by[1]]))) return [-by[0], -by[1]];
  const { min, max } = bounds(points);
  const round = (metres: number) => Math.round(metres * 100) / 100;
  return [round(middle[0] - (min[0] + max[0]) / 2), round(middle[1] - (min[1] + max[1]) / 2)];
}

function readPieces(clipping: string): readonly Piece[] | null {
  if (clipping.length > longest) return null;
  const document = parseDocument(clipping);
  if (document.errors.length > 0) return null;
  const root: unknown = document.toJS();
  if (typeof root !== 'object' || root === null || Array.isArray(root)) return null;
  const pieces = lists.flatMap((list) => listAt(root, list).flatMap((entry) => pieceOf(list, entry)));
  return pieces.length === 0 ? null : pieces;
}

function pieceOf(list: Path, entry: unknown): readonly Piece[] {
  if (typeof entry !== 'object' || entry === null) return [];
  const id = valueAt(entry, ['id']);
  if (typeof id !== 'string') return [];
  // A table with nothing but what stands on it only tells where that stood.
  const keys = Object.keys(entry);
  if (list[0] === 'tables' && keys.every((key) => key === 'id' || key === 'equipment'))
    return listAt(entry, ['equipment']).flatMap((each) =>
      pieceOf(['tables', 0, 'equipment'], each).map((piece) => ({ ...piece, on: id })),
    );
  return [{ id, list, entry: entry as Piece['entry'] }];
}

/** The piece where it can stand, or its id when what it names is in neither of the two. */
function seat(
  piece: Piece,
  all: readonly Piece[],
  used: ReadonlySet<string>,
  table: string | undefined,
  data: unknown,
): Piece | string {
  if (piece.on !== undefined) {
    const onto = [piece.on, table].flatMap((id) => (id && memberOf(data, id)?.list === 'tables' ? [id] : []))[0];
    const path = onto ? memberOf(data, onto)!.path : undefined;
    return path ? { ...piece, list: [...path, 'equipment'] } : piece.id;
  }
  const known = (id: string) => id === 'room' || used.has(id) || all.some((other) => other.id === id);
  const entry = structuredClone(piece.entry) as Record<string, unknown>;
  for (const { path, shape } of fieldsAt([...piece.list, 0])) {
    const key = String(path[0]);
    const value = entry[key];
    if (path.length !== 1 || value === undefined) continue;
    if ('reference' in shape && typeof value === 'string' && !known(value)) {
      if (key !== 'table' || !table) return piece.id;
      entry[key] = table;
    }
    if ('references' in shape && Array.isArray(value) && !value.every((id) => known(String(id)))) return piece.id;
  }
  return { ...piece, entry };
}
