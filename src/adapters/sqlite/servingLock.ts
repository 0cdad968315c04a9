import { join } from 'node:path';
import Sqlite from 'better-sqlite3';

/**
 * Says that a server holds this folder, for as long as the process lives: numbers and tags are unique only
 * while one server gives them out. The lock is the operating system's, so a killed server leaves none behind.
 * Null when another one holds it.
 */
export function servingLock(directory: string): { readonly release: () => void } | null {
  const lock = new Sqlite(join(directory, 'serving.lock'), { timeout: 200 });
  try {
    lock.pragma('journal_mode = MEMORY');
    lock.exec('begin exclusive');
    return { release: () => lock.close() };
  } catch (error) {
    lock.close();
    if (error instanceof Error && 'code' in error && String(error.code).startsWith('SQLITE_BUSY'))
      return null;
    throw error;
  }
}
