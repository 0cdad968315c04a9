import { expect } from 'vitest';
import type { House } from '../../src/app/house.ts';
import type { RugAnswer, ShelfAnswer, StateAnswer } from '../../src/contract/index.ts';
import { planFingerprint, planOf, standingOf, stepId } from '../../src/dossier/index.ts';
import { consignmentOf, measured, newId } from './intake.ts';
import { memoryHouse } from './memoryHouse.ts';
import { openedHouse } from './tablet.ts';

/** A product of citric acid. */
export const crystals = {
  ...{ type: 'AgentShelved', agent: 'c1', name: 'Hearth crystals', serves: ['citric acid'], unit: 'g' },
  parts: [{ kind: 'acid', chemical: 'citric acid, anhydrous', value: 99.5, unit: '% w/w' }],
  ...{ signal: 'Warning', hazards: ['H319'] },
};
/** Facts of the shelf, ready to send. */
export const drafts = (...facts: readonly object[]) => ({
  drafts: facts.map((fact) => ({ id: newId(), fact })),
});

/** A rug whose plan is on record and whose dusting has begun, beside a shelf with one lot in date and one past it. */
export async function dustingBegun(house: House = memoryHouse()) {
  const { owner } = await openedHouse(house);
  await owner.post(
    '/api/shelf/entries',
    drafts(
      crystals,
      { type: 'LotReceived', agent: 'c1', lot: 'K-1', amount: 5000 },
      { type: 'LotReceived', agent: 'c1', lot: 'K-0', amount: 900, expires: '2020-01-31' },
    ),
  );
  const request = consignmentOf('41');
  await owner.post('/api/consignments', request);
  const rug = request.rugs[0]?.rug ?? '';
  let revision = 2;
  const record = async (...facts: readonly object[]) => {
    const told = facts.map((fact) => ({ id: newId(), fact }));
    const answer = await owner.post(`/api/rugs/${rug}/entries`, { expectedRevision: revision, drafts: told });
    if (answer.status === 200) revision += told.length;
    return { ...answer, id: told[0]?.id ?? '' };
  };
  // Light enough for one pair of hands.
  await record(measured, {
    ...{ type: 'RugWeighed', massKg: 4, airRh: 0.5, airC: 20, restedADay: true, occasion: 'intake' },
    confirmedUnusual: true,
  });
  const { entries } = (await owner.get(`/api/rugs/${rug}`)).body as unknown as RugAnswer;
  const { settings } = (await owner.get('/api/state')).body as unknown as StateAnswer;
  const planned = planOf(standingOf(entries), settings, house.clock.now());
  if (!planned.ok) throw new Error(planned.problem.code);
  const plan = planned.value;
  const fingerprint = planFingerprint(plan);
  const { rulebook, method } = plan;
  const agreed = await record({ type: 'PlanAgreed', rulebook, method, fingerprint, plan });
  const dusting = plan.steps.find(({ kind }) => kind === 'dusting');
  if (dusting === undefined) throw new Error('the plan does not dust');
  const step = stepId(dusting);
  const started = await record({ type: 'StepStarted', step, wets: false });
  expect([agreed.status, started.status]).toEqual([200, 200]);
  const lots = async () => {
    const { standing: shelf } = (await owner.get('/api/shelf')).body as unknown as ShelfAnswer;
    return Object.fromEntries((shelf.agents[0]?.lots ?? []).map(({ lot, amount }) => [lot, amount]));
  };
  const finish = (lot: string, amount = 120) =>
    record({
      type: 'StepDone',
      step,
      early: 'The test does not wait.',
      used: [{ agent: 'c1', lot, amount }],
    });
  return { owner, rug, step, record, finish, lots };
}
