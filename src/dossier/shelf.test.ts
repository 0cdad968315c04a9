import { describe, expect, test } from 'vitest';
import type { Entry } from './entry.ts';
import { ordersBySupplier, reorderList } from './reorder.ts';
import { emptyShelf, type ShelfStanding, shelfStanding, stockOf } from './shelf.ts';
import { asksOf } from './shelfAsks.ts';
import { decideShelf } from './shelfDecide.ts';
import { type ShelfFact, shelfFacts } from './shelfFacts.ts';

const crystals: ShelfFact = {
  type: 'AgentShelved',
  agent: 'c1',
  name: 'Hearth crystals',
  serves: ['citric acid'],
  parts: [{ kind: 'acid', chemical: 'citric acid, anhydrous', value: 99.5, unit: '% w/w' }],
  unit: 'g',
  signal: 'Warning',
  hazards: ['H319', 'H335'],
  reorderBelow: 1000,
};
const lot: ShelfFact = { type: 'LotReceived', agent: 'c1', lot: 'K-1', amount: 5000, expires: '2027-01-31' };

const told = (...facts: readonly ShelfFact[]): ShelfStanding =>
  shelfStanding(
    facts.map(
      (fact, index): Entry => ({
        ...{ id: `e${index}`, stream: 'shelf', revision: index + 1, at: '2026-11-25T09:00:00.000Z' },
        ...{ by: 'mirela', version: 1, seal: '', fact },
      }),
    ),
  );
const asked = (roles: readonly ('owner' | 'washer' | 'counter')[]) => ({
  now: '2026-11-25T09:00:00.000Z',
  person: { person: 'mirela', roles },
});
const codeOf = (standing: ShelfStanding, fact: ShelfFact, roles = ['owner'] as const) => {
  const decided = decideShelf(standing, fact, asked(roles));
  return decided.ok ? 'allowed' : decided.problem.code;
};

describe('stock', () => {
  const [agent] = told(crystals, lot).agents;
  if (agent === undefined) throw new Error('one product is shelved');

  test('falls by what a step drew, rises when that is withdrawn, and a count corrects it', () => {
    const draw = { agent: 'c1', lot: 'K-1', amount: 4200, entry: 'e9' };
    const drawn = told(crystals, lot, { type: 'StockDrawn', ...draw, rug: 'r1', step: 's1' });
    expect(drawn.agents[0]?.lots[0]?.amount).toBe(800);
    expect(reorderList(drawn, '2026-11-25').map(({ name }) => name)).toEqual(['Hearth crystals']);
    const back = told(...[crystals, lot, { type: 'StockDrawn', ...draw, rug: 'r1', step: 's1' } as const], {
      type: 'StockReturned',
      ...draw,
    });
    expect(back.agents[0]?.lots[0]?.amount).toBe(5000);
    const counted = told(crystals, lot, { type: 'StockCounted', agent: 'c1', lot: 'K-1', amount: 4321 });
    expect(counted.agents[0]?.lots[0]?.amount).toBe(4321);
  });

  test('a lot past its day is no stock', () => {
    expect(stockOf(agent, '2027-01-31')).toBe(5000);
    expect(stockOf(agent, '2027-02-01')).toBe(0);
  });

  test('a product described anew keeps its lots, and one taken off comes back when shelved again', () => {
    const removed = told(crystals, lot, { type: 'AgentRemoved', agent: 'c1', why: 'damp' });
    expect(removed.agents[0]?.removed?.why).toBe('damp');
    const again = told(crystals, lot, { type: 'AgentRemoved', agent: 'c1', why: 'damp' }, crystals);
    expect(again.agents[0]).toMatchObject({ removed: null, lots: [{ lot: 'K-1', amount: 5000 }] });
  });

  test('the latest reading of the water counts, also when an older sheet is found afterwards', () => {
    const read = (on: string): ShelfFact => ({ type: 'WaterMeasured', on, ph: 7.4 });
    expect(told(read('2026-05-01'), read('2025-03-01')).water?.on).toBe('2026-05-01');
  });
});

