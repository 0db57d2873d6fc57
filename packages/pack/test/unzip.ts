import { inflateRawSync } from 'node:zlib';

/** Entries of a ZIP archive by name, read from its central directory (ZIP application note 4.3.12, 4.3.16). */
export function unzip(
  bytes: Uint8Array,
): Map<string, { readonly text: string; readonly date: number; readonly time: number }> {
  const buffer = Buffer.from(bytes);
  const end = buffer.lastIndexOf(Buffer.from([0x50, 0x4b, 0x05, 0x06]));
  const entries = new Map<string, { text: string; date: number; time: number }>();
  let at = buffer.readUInt32LE(end + 16);
  for (let i = 0; i < buffer.readUInt16LE(end + 10); i++) {
    const [method, size] = [buffer.readUInt16LE(at + 10), buffer.readUInt32LE(at + 20)];
    const [nameLength, extra, comment] = [28, 30, 32].map((o) => buffer.readUInt16LE(at + o)) as [
      number,
      number,
      number,
    ];
    const local = buffer.readUInt32LE(at + 42);
    const start = local + 30 + buffer.readUInt16LE(local + 26) + buffer.readUInt16LE(local + 28);
    const raw = buffer.subarray(start, start + size);
    const name = buffer.toString('utf8', at + 46, at + 46 + nameLength);
    const text = (method === 0 ? raw : inflateRawSync(raw)).toString('utf8');
    entries.set(name, { text, time: buffer.readUInt16LE(local + 10), date: buffer.readUInt16LE(local + 12) });
    at += 46 + nameLength + extra + comment;
  }
  return entries;
}
