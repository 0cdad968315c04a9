import { ledgerPromises } from '../support/ledgerPromises.ts';
import { openInFolder, throwAwayFolder } from '../support/openInFolder.ts';

ledgerPromises('the ledger on SQLite', async (listRowOf) => {
  const { folder, remove } = throwAwayFolder();
  const { ledger, done } = openInFolder(folder, listRowOf);
  return {
    ledger,
    done: async () => {
      await done();
      remove();
    },
  };
});
