import type { RowsQuery, RugAnswer, RugListRow, TodayAnswer, TodayRow } from '../contract/index.ts';
import { standingOf } from '../dossier/evolve.ts';
import type { RugEntry } from '../dossier/facts/index.ts';
import { byUrgency, nextStepsOf } from '../dossier/nextStep.ts';
import type { RugRow } from '../dossier/rugRow.ts';
import { latestVisit } from '../dossier/standing.ts';
import type { ListQuery, ListRow } from '../ports/ledger.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import { summarise } from './clients.ts';
import type { House } from './house.ts';
import { readWorkshop } from './workshop.ts';

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

const listRows = async (house: House, query: Omit<ListQuery, 'kind'>): Promise<readonly RugListRow[]> =>
  Promise.all((await house.ledger.list({ kind: 'rug', ...query })).map((row) => named(house, row)));

const usualLimit = 50;
const mostInHouse = 1000;

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

/** Whose hands are needed where: every rug in the house with what it waits for, most urgent first. */
export async function today(house: House): Promise<TodayAnswer> {
  const now = house.clock.now();
  const { settings } = await readWorkshop(house);
  const rows = await listRows(house, { inHouse: true, limit: mostInHouse });
  const waiting: readonly TodayRow[] = await Promise.all(
    rows.map(async (row) => {
      const standing = standingOf(await house.ledger.read(row.stream));
      return { ...row, next: nextStepsOf(standing, settings, now) };
    }),
  );
  const steps = new Map(waiting.flatMap((row) => row.next.slice(0, 1).map((step) => [step, row] as const)));
  return { now, rows: byUrgency([...steps.keys()]).flatMap((step) => steps.get(step) ?? []) };
}
