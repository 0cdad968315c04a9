import { closeSync, fsyncSync, mkdirSync, openSync } from 'node:fs';
import { dirname, join, resolve } from 'node:path';
import Sqlite from 'better-sqlite3';
import type { RecordUnavailable } from '../../dossier/recordProblem.ts';
import { done, type Result, refused } from '../../units/index.ts';
import { type Migration, migrations } from './migrations.ts';

export interface OpenDatabase {
  /** The folder that holds the database, its outside head and the photographs. */
  readonly directory: string;
  /** The one connection; whoever opened it closes it. */
  readonly database: Sqlite.Database;
}

/** How long a write waits for another process that is writing, before it is refused. */
const patienceMs = 2000;

/**
 * Opens the record's database in a folder, both made when missing, and brings its schema up to date.
 * A commit is on disk before it is answered, and what is deleted is overwritten.
 */
export function openDatabase(
  directory: string,
  steps: readonly Migration[] = migrations,
): Result<OpenDatabase, RecordUnavailable> {
  let database: Sqlite.Database | undefined;
  try {
    makeFolder(directory);
    database = new Sqlite(join(directory, 'wefthouse.db'), { timeout: patienceMs });
    database.pragma('journal_mode = WAL');
    database.pragma('synchronous = FULL');
    database.pragma('secure_delete = ON');
    // Without it INSERT OR REPLACE would remove an entry past the trigger that forbids removal.
    database.pragma('recursive_triggers = ON');
    // Sorting must not leave readable pieces in temporary files.
    database.pragma('temp_store = MEMORY');
    if (!migrate(database, steps)) {
      database.close();
      return refused('record-unavailable', { reason: 'newer-version' as const });
    }
    return done({ directory, database });
  } catch (error) {
    database?.close();
    const problem = unavailable(error);
    if (problem === null) throw error;
    return { ok: false, problem };
  }
}

/** The problem behind an error of the database or the file system; null when it is a bug of ours. */
export function unavailable(error: unknown): RecordUnavailable | null {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  const of = (reason: RecordUnavailable['facts']['reason']) =>
    refused('record-unavailable', { reason }).problem;
  if (/^SQLITE_(BUSY|LOCKED)/.test(code)) return of('locked');
  if (code === 'SQLITE_FULL' || code === 'ENOSPC' || code === 'EDQUOT') return of('disk-full');
  if (/^SQLITE_(READONLY|CANTOPEN|PERM|AUTH)/.test(code)) return of('not-writable');
  if (/^(EACCES|EPERM|EROFS|ENOTDIR|EEXIST)$/.test(code)) return of('not-writable');
  if (/^SQLITE_IOERR/.test(code) || code === 'EIO') return of('disk-error');
  if (/^SQLITE_(CORRUPT|NOTADB)/.test(code)) return of('damaged');
  return null;
}

/** Makes a folder, readable by its owner alone, and sees to it that it is still there after a power cut. */
function makeFolder(directory: string): void {
  const first = mkdirSync(directory, { recursive: true, mode: 0o700 });
  if (first === undefined) return;
  for (let made = resolve(directory); ; made = dirname(made)) {
    syncFolder(dirname(made));
    if (made === resolve(first)) return;
  }
}

/** Makes the names in a folder durable. */
export function syncFolder(directory: string): void {
  const folder = openSync(directory, 'r');
  try {
    fsyncSync(folder);
  } finally {
    closeSync(folder);
  }
}

/** Runs the steps that are missing, each in a transaction; false when the database is from a later version. */
function migrate(database: Sqlite.Database, steps: readonly Migration[]): boolean {
  database.exec(
    'create table if not exists migration (number bigint primary key not null, name text not null)',
  );
  const newest = database.prepare('select coalesce(max(number), 0) from migration').pluck();
  const note = database.prepare('insert into migration (number, name) values (?, ?)');
  const step = database.transaction(({ number, name, sql }: Migration) => {
    // Another process may have made the step while this one waited for the lock.
    if (Number(newest.get()) >= number) return;
    database.exec(sql);
    note.run(number, name);
  });
  if (Number(newest.get()) > steps.length) return false;
  for (const each of steps) step.immediate(each);
  return true;
}
