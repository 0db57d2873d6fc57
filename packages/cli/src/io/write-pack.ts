import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { type Outcome, ok, problem, refuse } from '@cloche/engine';
import type { PackFile } from '@cloche/pack';

const sha256 = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** Hashes of the files that an earlier pack in this folder wrote, by its manifest. */
function earlierFiles(folder: string): ReadonlyMap<string, string> {
  try {
    const manifest = JSON.parse(readFileSync(join(folder, 'manifest.json'), 'utf8')) as {
      files?: { path: string; sha256: string }[];
    };
    return new Map((manifest.files ?? []).map((f) => [f.path, f.sha256]));
  } catch {
    return new Map();
  }
}

/** Names that exist in the folder and were not written by an earlier pack, or were changed since. */
function strangers(folder: string, files: readonly PackFile[]): string[] {
  const ours = earlierFiles(folder);
  return files
    .map((f) => f.name)
    .filter((name) => name !== 'manifest.json' && existsSync(join(folder, name)))
    .filter((name) => ours.get(name)?.replace(/^sha256:/, '') !== sha256(readFileSync(join(folder, name))));
}

/**
 * Writes a pack whole or not at all: all files under temporary names first, then renamed. A file that no earlier pack wrote is
 * never replaced unless forced.
 */
export function writePack(folder: string, files: readonly PackFile[], force: boolean): Outcome<readonly string[]> {
  const temporary: { from: string; to: string }[] = [];
  try {
    mkdirSync(folder, { recursive: true });
    if (!force) {
      const found = strangers(folder, files);
      if (found.length > 0)
        return refuse([
          problem(
            'cli/not-ours',
            ['out'],
            `${folder} holds files that Cloche did not write or that were changed since: ${found.join(', ')}.`,
            'Choose another folder, move them away, or use --force to replace them.',
          ),
        ]);
    }
    for (const file of files) {
      const to = join(folder, file.name);
      mkdirSync(dirname(to), { recursive: true });
      const from = `${to}.part`;
      temporary.push({ from, to });
      writeFileSync(from, file.bytes);
    }
    for (const { from, to } of temporary) renameSync(from, to);
    return ok(files.map((f) => join(folder, f.name)));
  } catch (error) {
    for (const { from } of temporary) rmSync(from, { force: true });
    const code = (error as NodeJS.ErrnoException).code ?? 'error';
    return refuse([
      problem(
        'cli/cannot-write',
        ['out'],
        `The output folder ${folder} cannot be written (${code}).`,
        'Choose a folder that you may write to, with --out.',
      ),
    ]);
  }
}
