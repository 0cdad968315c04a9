import type { ConsignmentAnswer, ConsignmentRequest, RecordRequest } from '../../../../src/contract/index.ts';
import type { RugFact } from '../../../../src/dossier/index.ts';
import { identified, lookedOver, measured, weighed } from '../../../support/rugStory.ts';
import type { Hand } from './hand.ts';

/** Asks the server as the page on this device would; a refusal is a mistake in the journey. */
function post<Answer>(hand: Hand, path: string, body: unknown): Promise<Answer> {
  return hand.page.evaluate(
    async ([to, sent]) => {
      const answer = await fetch(to, {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: sent,
      });
      if (!answer.ok) throw new Error(`${to}: ${await answer.text()}`);
      return answer.json();
    },
    [path, JSON.stringify(body)] as const,
  ) as Promise<Answer>;
}

const draft = (fact: RugFact) => ({ id: crypto.randomUUID(), fact });

/** Records facts that this journey is not about. */
export async function record(hand: Hand, rug: string, ...facts: readonly RugFact[]): Promise<void> {
  const known = facts.map(draft);
  const { entries } = (await (await hand.page.request.get(`/api/rugs/${rug}`)).json()) as {
    readonly entries: readonly { readonly revision: number }[];
  };
  const expectedRevision = entries.at(-1)?.revision ?? 0;
  await post(hand, `/api/rugs/${rug}/entries`, { expectedRevision, drafts: known } as RecordRequest);
}

/** A rug that was taken in, and of which everything is known but how its dyes behave. */
export async function takeIn(hand: Hand, tag: string, title: string): Promise<string> {
  const [consignment, client, rug] = [crypto.randomUUID(), crypto.randomUUID(), crypto.randomUUID()];
  const facts: readonly RugFact[] = [
    { type: 'DossierOpened', number: 1, title },
    {
      type: 'RugReceived',
      visit: crypto.randomUUID(),
      consignment,
      client,
      tag,
      scope: ['wash'],
      route: 'rug in use',
      reason: 'A general wash.',
      authority: 'owner',
    },
    measured,
    weighed,
    lookedOver,
    identified,
    { type: 'DryingExpected', hours: 20 },
  ];
  const request = {
    consignment,
    client: { client, added: { type: 'ClientAdded', name: 'Halide Örn' } },
    rugs: [{ rug, drafts: facts.map(draft) }],
  } as ConsignmentRequest;
  await post<ConsignmentAnswer>(hand, '/api/consignments', request);
  return rug;
}
