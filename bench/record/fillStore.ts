import { encryptFact, newClientKey } from '../../src/adapters/record/clientCipher.ts';
import type { StoredEntry, StreamHead } from '../../src/adapters/record/storedEntry.ts';
import { openDatabase } from '../../src/adapters/sqlite/database.ts';
import { prepareStatements } from '../../src/adapters/sqlite/statements.ts';
import type { EntryDraft } from '../../src/dossier/entry.ts';
import { canonicalJson, linkOf, sealOfText } from '../../src/dossier/seal.ts';
import { searchWords } from '../../src/dossier/searchWords.ts';
import type { Ids } from '../../src/ports/ids.ts';
import { clientFact, draftOf, rugFact } from './dossier.ts';

export interface Filled {
  readonly entries: number;
  readonly clients: number;
  /** Streams of 300 entries. */
  readonly long: readonly string[];
  readonly clientOf: (rug: number) => string;
  /** Family name of a rug's client. */
  readonly nameOf: (rug: number) => string;
}

const longLength = 300;
const batch = 100_000;

/**
 * Fills a store past the ledger, without waiting for the disk, but with the same rows, seals and links. Entries
 * come in the order of life: the first of every rug, then the second of every rug …, so that a dossier lies
 * scattered over the whole file, as it would after years.
 */
export async function fillStore(
  folder: string,
  plan: { readonly rugs: number; readonly entries: number; readonly longDossiers: number; readonly ids: Ids },
): Promise<Filled> {
  const { rugs, ids } = plan;
  const opened = openDatabase(folder);
  if (!opened.ok) throw new Error(opened.problem.code);
  const { database } = opened.value;
  database.pragma('synchronous = OFF');
  database.pragma('cache_size = -2000000');
  const statements = prepareStatements(database);

  let position = 0;
  let link = '';
  const heads = new Map<string, StreamHead>();
  const write = (draft: EntryDraft, body: string) => {
    position += 1;
    const { id, stream, at, by, version } = draft;
    const before = heads.get(stream) ?? { revision: 0, seal: '' };
    const frame = { id, stream, revision: before.revision + 1, at, by, version };
    const seal = sealOfText(frame, body, before.seal);
    link = linkOf(link, seal);
    statements.addEntry.run({ ...frame, position, body, seal, link } satisfies StoredEntry);
    heads.set(stream, { revision: frame.revision, seal });
    if (position % batch === 0) database.exec('commit; begin');
  };

  database.exec('begin');
  const clients = Array.from({ length: Math.ceil(rugs / 3) }, () => ids.next());
  for (const [at, client] of clients.entries()) {
    const draft = draftOf(`client/${client}`, ids.next(), at, clientFact(at));
    const key = newClientKey();
    statements.addKey.run(draft.stream, key);
    write(draft, encryptFact(draft, key));
  }
  const clientAt = (rug: number) => (rug * 31) % clients.length;
  const usual = (plan.entries - clients.length - plan.longDossiers * longLength) / (rugs - plan.longDossiers);
  const every = Math.floor(rugs / plan.longDossiers);
  const isLong = (rug: number) => rug % every === 0 && rug / every < plan.longDossiers;
  const dossiers = Array.from({ length: rugs }, (_, number) => ({
    stream: `rug/${ids.next()}`,
    number,
    client: clients[clientAt(number)] ?? '',
    visit: ids.next(),
    consignment: ids.next(),
    inHouse: number % 500 === 0,
    // Whole numbers whose mean is the usual length.
    length: isLong(number) ? longLength : Math.floor(usual * (number + 1)) - Math.floor(usual * number),
  }));
  for (let at = 0; at < longLength; at += 1) {
    for (const dossier of dossiers) {
      if (at >= dossier.length) continue;
      const draft = draftOf(dossier.stream, ids.next(), at, rugFact(dossier, at, dossier.length));
      write(draft, canonicalJson(draft.fact));
    }
  }
  database.exec('commit');
  database.pragma('wal_checkpoint(TRUNCATE)');
  database.close();
  return {
    entries: position,
    clients: clients.length,
    long: dossiers.filter(({ length }) => length === longLength).map(({ stream }) => stream),
    clientOf: (rug) => clients[clientAt(rug)] ?? '',
    nameOf: (rug) => {
      const fact = clientFact(clientAt(rug));
      return 'name' in fact ? (searchWords(fact.name)[1] ?? '') : '';
    },
  };
}
