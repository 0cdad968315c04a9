import type { ConsignmentAnswer, ConsignmentRequest } from '../contract/index.ts';
import { clientStanding } from '../dossier/clientFacts.ts';
import type { EntryDraft } from '../dossier/entry.ts';
import type { RugEntry, RugFact } from '../dossier/facts/index.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import type { RugRow } from '../dossier/rugRow.ts';
import type { StreamAppend } from '../ports/ledger.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import { askedBy } from './asked.ts';
import { decideDrafts, type FactProblem } from './decideDrafts.ts';
import type { Actor, House } from './house.ts';
import { oneAtATime } from './oneAtATime.ts';

type Refusal = FactProblem | AppendProblem;
type OneRug = ConsignmentRequest['rugs'][number];

/** Takes in a consignment: client, signature and every rug, all of it or nothing. */
export const receiveConsignment = (
  house: House,
  actor: Actor,
  request: ConsignmentRequest,
): Promise<Result<ConsignmentAnswer, Refusal>> =>
  oneAtATime(house, async () => (await alreadyReceived(house, request)) ?? receive(house, actor, request));

/** The answer once more when the same request came before and its answer was lost on the way. */
async function alreadyReceived(
  { ledger }: House,
  { consignment, rugs }: ConsignmentRequest,
): Promise<Result<ConsignmentAnswer, Refusal> | null> {
  const answered: ConsignmentAnswer['rugs'][number][] = [];
  for (const { rug, drafts } of rugs) {
    const entries = (await ledger.read(`rug/${rug}`)) as readonly RugEntry[];
    const known = new Set(entries.map(({ id }) => id));
    if (!drafts.every(({ id }) => known.has(id))) return null;
    answered.push({ rug, number: numberIn(entries.map(({ fact }) => fact)), entries });
  }
  return done({ consignment, rugs: answered });
}

const numberIn = (facts: readonly RugFact[]): number =>
  facts.find((fact) => fact.type === 'DossierOpened')?.number ?? 0;

async function receive(
  house: House,
  actor: Actor,
  request: ConsignmentRequest,
): Promise<Result<ConsignmentAnswer, Refusal>> {
  const asked = await askedBy(house, actor);
  const signed = { at: asked.now, by: actor.person, version: 1 };
  const client = await clientAppend(house, request, signed);
  if (!client.ok) return client;
  const appends: StreamAppend[] = [...client.value];
  const numbers: { readonly rug: string; readonly number: number }[] = [];
  const [newest] = await house.ledger.list({ kind: 'rug', limit: 1 });
  let nextNumber = 1 + ((newest?.body as RugRow | undefined)?.number ?? 0);
  for (const [index, given] of request.rugs.entries()) {
    const mismatch = mismatchIn(request, given, index);
    if (mismatch !== null) return { ok: false, problem: mismatch };
    const stream = `rug/${given.rug}`;
    const entries = (await house.ledger.read(stream)) as readonly RugEntry[];
    const drafts = given.drafts.map(({ id, fact }) => ({
      id,
      fact: fact.type === 'DossierOpened' ? { ...fact, number: nextNumber } : fact,
    }));
    if (drafts.some(({ fact }) => fact.type === 'DossierOpened')) nextNumber += 1;
    const decided = await decideDrafts(house, stream, entries, drafts, asked, request.signature?.signature);
    if (!decided.ok) return decided;
    appends.push({ stream, expectedRevision: entries.length, drafts: decided.value });
    const facts = [...entries, ...decided.value].map(({ fact }) => fact);
    numbers.push({ rug: given.rug, number: numberIn(facts) });
  }
  const appended = await house.ledger.append(appends);
  if (!appended.ok) return appended;
  const of = (rug: string) => appended.value.filter(({ stream }) => stream === `rug/${rug}`);
  const rugs = numbers.map(({ rug, number }) => ({ rug, number, entries: of(rug) }));
  return done({ consignment: request.consignment, rugs });
}

const wrong = (field: string, value: string, allowed: string): RequestProblem => ({
  code: 'body-wrong-shape',
  facts: { field, value, allowed },
});

/** What a rug of the consignment must have in common with it. */
function mismatchIn(request: ConsignmentRequest, { drafts, rug }: OneRug, index: number): FactProblem | null {
  const field = `rugs[${index}]`;
  const receipts = drafts.flatMap(({ fact }) => (fact.type === 'RugReceived' ? [fact] : []));
  const [received] = receipts;
  if (received === undefined || receipts.length > 1) {
    return wrong(`${field}.drafts`, `${receipts.length} times RugReceived`, 'drafts with RugReceived once');
  }
  if (received.client !== request.client.client) {
    return wrong(
      `${field} RugReceived.client`,
      received.client,
      `${request.client.client}, the consignment’s`,
    );
  }
  if (received.consignment !== request.consignment) {
    return wrong(`${field} RugReceived.consignment`, received.consignment, request.consignment);
  }
  const earlier = request.rugs.slice(0, index);
  if (earlier.some((other) => other.rug === rug)) {
    return wrong(`${field}.rug`, rug, 'another rug than those before it');
  }
  const sameTag = ({ fact }: OneRug['drafts'][number]): boolean =>
    fact.type === 'RugReceived' && fact.tag === received.tag;
  if (earlier.some((other) => other.drafts.some(sameTag))) {
    return wrong(`${field} RugReceived.tag`, received.tag, 'another tag than those before it');
  }
  return null;
}

/** What the client's own stream gets: the client when new, and the signature. Ids come from what they name. */
async function clientAppend(
  { ledger }: House,
  { client, signature }: ConsignmentRequest,
  signed: Pick<EntryDraft, 'at' | 'by' | 'version'>,
): Promise<Result<readonly StreamAppend[], Refusal>> {
  const stream = `client/${client.client}`;
  const entries = await ledger.read(stream);
  const known = clientStanding(entries);
  if ('added' in client && known !== null) {
    return refused('client-added-already', { client: client.client });
  }
  if (!('added' in client) && known === null) return refused('client-unknown', { client: client.client });
  if (known?.kind === 'erased') return refused('client-erased', { stream });
  const drafts: EntryDraft[] = [
    ...('added' in client ? [{ id: client.client, stream, ...signed, fact: client.added }] : []),
    ...(signature === undefined ? [] : [{ id: signature.signature, stream, ...signed, fact: signature }]),
  ];
  return done(drafts.length === 0 ? [] : [{ stream, expectedRevision: entries.length, drafts }]);
}
