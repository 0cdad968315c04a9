import { describe, expect, test } from 'vitest';
import {
  firstSettings,
  handsFor,
  planFingerprint,
  planOf,
  type RugEntry,
  type RugFact,
  standingOf,
  stepId,
} from '../../src/dossier/index.ts';
import { consignmentOf, newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import { coloursNamed, identified, lookedOver, measured, weighed } from '../support/rugStory.ts';
import { openedHouse, type Tablet } from '../support/tablet.ts';

const tobin = { person: 'tobin', name: 'Tobin', roles: ['washer'], pin: '2846' };

const entriesOf = async (tablet: Tablet, rug: string) =>
  (await tablet.get(`/api/rugs/${rug}`)).body['entries'] as readonly RugEntry[];

async function record(tablet: Tablet, rug: string, ...facts: readonly RugFact[]) {
  const expectedRevision = (await entriesOf(tablet, rug)).length;
  const drafts = facts.map((fact) => ({ id: newId(), fact }));
  const answer = await tablet.post(`/api/rugs/${rug}/entries`, { expectedRevision, drafts });
  return { ...answer, ids: drafts.map(({ id }) => id) };
}

/** A rug whose plan is on record, in a house where Tobin washes too. */
async function plannedRug() {
  const house = memoryHouse();
  const opened = await openedHouse(house);
  const { owner, person } = opened;
  await owner.put(`/api/people/${person}/secret`, { pin: '9173' });
  await owner.post('/api/people', { ...tobin, passphrase: 'warp and weft and warp' });
  const consignment = consignmentOf('41');
  await owner.post('/api/consignments', consignment);
  const rug = consignment.rugs[0]?.rug ?? '';
  const known = [measured, weighed, lookedOver, identified, coloursNamed];
  const told = await record(owner, rug, ...known, { type: 'DryingExpected', hours: 20 });
  expect(told.status).toBe(200);
  const plan = planOf(standingOf(await entriesOf(owner, rug)), firstSettings, house.clock.now());
  if (!plan.ok) throw new Error(plan.problem.code);
  const { method, rulebook } = plan.value;
  const fingerprint = planFingerprint(plan.value);
  const onRecord: RugFact = {
    ...{ type: 'PlanAgreed', rulebook, method, fingerprint, plan: { ...plan.value } },
  };
  expect((await record(owner, rug, onRecord)).status).toBe(200);
  const [step] = plan.value.steps;
  return { ...opened, house, rug, step: step === undefined ? '' : stepId(step) };
}

describe('a second pair of hands, by PIN on the tablet of the first', () => {
  test('stands in the record under the colleague’s own name, and the tablet stays with whoever has it', async () => {
    const { owner, rug, step } = await plannedRug();
    const lent = await owner.post(`/api/rugs/${rug}/hands`, {
      id: newId(),
      step,
      person: 'tobin',
      pin: '2846',
    });
    expect(lent).toMatchObject({
      ...{ status: 200, body: { entries: [{ by: 'tobin', fact: { type: 'HandLent', step } }] } },
    });
    expect((await owner.get('/api/state')).body).toMatchObject({ signedIn: { name: 'Mirela' } });
  });

  test('the PIN of whoever starts the step adds nobody', async () => {
    const { owner, person, rug, step } = await plannedRug();
    const own = await owner.post(`/api/rugs/${rug}/hands`, { id: newId(), step, person, pin: '9173' });
    expect(own.status).toBe(200);
    const [visit] = standingOf(await entriesOf(owner, rug)).visits;
    if (visit === undefined) throw new Error('no visit');
    const at = visit.hands[0]?.when ?? '';
    expect(handsFor(visit, step, person, at)).toEqual([]);
    expect(handsFor(visit, step, 'tobin', at)).toEqual([person]);
  });

  test('a wrong PIN records nothing, and five of them close the person, also for the right one', async () => {
    const { owner, rug, step } = await plannedRug();
    const before = (await entriesOf(owner, rug)).length;
    const lend = (pin: string) =>
      owner.post(`/api/rugs/${rug}/hands`, { id: newId(), step, person: 'tobin', pin });
    for (const pin of ['0001', '0002', '0003', '0004', '0005']) {
      expect(await lend(pin)).toMatchObject({ status: 401, body: { code: 'sign-in-refused' } });
    }
    expect(await lend('2846')).toMatchObject({ status: 429, body: { code: 'sign-in-locked' } });
    expect(await entriesOf(owner, rug)).toHaveLength(before);
  });
});

describe('a stop raised by a reading', () => {
  const strong: RugFact = { type: 'BathMeasured', runOff: 'strong colour', photos: [] };
  const undo = (entry: string): RugFact => ({
    ...{ type: 'EntryWithdrawn', entry, reason: 'Undone within a minute.' },
  });

  test('is recorded together with it', async () => {
    const { owner, person, rug } = await plannedRug();
    const { body, ids } = await record(owner, rug, strong);
    expect(body['entries']).toMatchObject([
      { id: ids[0], fact: strong },
      { by: person, fact: { type: 'StopCalled', raisedBy: ids[0] } },
    ]);
    const today = (await owner.get('/api/today')).body['rows'];
    expect(today).toMatchObject([{ next: [{ deed: { code: 'resolve-stop' } }] }]);
  });

  test('cannot be withdrawn while its reading stands; both undone within a minute leave none', async () => {
    const { owner, house, rug } = await plannedRug();
    const { body, ids } = await record(owner, rug, strong);
    const [reading = ''] = ids;
    const stop = (body['entries'] as readonly RugEntry[])[1]?.id ?? '';
    expect(await record(owner, rug, undo(stop))).toMatchObject({
      ...{ status: 409, body: { code: 'stop-stands-on-reading' } },
    });
    house.setClock('2026-03-02T08:00:40.000Z');
    expect((await record(owner, rug, undo(reading), undo(stop))).status).toBe(200);
    const entries = await entriesOf(owner, rug);
    expect(standingOf(entries).visits[0]).toMatchObject({ stops: [], baths: [] });
    // What was undone stays to be read in the history.
    expect(entries.some(({ id }) => id === reading)).toBe(true);
  });
});

describe('a flow begun by hand', () => {
  const begun = (flow: string): RugFact => ({
    type: 'FlowBegun',
    flow,
    where: 'far corner',
    why: 'Smelled it',
  });

  test('is recorded with who, where and why, and its suspicion voids the plan until there is a tighter one', async () => {
    const { owner, rug } = await plannedRug();
    const { status, body } = await record(owner, rug, begun('flood'));
    expect(status).toBe(200);
    expect(body['entries']).toMatchObject([
      { fact: { flow: 'flood', where: 'far corner', why: 'Smelled it' } },
    ]);
    const [row] = (await owner.get('/api/today')).body['rows'] as readonly { readonly next: object[] }[];
    expect(row?.next[0]).not.toMatchObject({ deed: { code: 'start-step' } });
  });

  test('is refused in words where it is unknown or on the page already', async () => {
    const { owner, rug } = await plannedRug();
    const unknown = await record(owner, rug, begun('ironing'));
    expect(unknown).toMatchObject({ status: 422, body: { code: 'flow-unknown' } });
    expect(JSON.stringify(unknown.body)).toContain('known: urine, browning');
    await record(owner, rug, begun('urine'));
    expect(await record(owner, rug, begun('urine'))).toMatchObject({
      ...{ status: 409, body: { code: 'flow-there-already' } },
    });
  });
});