describe('the reorder list', () => {
  const bought = {
    ...{ ...crystals, reorderBelow: 6000, supplier: 'Hollow Mill Supplies' },
    ...{ price: { amountMinor: 1450, currency: 'EUR' }, pack: 2500 },
  } as const;

  test('names the supplier, and counts whole packs and what they cost', () => {
    const [order] = ordersBySupplier(told({ ...bought, reorderBelow: 10_001 }, lot), '2026-11-25');
    expect(order?.supplier).toBe('Hollow Mill Supplies');
    // 10 001 g wanted, 5000 g there: two packs of 2500 g leave a gram missing, so three.
    expect(order?.orders[0]).toMatchObject({ left: 5000, missing: 5001, packs: 3 });
    expect(order?.totals).toEqual([{ amountMinor: 4350, currency: 'EUR' }]);
  });

  test('says what is missing where neither pack nor price are known, and adds no price to the sum', () => {
    const unpriced: ShelfFact = { ...crystals, agent: 'c2', supplier: 'Hollow Mill Supplies' };
    const [order] = ordersBySupplier(told(bought, unpriced), '2026-11-25');
    expect(order?.orders[1]).toMatchObject({ missing: 1000, packs: null, cost: null });
    expect(order?.totals).toEqual([{ amountMinor: 4350, currency: 'EUR' }]);
  });

  test('a price without a pack is of a kilogram or a litre', () => {
    const { pack: _pack, ...byTheKilogram } = bought;
    const [order] = ordersBySupplier(told(byTheKilogram, lot), '2026-11-25');
    expect(order?.orders[0]).toMatchObject({ missing: 1000, packs: 1 });
  });
});

describe('what is asked of the supplier', () => {
  const asksFor = (fact: ShelfFact, ...more: readonly ShelfFact[]) => {
    const [agent] = told(fact, ...more).agents;
    return agent === undefined ? [] : asksOf(agent);
  };

  test('nothing where everything is written down', () => {
    expect(asksFor({ ...crystals, safetySheet: 'https://sheets.larkfield.example/c' }, lot)).toEqual([]);
  });

  test('strength, hazards, data sheet and last day where nobody wrote them down', () => {
    const { signal: _signal, ...unread } = crystals;
    const parts = [{ kind: 'acid', chemical: 'acetic acid', unit: '% w/w' }] as const;
    const undated = { type: 'LotReceived', agent: 'c1', lot: 'K-2', amount: 5 } as const;
    expect(asksFor({ ...unread, parts }, undated)).toEqual(['strength', 'hazards', 'safety sheet', 'expiry']);
  });

  test('the chemical of what is dosed by pH, and the pH of what is not computed with', () => {
    const soap = { ...crystals, parts: [{ kind: 'surfactant', value: 25, unit: '% w/w' }] } as const;
    expect(asksFor({ ...soap, serves: ['ammonia'] })).toEqual(['chemical', 'ph', 'safety sheet']);
  });
});

describe('a lot whose days were written down wrong', () => {
  test('is corrected, and a day it does not bear is taken away', () => {
    const days = { type: 'LotCorrected', agent: 'c1', lot: 'K-1', receivedOn: '2026-10-01' } as const;
    const corrected = told(crystals, lot, { ...days, expires: null }).agents[0]?.lots[0];
    expect(corrected).toMatchObject({ amount: 5000, receivedOn: '2026-10-01', expires: undefined });
  });
});

