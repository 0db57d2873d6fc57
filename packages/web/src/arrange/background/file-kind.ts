export type FileKind = 'image/png' | 'image/jpeg' | 'image/webp' | 'image/vnd.dxf';

/** No larger file is taken in [bytes]. */
export const largestFile = 16 * 1024 * 1024;

const starts = (bytes: Uint8Array, at: number, ...values: readonly number[]): boolean =>
  values.every((value, i) => bytes[at + i] === value);

const letters = (text: string): readonly number[] => [...text].map((c) => c.charCodeAt(0));

/** What a file is by its first bytes, whatever it is called; null for what cannot lie under the drawing. */
export function kindOf(bytes: Uint8Array): FileKind | null {
  if (starts(bytes, 0, 0x89, ...letters('PNG'), 0x0d, 0x0a, 0x1a, 0x0a)) return 'image/png';
  if (starts(bytes, 0, 0xff, 0xd8, 0xff)) return 'image/jpeg';
  if (starts(bytes, 0, ...letters('RIFF')) && starts(bytes, 8, ...letters('WEBP'))) return 'image/webp';
  // Group code 0 and the word SECTION, after comments (group code 999): a text file of pairs of lines.
  const text = new TextDecoder('latin1').decode(bytes.subarray(0, 4096));
  return /^\uFEFF?(?:\s*999\s*\r?\n[^\n]*\r?\n)*\s*0\s*\r?\n\s*SECTION\s*\r?\n/.test(
    text.replace(/^\u00ef\u00bb\u00bf/, ''),
  )
    ? 'image/vnd.dxf'
    : null;
}
