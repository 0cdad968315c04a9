import { join } from 'node:path';
import Sqlite from 'better-sqlite3';
import type { RecordUnavailable } from '../../dossier/recordProblem.ts';
import { done, type Result, refused } from '../../units/index.ts';
import { makeFolder } from '../disk/folder.ts';
import { unavailable } from '../disk/unavailable.ts';
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
