import { MemoryLedger } from '../../src/adapters/memory/memoryLedger.ts';
import { ledgerPromises } from '../support/ledgerPromises.ts';

ledgerPromises('the ledger in memory', async (listRowOf) => {
  const ledger = new MemoryLedger(listRowOf);
  return { ledger, done: () => ledger.close() };
});
