import type { RecordRequest } from '../contract/index.ts';
import { clientStanding } from '../dossier/clientFacts.ts';
import { decide, mayWithdraw } from '../dossier/decide.ts';
import type { EntryDraft } from '../dossier/entry.ts';
import { standingOf } from '../dossier/evolve.ts';
import type { RugEntry, RugFact } from '../dossier/facts/index.ts';
import type { RoomClosedProblem } from '../dossier/roomDecide.ts';
import { roomStandingOf } from '../dossier/roomStanding.ts';
import type { RugProblem } from '../dossier/rugProblem.ts';
import type { RugRow } from '../dossier/rugRow.ts';
import type { Asked } from '../dossier/rule/rule.ts';
import { latestVisit, type RugStanding } from '../dossier/standing.ts';
import { raisedStop, stopsRaised } from '../dossier/stopsRaised.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result } from '../units/index.ts';
import type { House } from './house.ts';

export type RugDraft = RecordRequest['drafts'][number];
export type FactProblem = RugProblem | RequestProblem | RoomClosedProblem;

/** Hashes of all photographs that a fact names, wherever in it they stand. */
export function photosIn(value: unknown): readonly string[] {
  if (typeof value !== 'object' || value === null) return [];
  if (Array.isArray(value)) return value.flatMap(photosIn);
  return Object.entries(value).flatMap(([name, held]) => {
    if (name === 'photo') return typeof held === 'string' ? [held] : [];
    if (name === 'photos' && Array.isArray(held)) return held.filter((photo) => typeof photo === 'string');
    return photosIn(held);
  });
}

async function photoProblem({ photos }: House, fact: RugFact): Promise<FactProblem | null> {
  for (const photo of photosIn(fact)) {
    if ((await photos.describe(photo)) === null) return { code: 'photograph-unknown', facts: { photo } };
  }
  return null;
}

/** A rug can only hang in a room there is, and that is in use. */
async function roomProblem({ ledger }: House, fact: RugFact): Promise<FactProblem | null> {
  if (fact.type !== 'DryingStarted' && fact.type !== 'RugTurned') return null;
  const { room } = fact;
  if (room === undefined) return null;
  const { setUp, closed } = roomStandingOf(await ledger.read(`room/${room}`));
  if (setUp === null) return { code: 'room-unknown', facts: { room } };
  return closed === null ? null : { code: 'room-closed', facts: { room: setUp.name, closedAt: closed.when } };
}

/** A wash-proof tag names one rug in the house at a time. */
async function tagProblem({ ledger }: House, stream: string, fact: RugFact): Promise<FactProblem | null> {
  if (fact.type !== 'RugReceived') return null;
  const rows = await ledger.list({ kind: 'rug', tag: fact.tag, inHouse: true, limit: 2 });
  const other = rows.find((row) => row.stream !== stream);
  if (other === undefined) return null;
  const { number, title } = other.body as RugRow;
  return { code: 'tag-in-use', facts: { tag: fact.tag, number, title } };
}

const signatureIn = (fact: RugFact): string | undefined => {
  if (fact.type === 'RugReturned' || fact.type === 'RugReceived' || fact.type === 'ReceiptSigned') {
    return fact.signature;
  }
  return fact.type === 'ConsentGiven' && fact.agreed.how === 'signature on screen'
    ? fact.agreed.signature
    : undefined;
};

/** What was signed, and the paper it was signed under, must be there to be looked at. */
async function evidenceProblem(
  { ledger, keptPapers }: House,
  standing: RugStanding,
  fact: RugFact,
  newSignature: string | undefined,
): Promise<FactProblem | null> {
  const client = fact.type === 'RugReceived' ? fact.client : latestVisit(standing)?.received.client;
  if (client === undefined) return null;
  const signature = signatureIn(fact);
  if (signature !== undefined && signature !== newSignature) {
    const known = clientStanding(await ledger.read(`client/${client}`));
    if (known?.kind !== 'known' || known.signatures[signature] === undefined) {
      return { code: 'signature-unknown', facts: { signature } };
    }
  }
  if (fact.type === 'ConsentGiven' && (await keptPapers.read(client, fact.paper)) === null) {
    return { code: 'paper-not-kept', facts: { paper: fact.paper } };
  }
  return null;
}

/**
 * Judges facts one after another, each against what the ones before it would leave, and makes them ready to
 * append. The first that may not be recorded refuses all.
 */
export async function decideDrafts(
  house: House,
  stream: string,
  entries: readonly RugEntry[],
  drafts: readonly RugDraft[],
  asked: Asked,
  newSignature?: string,
): Promise<Result<readonly EntryDraft<RugFact>[], FactProblem>> {
  const known = new Map(entries.map((entry) => [entry.id, entry]));
  const ready: EntryDraft<RugFact>[] = [];
  const pending: RugEntry[] = [...entries];
  for (const draft of drafts) {
    const { id } = draft;
    const fact = draft.fact as RugFact;
    const entry = { id, stream, at: asked.now, by: asked.person.person, version: 1, fact };
    ready.push(entry);
    if (known.has(id)) continue;
    const standing = standingOf(pending);
    const decided =
      fact.type === 'EntryWithdrawn' ? mayWithdraw(pending, fact, asked) : decide(standing, fact, asked);
    if (!decided.ok) return decided;
    const problem =
      (await tagProblem(house, stream, fact)) ??
      (await photoProblem(house, fact)) ??
      (await roomProblem(house, fact)) ??
      (await evidenceProblem(house, standing, fact, newSignature));
    if (problem !== null) return { ok: false, problem };
    pending.push({ ...entry, revision: pending.length + 1, seal: '' });
    // A reading off its band stops the wash by itself, whoever looked at it.
    for (const stop of stopsRaised(standing, fact, asked)) {
      const called = raisedStop(stop, house.ids.next(), { entry: id, fact, standing });
      const raised = { ...entry, id: house.ids.next(), fact: called };
      ready.push(raised);
      pending.push({ ...raised, revision: pending.length + 1, seal: '' });
    }
  }
  return done(ready);
}
