import { describe, expect, test } from 'vitest';
import type { Entry } from './entry.ts';
import { emptyShelf, reorderList, type ShelfStanding, shelfStanding, stockOf } from './shelf.ts';
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

describe('what the shelf refuses', () => {
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