describe('what the shelf refuses', () => {
  test('a last day before the lot came in, on receipt and when it is corrected', () => {
    const late: ShelfFact = { ...lot, receivedOn: '2026-11-20', expires: '2026-11-01' };
    expect(codeOf(told(crystals), late)).toBe('lot-expired-before-receipt');
    const wrong = { type: 'LotCorrected', agent: 'c1', lot: 'K-1', receivedOn: '2026-11-20' } as const;
    const corrected = { ...wrong, expires: '2026-11-01' };
    expect(codeOf(told(crystals, lot), corrected)).toBe('lot-expired-before-receipt');
    expect(codeOf(told(crystals, lot), { ...corrected, expires: '2027-11-01' })).toBe('allowed');
    expect(codeOf(told(crystals), { ...lot, receivedOn: '2026-12-24' })).toBe('shelf-day-ahead');
  });
  test('a second container of a lot with another last day', () => {
    expect(codeOf(told(crystals, lot), { ...lot, expires: '2029-01-31' })).toBe('lot-expiry-differs');
    expect(codeOf(told(crystals, lot), lot)).toBe('allowed');
  });
  test('hardness in a unit of alkalinity, and a figure that was read in another unit', () => {
    const read = (water: object): ShelfFact => ({ type: 'WaterMeasured', on: '2026-11-20', ...water });
    const acid = read({ hardness: { value: 4.9, unit: 'mmol/L acid' } });
    expect(codeOf(emptyShelf, acid)).toBe('hardness-unit-wrong');
    // 286 mg/L is hard water; 286 °dH is not found in any tap.
    expect(codeOf(emptyShelf, read({ hardness: { value: 286, unit: '°dH' } }))).toBe('water-not-believed');
    expect(codeOf(emptyShelf, read({ hardness: { value: 286, unit: 'mg/L CaCO₃' } }))).toBe('allowed');
    expect(codeOf(emptyShelf, read({ alkalinity: { value: 4.9, unit: 'mmol/L acid' } }))).toBe('allowed');
  });
  test('bleach or a sulfite under the name of something harmless', () => {
    const bleach = { kind: 'oxidiser', chemical: 'sodium hypochlorite', value: 2, unit: '% w/w' } as const;
    const hidden: ShelfFact = { ...crystals, parts: [bleach], serves: ['neutral detergent'] };
    expect(codeOf(emptyShelf, hidden)).toBe('agent-hidden');
    expect(codeOf(emptyShelf, { ...hidden, serves: ['hypochlorite', 'neutral detergent'] })).toBe(
      'agent-hidden',
    );
    expect(codeOf(emptyShelf, { ...hidden, serves: ['hypochlorite'] })).toBe('allowed');
    expect(codeOf(emptyShelf, { ...hidden, serves: [] })).toBe('allowed');
  });
  test('an enzyme, a bleach or a reducer that nobody named, under the name of a detergent', () => {
    // ISO 1833-4 dissolves wool in hypochlorite; that proteases digest keratin is common knowledge of the trade.
    const soap = { kind: 'surfactant', value: 20, unit: '% w/w' } as const;
    for (const kind of ['enzyme', 'oxidiser', 'reducer'] as const) {
      const mixed: ShelfFact = { ...crystals, parts: [soap, { kind, unit: '% w/w' }] };
      expect(codeOf(emptyShelf, { ...mixed, serves: ['neutral detergent'] })).toBe('agent-hidden');
      expect(codeOf(emptyShelf, { ...mixed, serves: [] })).toBe('allowed');
    }
    const enzyme: ShelfFact = { ...crystals, parts: [soap, { kind: 'enzyme', unit: '% w/w' }] };
    expect(codeOf(emptyShelf, { ...enzyme, serves: ['protease'] })).toBe('allowed');
    expect(codeOf(emptyShelf, { ...enzyme, serves: ['protease', 'neutral detergent'] })).toBe('agent-hidden');
  });
  test('a neutral detergent that is alkaline, and a chemical under a kind it is not', () => {
    const soap = { ...crystals, parts: [{ kind: 'surfactant', value: 25, unit: '% w/w' }] } as const;
    const alkaline: ShelfFact = {
      ...{ ...soap, serves: ['neutral detergent'], ph: { value: 9.5, gramsPerLitre: 10 } },
    };
    expect(codeOf(emptyShelf, alkaline)).toBe('detergent-not-neutral');
    const salt = { kind: 'salt', chemical: 'citric acid, anhydrous', value: 99, unit: '% w/w' } as const;
    expect(codeOf(emptyShelf, { ...crystals, parts: [salt] })).toBe('constituent-kind-wrong');
  });

  test('the counter reads it and writes nothing', () => {
    const decided = decideShelf(emptyShelf, crystals, asked(['counter']));
    expect(decided.ok ? null : decided.problem.code).toBe('role-missing');
  });
  test('a count of a lot nobody received, and a lot of nothing', () => {
    expect(codeOf(told(crystals, lot), { type: 'StockCounted', agent: 'c1', lot: 'X', amount: 5 })).toBe(
      'lot-unknown',
    );
    expect(codeOf(emptyShelf, lot)).toBe('shelf-agent-unknown');
  });
  test('parts that are more than the whole, and a poured product without density', () => {
    const part = { kind: 'acid', value: 70, unit: '% w/w' } as const;
    expect(codeOf(emptyShelf, { ...crystals, parts: [part, part] })).toBe('strength-above-whole');
    expect(codeOf(emptyShelf, { ...crystals, unit: 'mL' })).toBe('density-missing');
  });
  test('a negative strength, 120 % w/w, a pH of 15 and a day the calendar has not do not even have the shape', () => {
    const part = (value: number) => ({ ...crystals, parts: [{ kind: 'acid', value, unit: '% w/w' }] });
    expect(shelfFacts.AgentShelved.safeParse(part(-1)).success).toBe(false);
    expect(shelfFacts.AgentShelved.safeParse(part(120)).success).toBe(false);
    expect(
      shelfFacts.WaterMeasured.safeParse({ type: 'WaterMeasured', on: '2026-11-01', ph: 15 }).success,
    ).toBe(false);
    expect(shelfFacts.WaterMeasured.safeParse({ type: 'WaterMeasured', on: '2026-02-30' }).success).toBe(
      false,
    );
    expect(shelfFacts.AgentShelved.safeParse({ ...crystals, hazards: ['H999'] }).success).toBe(false);
  });
  test('water read on a day to come', () => {
    expect(codeOf(emptyShelf, { type: 'WaterMeasured', on: '2026-12-24', ph: 7 })).toBe('shelf-day-ahead');
  });
});
