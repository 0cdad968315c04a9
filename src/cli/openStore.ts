import type { House } from '../app/house.ts';
import type { Backup } from '../ports/backup.ts';
import type { Result } from '../units/index.ts';
import { type ExitCode, printRefusal, type Terminal } from './command.ts';

/** An opened store with all that works on it. */
export interface OpenStore {
  readonly house: House;
  readonly backup: Backup | null;
  readonly close: () => Promise<void>;
}

/** Opens the store in a folder; given to commands by `main.ts`, which alone knows how. */
export type OpenStoreIn = (
  directory: string,
  settings: { readonly serving: boolean },
) => Promise<Result<OpenStore>>;

/** Where a store lives when nobody says otherwise. */
export const usualFolder = 'wefthouse-data';

/** Does a command's work on the store in a folder, and closes it whatever comes. */
export async function inStore(
  openStore: OpenStoreIn,
  { data, json }: { readonly data: string; readonly json: boolean },
  terminal: Terminal,
  work: (house: House) => Promise<ExitCode>,
): Promise<ExitCode> {
  const opened = await openStore(data, { serving: false });
  if (!opened.ok) return printRefusal(opened.problem, json, terminal);
  try {
    return await work(opened.value.house);
  } finally {
    await opened.value.close();
  }
}
