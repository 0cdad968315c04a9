import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type OpenDatabase, openDatabase } from '../../src/adapters/sqlite/database.ts';
import { SqliteLedger } from '../../src/adapters/sqlite/sqliteLedger.ts';
import type { Ledger, ListRowOf } from '../../src/ports/ledger.ts';

/** An empty folder of its own, and what takes it away again. */
export function throwAwayFolder(): { readonly folder: string; readonly remove: () => void } {
  const folder = mkdtempSync(join(tmpdir(), 'wefthouse-test-'));
  return { folder, remove: () => rmSync(folder, { recursive: true, force: true }) };
}

export interface OpenedLedger {
  readonly ledger: Ledger;
  readonly done: () => Promise<void>;
  readonly database: OpenDatabase['database'];
}

/** The ledger on SQLite in a folder; `done` closes the ledger and its database. */
export function openInFolder(folder: string, listRowOf: ListRowOf): OpenedLedger {
  const opened = openDatabase(folder);
  if (!opened.ok) throw new Error(`refused: ${JSON.stringify(opened.problem)}`);
  const ledger = new SqliteLedger(opened.value, listRowOf);
  const done = async () => {
    await ledger.close();
    opened.value.database.close();
  };
  return { ledger, done, database: opened.value.database };
}
