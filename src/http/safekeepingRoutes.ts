import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import { verifyStore } from '../app/verifyStore.ts';
import type { Backup } from '../ports/backup.ts';
import { jsonAnswer, problemAnswer, zipAnswer } from './answers.ts';
import { type Guarded, ownersOnly } from './guard.ts';

/** Checking the seals, making the lists anew, and the backup of everything. */
export function safekeepingRoutes(house: House, backup: Backup | null) {
  const { ledger, clock } = house;
  const routes = new Hono<Guarded>();
  routes.use('/safekeeping/*', ownersOnly);
  routes.post('/safekeeping/verify', async () => jsonAnswer(await verifyStore(house)));
  routes.post('/safekeeping/rebuild', async () => jsonAnswer(await ledger.rebuild()));
  routes.get('/safekeeping/backup.zip', async () => {
    if (backup === null) return problemAnswer({ code: 'backup-not-possible', facts: {} });
    const day = clock.now().slice(0, 10);
    return zipAnswer(ReadableStream.from(await backup.make()), `wefthouse-backup-${day}`);
  });
  return routes;
}
