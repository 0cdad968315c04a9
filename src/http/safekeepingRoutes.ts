import { Hono } from 'hono';
import type { House } from '../app/house.ts';
import { verifyStore } from '../app/verifyStore.ts';
import type { VerifyProgress } from '../contract/index.ts';
import type { Backup } from '../ports/backup.ts';
import { jsonAnswer, problemAnswer, zipAnswer } from './answers.ts';
import { type Guarded, ownersOnly } from './guard.ts';

/** Checking the seals, making the lists anew, and the backup of everything. */
export function safekeepingRoutes(house: House, backup: Backup | null) {
  const { ledger, clock } = house;
  const routes = new Hono<Guarded>();
  routes.use('/safekeeping/*', ownersOnly);
  let verifying: VerifyProgress | null = null;
  routes.post('/safekeeping/verify', async () => {
    try {
      const verified = await verifyStore(house, undefined, (progress) => {
        verifying = progress;
      });
      return jsonAnswer(verified);
    } finally {
      verifying = null;
    }
  });
  routes.get('/safekeeping/verify', () => jsonAnswer(verifying));
  routes.post('/safekeeping/rebuild', async () => jsonAnswer(await ledger.rebuild()));
  routes.get('/safekeeping/backup.zip', async () => {
    if (backup === null) return problemAnswer({ code: 'backup-not-possible', facts: {} });
    const day = clock.now().slice(0, 10);
    return zipAnswer(ReadableStream.from(await backup.make()), `wefthouse-backup-${day}`);
  });
  return routes;
}
