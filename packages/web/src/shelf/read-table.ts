import { Unzip, UnzipInflate, unzipSync, zipSync } from 'fflate';
import readXlsx from 'read-excel-file/universal';
import { priceTexts as say } from '../texts/shelf.js';
import { largestList, type Separator } from './list-limits.js';
import type { PriceCell, PriceRow } from './price-list.js';
import { records, separatorOf } from './separator.js';

/** What a price list holds, before anyone says what its columns are. */
export interface TableSheet {
  readonly name: string;
  readonly rows: readonly PriceRow[];
}

export type TableRead =
  | {
      readonly ok: true;
      readonly sheets: readonly TableSheet[];
      /** Null where a person must say it; absent for files that need none. */
      readonly separator?: Separator | null;
      /** What was noticed on the way and should be seen. */
      readonly notes: readonly string[];
    }
  | { readonly ok: false; readonly reason: string };

/** What a workbook may become when it is unpacked. */
const largestUnpacked = 80 * 1024 * 1024;

/** Reads a price list as rows of cells; never runs anything in it. */
export async function readTable(bytes: Uint8Array, separator?: Separator): Promise<TableRead> {
  if (bytes.length > largestList) return { ok: false, reason: say.tooLarge };
  if (bytes.length === 0) return { ok: false, reason: say.empty };
  const isZip = bytes[0] === 0x50 && bytes[1] === 0x4b;
  const isOldWorkbook = bytes[0] === 0xd0 && bytes[1] === 0xcf;
  if (isOldWorkbook) return { ok: false, reason: say.oldWorkbook };
  try {
    return isZip ? await readWorkbook(bytes) : readText(bytes, separator);
  } catch (error) {
    return { ok: false, reason: say.unreadable(error instanceof Error ? error.message : String(error)) };
  }
}

function decoded(bytes: Uint8Array): { readonly text: string; readonly notes: readonly string[] } {
  const wide = (bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff);
  if (wide) return { text: new TextDecoder(bytes[0] === 0xff ? 'utf-16le' : 'utf-16be').decode(bytes), notes: [] };
  try {
    return { text: new TextDecoder('utf-8', { fatal: true }).decode(bytes), notes: [] };
  } catch {
    return { text: new TextDecoder('windows-1252').decode(bytes), notes: [say.oldLetters] };
  }
}

function readText(bytes: Uint8Array, said: Separator | undefined): TableRead {
  const { text, notes } = decoded(bytes);
  if (text.trim() === '') return { ok: false, reason: say.empty };
  if (text.includes('\0')) return { ok: false, reason: say.noText };
  const found = said ?? separatorOf(text);
  // In doubt the rows are shown uncut, so that a person sees what cuts them.
  const rows = found === null ? text.split(/\r\n|\r|\n/, 50).map((line) => [line]) : records(text, found);
  return { ok: true, sheets: [{ name: '', rows }], separator: found, notes };
}

/** Size of everything in an archive, counted while it is unpacked in small bites: what its head says is not believed. */
function unpackedSize(bytes: Uint8Array): number {
  let size = 0;
  const zip = new Unzip((file) => {
    file.ondata = (error, chunk) => {
      if (error) throw error;
      size += chunk.length;
      if (size > largestUnpacked) throw new Error(say.bomb);
    };
    file.start();
  });
  zip.register(UnzipInflate);
  for (let at = 0; at < bytes.length; at += 16_384)
    zip.push(bytes.subarray(at, at + 16_384), at + 16_384 >= bytes.length);
  return size;
}

async function readWorkbook(bytes: Uint8Array): Promise<TableRead> {
  unpackedSize(bytes);
  // Packed anew without compression: the reader then unpacks nothing by itself and starts no worker of its own.
  const plain = zipSync(unzipSync(bytes), { level: 0 });
  const buffer = plain.buffer.slice(plain.byteOffset, plain.byteOffset + plain.byteLength) as ArrayBuffer;
  const read = await readXlsx(buffer, { trim: false });
  const sheets = read
    .map(({ sheet, data }) => ({ name: sheet, rows: data.map((row) => row.map(cellOf)) }))
    .filter(({ rows }) => rows.some((row) => row.some((cell) => cell !== null && cell !== '')));
  return sheets.length === 0 ? { ok: false, reason: say.empty } : { ok: true, sheets, notes: [] };
}

function cellOf(value: unknown): PriceCell {
  if (value instanceof Date) return value.toISOString().slice(0, 10);
  if (typeof value === 'number' || typeof value === 'string') return value;
  return value === null || value === undefined ? null : String(value);
}
