import type {
  ClientAnswer,
  ClientEntriesRequest,
  ClientRequest,
  ClientSummary,
  RugListRow,
} from '../contract/index.ts';
import { clientStanding } from '../dossier/clientFacts.ts';
import type { Entry, EntryDraft } from '../dossier/entry.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import { canonicalJson } from '../dossier/seal.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import type { Actor, House } from './house.ts';
import { recordWorkshop } from './workshop.ts';

type Refusal = RequestProblem | AppendProblem;

/** A client without their signatures: null when there is none, or when nobody is named. */
export async function summarise({ ledger }: House, client: string | null): Promise<ClientSummary | null> {
  const standing = client === null ? null : clientStanding(await ledger.read(`client/${client}`));
  if (client === null || standing === null) return null;
  if (standing.kind === 'erased') return { client, erased: true };
  const { signatures: _signatures, kind: _kind, ...known } = standing;
  return { client, ...known };
}

/** Clients found by name, telephone, e-mail or address, the newest first. */
export async function findClients({ ledger }: House, find: string): Promise<readonly ClientSummary[]> {
  const rows = await ledger.list({ kind: 'client', find, limit: 100 });
  return rows.map(({ stream, body }) => ({
    client: stream.slice('client/'.length),
    ...(body as Omit<Extract<ClientSummary, { erased?: false }>, 'client'>),
  }));
}

export async function readClient(
  house: House,
  client: string,
  rugs: readonly RugListRow[],
): Promise<Result<ClientAnswer, RequestProblem>> {
  const entries = await house.ledger.read(`client/${client}`);
  const standing = clientStanding(entries);
  if (standing === null) return refused('client-unknown', { client });
  return done({ client, revision: entries.length, standing, rugs });
}

const draftsOf = (
  house: House,
  actor: Actor,
  client: string,
  drafts: ClientEntriesRequest['drafts'],
): readonly EntryDraft[] =>
  drafts.map(({ id, fact }) => ({
    ...{ id, stream: `client/${client}`, at: house.clock.now(), by: actor.person, version: 1 },
    fact,
  }));

export async function addClient(
  house: House,
  actor: Actor,
  { client, added }: ClientRequest,
): Promise<Result<readonly Entry[], Refusal>> {
  const drafts = draftsOf(house, actor, client, [{ id: client, fact: added }]);
  const appended = await house.ledger.append([{ stream: `client/${client}`, expectedRevision: 0, drafts }]);
  // The same words again are a lost answer sent once more; other words are another client under a used id.
  const isOther = appended.ok
    ? canonicalJson(appended.value[0]?.fact) !== canonicalJson(added)
    : appended.problem.code === 'stream-moved-on';
  return isOther ? refused('client-added-already', { client }) : appended;
}

/** Changes a client or keeps a signature. A change replaces the whole, so it must be made on the newest. */
export async function recordClient(
  house: House,
  actor: Actor,
  client: string,
  { expectedRevision, drafts }: ClientEntriesRequest,
): Promise<Result<readonly Entry[], Refusal>> {
  const stream = `client/${client}`;
  for (;;) {
    const { revision } = await house.ledger.head(stream);
    if (revision === 0) return refused('client-unknown', { client });
    const isSignatures = drafts.every(({ fact }) => fact.type === 'SignatureTaken');
    const append = {
      stream,
      expectedRevision: isSignatures ? revision : expectedRevision,
      drafts: draftsOf(house, actor, client, drafts),
    };
    const appended = await house.ledger.append([append]);
    if (appended.ok || !isSignatures || appended.problem.code !== 'stream-moved-on') return appended;
  }
}

/** Destroys what is personal of a client for ever; that it was done, by whom and why stays on record. */
export async function eraseClient(
  house: House,
  actor: Actor,
  client: string,
  reason: string,
): Promise<Result<null, Refusal>> {
  const { revision } = await house.ledger.head(`client/${client}`);
  if (revision === 0) return refused('client-unknown', { client });
  const recorded = await recordWorkshop<never>(house, actor.person, () =>
    done([{ type: 'ClientErased', client, reason }]),
  );
  if (!recorded.ok) return recorded;
  const erased = await house.ledger.eraseClient(`client/${client}`);
  if (!erased.ok) return erased;
  await house.keptPapers.erase(client);
  return done(null);
}
