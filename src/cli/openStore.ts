import type { House } from '../app/house.ts';
import type { Backup } from '../ports/backup.ts';
import type { Result } from '../units/index.ts';

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
