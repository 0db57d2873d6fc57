/** 1 January 1980, midnight: the first moment that a ZIP entry can name. */
const fixedTime = 0;
const fixedDate = 0x0021;

const signature = { local: 0x04034b50, central: 0x02014b50, end: 0x06054b50 } as const;

/**
 * Sets every time stamp of a ZIP archive to one fixed moment, so that equal contents have equal bytes.
 * Offsets: local header 10 (time) and 12 (date); central directory entry 12 and 14, its local header's place at 42.
 * Source: ZIP application note, sections 4.3.7, 4.3.12 and 4.3.16 (from memory).
 */
export function withFixedTimes(zip: Uint8Array): Uint8Array {
  const bytes = zip.slice();
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const end = endRecord(view);
  const count = view.getUint16(end + 10, true);
  let at = view.getUint32(end + 16, true);
  for (let i = 0; i < count; i++) {
    if (view.getUint32(at, true) !== signature.central) throw new Error('the archive has a broken directory');
    stamp(view, at + 12);
    const local = view.getUint32(at + 42, true);
    if (view.getUint32(local, true) !== signature.local) throw new Error('the archive has a broken entry');
    stamp(view, local + 10);
    at += 46 + view.getUint16(at + 28, true) + view.getUint16(at + 30, true) + view.getUint16(at + 32, true);
  }
  return bytes;
}

function stamp(view: DataView, at: number): void {
  view.setUint16(at, fixedTime, true);
  view.setUint16(at + 2, fixedDate, true);
}

function endRecord(view: DataView): number {
  for (let at = view.byteLength - 22; at >= 0; at--) if (view.getUint32(at, true) === signature.end) return at;
  throw new Error('this is no ZIP archive');
}
