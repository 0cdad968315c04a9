import type {
  ConsignmentAnswer,
  ConsignmentRequest,
  PaperHashAnswer,
  RecordRequest,
  RugAnswer,
  StateAnswer,
} from '../../../../src/contract/index.ts';
import type { WashPlan } from '../../../../src/core/wash/index.ts';
import { demoShelf } from '../../../../src/demo/story/shelf.ts';
import { planFingerprint, planOf, type RugFact, standingOf } from '../../../../src/dossier/index.ts';
import {
  blotHeld,
  coloursNamed,
  identified,
  lookedOver,
  measured,
  weighed,
} from '../../../support/rugStory.ts';
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

const get = async <Answer>(hand: Hand, path: string): Promise<Answer> =>
  (await (await hand.page.request.get(path)).json()) as Answer;

const draft = (fact: RugFact) => ({ id: crypto.randomUUID(), fact });

/** Records facts that this journey is not about. */
export async function record(hand: Hand, rug: string, ...facts: readonly RugFact[]): Promise<void> {
  const { entries } = await get<RugAnswer>(hand, `/api/rugs/${rug}`);
  const expectedRevision = entries.at(-1)?.revision ?? 0;
  const request = { expectedRevision, drafts: facts.map(draft) } as RecordRequest;
  await post(hand, `/api/rugs/${rug}/entries`, request);
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

/** Proves every colour named, by eye; the bath may have another pH than the plan proposes. */
export async function proveColours(
  hand: Hand,
  rug: string,
  { bathPh, controlled }: { readonly bathPh?: number; readonly controlled?: string } = {},
): Promise<void> {
  for (;;) {
    const { missingDyeTests } = await planNow(hand, rug);
    if (missingDyeTests.length === 0) return;
    await record(
      hand,
      rug,
      ...missingDyeTests.map((test) =>
        blotHeld(
          bathPh === undefined || test.agents[0] !== 'neutral detergent' ? test : { ...test, pH: bathPh },
          test.colour === controlled && test.liquid === 'planned bath' ? '3-4' : '5',
        ),
      ),
    );
  }
}

/** Proves every colour, and has the plan on record, signed off, priced and agreed to. */
export async function proveAndAgree(hand: Hand, rug: string): Promise<void> {
  await record(hand, rug, coloursNamed);
  await proveColours(hand, rug);
  await agreePlan(hand, rug);
}

/** Has the plan that follows from the record on record, signed off, priced and agreed to. */
export async function agreePlan(hand: Hand, rug: string): Promise<WashPlan> {
  const plan = await planNow(hand, rug);
  const { method, rulebook } = plan;
  const fingerprint = planFingerprint(plan);
  const ceiling = { amountMinor: 10_000, currency: 'EUR' };
  await record(hand, rug, { type: 'PlanAgreed', rulebook, fingerprint, method, plan: { ...plan } });
  await record(
    hand,
    rug,
    { type: 'SignedOff', as: 'owner', name: 'Mirela Ostrand', about: 'No value is declared.' },
    { type: 'PriceQuoted', lines: [{ words: 'Wash', amount: ceiling }], notToExceed: ceiling },
  );
  const paper = await get<PaperHashAnswer>(hand, `/api/rugs/${rug}/papers/consent/hash`);
  await record(hand, rug, {
    type: 'ConsentGiven',
    plan: fingerprint,
    paper: paper.sha256,
    risks: plan.consents.map(({ text }) => text),
    notToExceed: ceiling,
    agreed: { how: 'letter or e-mail', words: 'I agree to the wash.' },
  });
  return plan;
}

async function planNow(hand: Hand, rug: string): Promise<WashPlan> {
  const { entries } = await get<RugAnswer>(hand, `/api/rugs/${rug}`);
  const { settings } = await get<StateAnswer>(hand, '/api/state');
  const plan = planOf(standingOf(entries), settings, new Date().toISOString());
  if (!plan.ok) throw new Error(`No plan: ${plan.problem.code}`);
  return plan.value;
}

/** Somebody who also works here. */
export async function addColleague(hand: Hand, name: string, passphrase: string): Promise<void> {
  await post(hand, '/api/people', { person: crypto.randomUUID(), name, roles: ['washer'], passphrase });
}

/** Puts the demo's products and its hard water on the shelf. */
export async function stockShelf(hand: Hand): Promise<void> {
  const dayAfter = (days: number) => new Date(Date.now() + days * 86_400_000).toISOString().slice(0, 10);
  const drafts = demoShelf(dayAfter).map((fact) => ({ id: crypto.randomUUID(), fact }));
  await post(hand, '/api/shelf/entries', { drafts });
}
