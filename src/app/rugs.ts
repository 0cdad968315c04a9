import type { RowsQuery, RugAnswer, RugListRow } from '../contract/index.ts';
import { standingOf } from '../dossier/evolve.ts';
import type { RugEntry } from '../dossier/facts/index.ts';
import type { RugRow } from '../dossier/rugRow.ts';
import { latestVisit } from '../dossier/standing.ts';
import type { ListQuery, ListRow } from '../ports/ledger.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import { summarise } from './clients.ts';
import type { House } from './house.ts';

/** A rug's whole stream, with its present client. */
export async function readRug(house: House, rug: string): Promise<Result<RugAnswer, RequestProblem>> {
  const entries = (await house.ledger.read(`rug/${rug}`)) as readonly RugEntry[];
  if (entries.length === 0) return refused('rug-unknown', { rug });
  const client = latestVisit(standingOf(entries))?.received.client ?? null;
  return done({ rug, entries, client: await summarise(house, client) });
}

/** A row with what a list also says: whose rug it is. Names are encrypted at rest, so no row holds one. */
async function named(house: House, { words: _words, ...row }: ListRow): Promise<RugListRow> {
  const client = await summarise(house, row.client);
  const clientName = client === null || client.erased === true ? null : client.name;
  return { ...row, rug: row.stream.slice('rug/'.length), clientName, body: row.body as RugRow };
}

/** Rows with their clients' names. */
export const listRows = async (
  house: House,
  query: Omit<ListQuery, 'kind'>,
): Promise<readonly RugListRow[]> =>
  Promise.all((await house.ledger.list({ kind: 'rug', ...query })).map((row) => named(house, row)));

const usualLimit = 50;
export const mostInHouse = 1000;

/** Rugs by tag, client, stage, place or words, the newest first. */
export const listRugs = (
  house: House,
  { inHouse, limit, ...query }: RowsQuery,
): Promise<readonly RugListRow[]> => {
  const wanted = Object.fromEntries(Object.entries(query).filter(([, text]) => (text ?? '') !== ''));
  return listRows(house, {
    ...wanted,
    limit: limit === undefined ? usualLimit : Number(limit),
    ...(inHouse === undefined ? {} : { inHouse: inHouse === 'true' }),
  });
};

/** Every rug of one client. */
export const rugsOfClient = (house: House, client: string): Promise<readonly RugListRow[]> =>
  listRows(house, { client, limit: mostInHouse });
