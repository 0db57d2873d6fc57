import { type Outcome, ok, type Problem, problem, refuse } from '@cloche/engine';
import { type UnzipFileInfo, unzipSync } from 'fflate';
import { isKnownPath } from './archive-form.js';

const mega = 1024 * 1024;
/** What an archive may unpack to, whatever it claims. */
const limits = {
  files: 300,
  total: 192 * mega,
  json: 128 * mega,
  other: 16 * mega,
  /** Unpacked over packed size of one file: text of a long history reaches some fifty, a bomb a thousand. */
  ratio: 250,
  /** Below this a ratio says nothing [bytes]. */
  small: mega,
} as const;

const no = (code: string, path: readonly string[], message: string, hint: string): Problem =>
  problem(`archive/${code}`, path, message, hint);
const another = 'Choose an archive that Cloche has exported.';

/**
 * The files of an archive. Its directory is judged before a byte is unpacked; the library then fills no more memory than the directory
 * says, so that a directory that lies gives a file that is cut off, not one that is larger.
 *
 * @returns files by their names, or `archive/no-zip`, `archive/too-many-files`, `archive/unknown-file`, `archive/same-file`,
 *          `archive/too-large`, `archive/too-dense`
 */
export function unzipBounded(zip: Uint8Array): Outcome<Readonly<Record<string, Uint8Array>>> {
  const entries: UnzipFileInfo[] = [];
  // The number of files is a claim of the archive, too: the walk ends where there are too many.
  const list = (entry: UnzipFileInfo): boolean => {
    entries.push(entry);
    if (entries.length > limits.files) throw new RangeError('too many files');
    return false;
  };
  try {
    unzipSync(zip, { filter: list });
    const problems = directoryProblems(entries.filter((entry) => !isFolder(entry)));
    if (problems.length > 0) return refuse(problems);
    return ok(unzipSync(zip, { filter: (entry) => !isFolder(entry) }));
  } catch {
    // The library throws for bytes that are no archive or are damaged, and only here.
    return refuse([
      entries.length > limits.files
        ? no('too-many-files', [], `The archive holds more than ${limits.files} files.`, another)
        : no('no-zip', [], 'This file is no zip archive, or a damaged one.', another),
    ]);
  }
}

const isFolder = ({ name, originalSize, size }: UnzipFileInfo): boolean =>
  name === 'attachments/' && originalSize === 0 && size === 0;

function directoryProblems(entries: readonly UnzipFileInfo[]): Problem[] {
  const names = new Set(entries.map((entry) => entry.name));
  if (names.size < entries.length) return [no('same-file', [], 'The archive holds two files of one name.', another)];
  const total = entries.reduce((sum, entry) => sum + Math.max(entry.size, entry.originalSize), 0);
  return [
    ...(total > limits.total
      ? [no('too-large', [], `The archive unpacks to more than ${limits.total / mega} MB.`, another)]
      : []),
    ...entries.flatMap(entryProblems),
  ];
}

function entryProblems({ name, size, originalSize }: UnzipFileInfo): Problem[] {
  const shown = name.slice(0, 120);
  if (!isKnownPath(name)) return [no('unknown-file', [shown], `The archive holds "${shown}".`, another)];
  const most = name === 'project.json' ? limits.json : limits.other;
  return [
    ...(Math.max(size, originalSize) > most
      ? [no('too-large', [shown], `${shown} unpacks to more than ${most / mega} MB.`, another)]
      : []),
    ...(originalSize > limits.small && originalSize > limits.ratio * Math.max(size, 1)
      ? [no('too-dense', [shown], `${shown} unpacks to more than ${limits.ratio} times its size.`, another)]
      : []),
  ];
}
