import { uuidv7 } from '../../src/adapters/clock/uuidv7.ts';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { memoryAccounts } from '../../src/adapters/memory/memoryAccounts.ts';
import { memoryForecaster } from '../../src/adapters/memory/memoryForecaster.ts';
import { memoryKeptPapers } from '../../src/adapters/memory/memoryKeptPapers.ts';
import { MemoryLedger } from '../../src/adapters/memory/memoryLedger.ts';
import { MemoryPhotos } from '../../src/adapters/memory/memoryPhotos.ts';
import { makePrinter } from '../../src/adapters/pdf/makePrinter.ts';
import { argonSecrets } from '../../src/adapters/secrets/argonSecrets.ts';
import { yazlArchiver } from '../../src/adapters/zip/yazlArchiver.ts';
import type { House } from '../../src/app/house.ts';
import { listRowOf } from '../../src/app/listRow.ts';

/** Argon2 at its cheapest: tests sign in often, and the cost is not what they are about. */
export const cheapSecrets = argonSecrets({ memoryKiB: 64, passes: 1 });

/** A house in memory with the real printer, and a clock that tests set. */
export function memoryHouse(parts: Partial<House> = {}): House & { setClock: (instant: string) => void } {
  let now = '2026-03-02T08:00:00.000Z';
  const photos = new MemoryPhotos();
  return {
    ...{ ledger: new MemoryLedger(listRowOf), photos, keptPapers: memoryKeptPapers() },
    ...{ accounts: memoryAccounts(), secrets: cheapSecrets, printer: makePrinter(photos) },
    ...{ codes: zxingCodes, archiver: yazlArchiver, clock: { now: () => now }, ids: uuidv7() },
    ...{ forecaster: memoryForecaster, timeZone: 'Europe/Vienna' },
    ...parts,
    setClock: (instant) => {
      now = instant;
    },
  };
}
