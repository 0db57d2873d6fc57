import { zipSync } from 'fflate';
import { type AttachmentType, endings } from '../magic-bytes.js';
import { archiveVersion } from './archive-form.js';
import type { ArchivedProject } from './archive-job.js';

/** A project as a zip: its text to read, its history to go on with, and what is attached. The same project gives the same bytes. */
export function packProject({ text, attachments, ...project }: ArchivedProject): Uint8Array {
  const utf8 = new TextEncoder();
  const lines = attachments.map(({ bytes: _, ...line }) => line);
  const json = JSON.stringify({ cloche: archiveVersion, ...project, attachments: lines }, null, 1);
  // Pictures are compressed already.
  const files = attachments.map(
    ({ hash, mediaType, bytes }) =>
      [
        `attachments/${hash}.${endings[mediaType as AttachmentType]}`,
        [bytes, { level: mediaType === 'image/vnd.dxf' ? 6 : 0 }],
      ] as const,
  );
  return zipSync(
    {
      'brief.yaml': utf8.encode(text),
      'project.json': utf8.encode(json),
      ...Object.fromEntries(files),
    },
    { mtime: project.changed },
  );
}
