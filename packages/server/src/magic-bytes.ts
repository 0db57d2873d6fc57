/** File types that are taken, and the ending of their names. */
export const endings = {
  'image/png': 'png',
  'image/jpeg': 'jpg',
  'image/webp': 'webp',
  'image/vnd.dxf': 'dxf',
} as const;

export type AttachmentType = keyof typeof endings;

const starts = (bytes: Uint8Array, at: number, magic: readonly number[]): boolean =>
  magic.every((byte, i) => bytes[at + i] === byte);
const letters = (text: string): number[] => [...text].map((c) => c.charCodeAt(0));

/**
 * What a file is by its first bytes; its name and what the sender claims do not count.
 * Source: PNG (Third Edition) 5.2; ITU-T T.81 B.1.1.3, start of image and the next marker; RFC 9649 section 2 (WebP); for DXF the text
 * form, which opens with comments (999) and the first section (0, SECTION) (all from memory).
 */
export function attachmentType(bytes: Uint8Array): AttachmentType | undefined {
  if (starts(bytes, 0, [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a])) return 'image/png';
  if (starts(bytes, 0, [0xff, 0xd8, 0xff])) return 'image/jpeg';
  if (starts(bytes, 0, letters('RIFF')) && starts(bytes, 8, letters('WEBP'))) return 'image/webp';
  return isDxf(bytes) ? 'image/vnd.dxf' : undefined;
}

function isDxf(bytes: Uint8Array): boolean {
  const head = String.fromCharCode(...bytes.subarray(0, 4096)).replace(/^\u00ef\u00bb\u00bf/, '');
  return !head.includes('\0') && /^(\s*999\r?\n[^\r\n]*\r?\n)*\s*0\r?\n\s*SECTION\r?\n/.test(head);
}
