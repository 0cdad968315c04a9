import { describe, expect, test } from 'vitest';
import type { TodayRow } from '../../src/contract/index.ts';
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
import { shelfGapWords } from '../../src/text/shelfGapWords.ts';
import { consignmentOf, newId } from '../support/intake.ts';
import { memoryHouse } from '../support/memoryHouse.ts';
import {
  blotHeld,
  coloursNamed,
  identified,
  lookedOver,
  measured,
  minutesLater,
  weighed,
} from '../support/rugStory.ts';
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

/** A rug whose plan is on record, in a house where Tobin washes too; wet work only with its colours proved. */
async function plannedRug({ isProved = false } = {}) {
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
  const present = async () => {
    const plan = planOf(standingOf(await entriesOf(owner, rug)), firstSettings, house.clock.now());
    if (!plan.ok) throw new Error(plan.problem.code);
    return plan;
  };
  let plan = await present();
  for (let round = 0; isProved && plan.value.missingDyeTests.length > 0 && round < 9; round += 1) {
    await record(owner, rug, ...plan.value.missingDyeTests.map((test) => blotHeld(test)));
    plan = await present();
  }
  const { method, rulebook } = plan.value;
  const fingerprint = planFingerprint(plan.value);
  const onRecord: RugFact = {
    ...{ type: 'PlanAgreed', rulebook, method, fingerprint, plan: { ...plan.value } },
  };
  expect((await record(owner, rug, onRecord)).status).toBe(200);
  const [step] = plan.value.steps;
  return { ...opened, house, rug, step: step === undefined ? '' : stepId(step), plan: plan.value };
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
    const asked = { now: at, settings: firstSettings };
    expect(handsFor(visit, step, person, asked)).toEqual([]);
    expect(handsFor(visit, step, 'tobin', asked)).toEqual([person]);
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
    // Every screen asks for these, whatever page it shows.
    expect((await owner.get('/api/stops')).body['stops']).toMatchObject([
      { rug, tag: '41', condition: 'The run-off gets more and more coloured.' },
    ]);
  });

  test('tells every screen what was read and the band it broke', async () => {
    const { owner, rug } = await plannedRug({ isProved: true });
    const { body } = await record(owner, rug, { type: 'BathMeasured', ph: 10.4, photos: [] });
    const [, called] = body['entries'] as readonly RugEntry[];
    expect(called?.fact).toMatchObject({ type: 'StopCalled', broke: { quantity: 'pH', read: 10.4 } });
    const [stop] = (await owner.get('/api/stops')).body['stops'] as readonly { readonly condition: string }[];
    expect(stop?.condition).toMatch(/outside its band\. pH 10\.4; keep [\d.]+ to [\d.]+\.$/);
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

describe('an agent of the plan on record that the shelf no longer has', () => {
  const crystals = {
    ...{ type: 'AgentShelved', agent: 'c1', name: 'Hearth crystals', serves: ['citric acid'], unit: 'g' },
    parts: [{ kind: 'acid', chemical: 'citric acid, anhydrous', value: 99.5, unit: '% w/w' }],
    ...{ signal: 'Warning', hazards: ['H319'] },
  };
  const woolWash = {
    ...{ type: 'AgentShelved', agent: 'd1', name: 'Meadow wool wash', serves: ['neutral detergent'] },
    ...{ unit: 'g', parts: [{ kind: 'surfactant', value: 20, unit: '% w/w' }], hazards: [] },
  };
  const lot = (name: string, expires: string) => ({
    ...{ type: 'LotReceived', agent: 'c1', lot: name, amount: 5000, expires },
  });

  async function shelved() {
    const told = await plannedRug({ isProved: true });
    const put = async (...facts: readonly object[]) => {
      const drafts = facts.map((fact) => ({ id: newId(), fact }));
      expect((await told.owner.post('/api/shelf/entries', { drafts })).status).toBe(200);
    };
    /** What Today says of the shelf for the one rug of the house. */
    const lacking = async () => {
      const [row] = (await told.owner.get('/api/today')).body['rows'] as unknown as readonly TodayRow[];
      const deed = row?.next.find(({ deed: { code } }) => code === 'mend-shelf')?.deed;
      return deed?.code === 'mend-shelf' ? deed.gap : null;
    };
    await put(woolWash, crystals, lot('K-1', '2026-03-20'));
    return { ...told, put, lacking };
  }

  test('is named on Today with its step, and no longer once another lot or product stands there', async () => {
    const { put, lacking } = await shelved();
    expect(await lacking()).toBeNull();
    await put({ type: 'AgentRemoved', agent: 'c1', why: 'Clumped.' });
    const gap = await lacking();
    expect(gap).toMatchObject({ agent: 'citric acid', problem: { code: 'agent-off-shelf' } });
    expect(gap?.kind).toContain('acid');
    const words = gap === null ? null : shelfGapWords(gap, false);
    expect(words?.happened).toContain('Hearth crystals was taken off the shelf: Clumped.');
    expect(words?.now.join(' ')).toMatch(/Plan and consent stay.*ask for consent again.*Do not wet the rug/);
    await put(
      { ...crystals, agent: 'c2', name: 'Kiln crystals' },
      { ...lot('Q-1', '2027-01-01'), agent: 'c2' },
    );
    expect(await lacking()).toBeNull();
  });

  test('is named too where no product was ever shelved for it, once the workshop keeps a shelf', async () => {
    const { put, lacking } = await shelved();
    await put({
      type: 'AgentShelved',
      agent: 'c1',
      name: 'Hearth crystals',
      serves: [],
      unit: 'g',
      parts: crystals.parts,
      hazards: [],
    });
    const gap = await lacking();
    expect(gap).toMatchObject({ agent: 'citric acid', problem: { code: 'agent-not-on-shelf' } });
    const words = gap === null ? null : shelfGapWords(gap, false);
    expect(words?.title).toMatch(/^Citric acid is not on the shelf; step \d+/);
    expect(words?.now[0]).toContain('Put a product that serves as citric acid on the shelf.');
  });

  test('has run out, is too little for its step, or is past its day', async () => {
    const { put, lacking } = await shelved();
    await put({ type: 'StockCounted', agent: 'c1', lot: 'K-1', amount: 0 });
    expect(await lacking()).toMatchObject({ problem: { code: 'agent-ran-out' } });
    await put({ type: 'StockCounted', agent: 'c1', lot: 'K-1', amount: 0.01 });
    expect(await lacking()).toMatchObject({ problem: { code: 'stock-may-end', facts: { have: 0.01 } } });
    await put({ type: 'StockCounted', agent: 'c1', lot: 'K-1', amount: 900 });
    expect(await lacking()).toBeNull();
    await put({ type: 'StockCounted', agent: 'c1', lot: 'K-1', amount: 0 }, lot('K-0', '2026-03-01'));
    expect(await lacking()).toMatchObject({ problem: { code: 'lot-expired', facts: { lot: 'K-0' } } });
  });
});

describe('a stop by the clock, which nobody records', () => {
  /** Agreed to in full, with its first wet step begun by two. */
  async function wetted() {
    const told = await plannedRug({ isProved: true });
    const { owner, rug, plan } = told;
    const price = { amountMinor: 9000, currency: 'EUR' };
    const paper = (await owner.get(`/api/rugs/${rug}/papers/consent/hash`)).body['sha256'];
    const agreed = await record(
      owner,
      rug,
      ...plan.signOffs.map(
        ({ who, because }): RugFact => ({ type: 'SignedOff', as: who, name: 'Mirela', about: because }),
      ),
      { type: 'PriceQuoted', lines: [{ words: 'Wash', amount: price }], notToExceed: price },
      {
        ...{ type: 'ConsentGiven', plan: planFingerprint(plan), paper: String(paper), notToExceed: price },
        risks: plan.consents.map(({ text }) => text),
        agreed: { how: 'letter or e-mail', words: 'I agree to the wash.' },
      },
    );
    expect(agreed.status, JSON.stringify(agreed.body)).toBe(200);
    const step = plan.steps.find(({ wet }) => wet);
    if (step === undefined) throw new Error('the plan wets nothing');
    const id = stepId(step);
    const lent = { id: newId(), step: id, person: 'tobin', pin: '2846' };
    expect((await owner.post(`/api/rugs/${rug}/hands`, lent)).status).toBe(200);
    const started = await record(owner, rug, { type: 'StepStarted', step: id, wets: true });
    expect(started.status, JSON.stringify(started.body)).toBe(200);
    const conditions = async () => {
      const stops = (await owner.get('/api/stops')).body['stops'] as readonly { condition: string }[];
      return stops.map(({ condition }) => condition);
    };
    return { ...told, conditions };
  }

  test('stands on Today and for every page once the wet minutes are over, with no tablet at the rug', async () => {
    const { house, owner, plan, conditions } = await wetted();
    expect(await conditions()).toEqual([]);
    house.setClock(minutesLater('2026-03-02T08:00:00.000Z', plan.bounds.wetMinutes + 1));
    expect(await conditions()).toEqual(['The wet minutes are used up.']);
    const rows = (await owner.get('/api/today')).body['rows'] as unknown as readonly TodayRow[];
    expect(rows[0]?.next[0]).toMatchObject({ urgency: 'now', deed: { code: 'resolve-stop' } });
  });

  test('goes when what holds it has gone: an extractor that runs again', async () => {
    const { owner, conditions } = await wetted();
    const { settings } = (await owner.get('/api/state')).body as { settings: object };
    const set = (equipmentDown: readonly string[]) =>
      owner.post('/api/settings', { settings: { ...settings, equipmentDown } });
    expect((await set(['extractor'])).status).toBe(200);
    expect(await conditions()).toEqual(['Dryer or extractor is down.']);
    await set([]);
    expect(await conditions()).toEqual([]);
  });
});
