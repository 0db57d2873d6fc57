import { randomBytes } from 'node:crypto';
import { chmodSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';

/** 256 bits; base64url needs no escapes in a link. */
const newToken = (): string => randomBytes(32).toString('base64url');
const isToken = (text: string): boolean => /^[A-Za-z0-9_-]{43}$/.test(text);

/**
 * The token of a data folder: made when it is first needed, for its owner's eyes alone. Deleting the file closes the workbench to all
 * who were let in.
 */
export function serveToken(folder: string): string {
  const file = join(folder, 'token');
  try {
    const kept = readFileSync(file, 'utf8').trim();
    if (isToken(kept)) {
      chmodSync(file, 0o600);
      return kept;
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'ENOENT') throw error;
  }
  const token = newToken();
  writeFileSync(file, `${token}\n`, { mode: 0o600 });
  chmodSync(file, 0o600);
  return token;
}
