import type { RugRow } from '../dossier/rugRow.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import type { House } from './house.ts';

/** The rug a person means by its id, its dossier number, or the tag it wears in the house. */
export async function findRug({ ledger }: House, named: string): Promise<Result<string, RequestProblem>> {
  const stream = `rug/${named}`;
  if ((await ledger.head(stream)).revision > 0) return done(named);
  const id = (found: { readonly stream: string }) => found.stream.slice('rug/'.length);
  const [tagged] = await ledger.list({ kind: 'rug', tag: named, inHouse: true, limit: 1 });
  if (tagged !== undefined) return done(id(tagged));
  const wanted = /^\d+$/.test(named) ? Number(named) : null;
  const rows = wanted === null ? [] : await ledger.list({ kind: 'rug', find: String(wanted), limit: 1000 });
  const numbered = rows.find(({ body }) => (body as RugRow).number === wanted);
  return numbered === undefined ? refused('rug-unknown', { rug: named }) : done(id(numbered));
}
