import { join } from 'node:path';
import Libsql from 'libsql';

/** How long another process may take to let go of the folder while it ends [ms]. */
const patience = 500;

/**
 * Holds a data folder for this process: two that write one history would lose steps of each other.
 *
 * The hold is a transaction that stays open on a file of its own, and so the system's lock on that file: it dies with its process,
 * `kill -9` leaves none behind, and it works alike on every platform. Not on the database itself: the driver frees a
 * database that was closed only when its statements are collected as garbage.
 * @returns lets go; throws the driver's error, `SQLITE_BUSY` when another process holds the folder
 */
export function holdFolder(folder: string): () => void {
  const file = new Libsql(join(folder, 'in-use.db'), { timeout: patience });
  try {
    file.exec('begin exclusive');
    return () => file.close();
  } catch (error) {
    file.close();
    throw error;
  }
}
