import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bathPh, solutionOf } from '../chemistry/index.ts';
import { noLimit } from './limit.ts';
import type { Agent, PlanFacts, StainClass } from './planFacts.ts';
import type { MixingPlace, StockedProduct } from './productFor.ts';
import { spottingCards } from './spottingCards.ts';
import { stepMix, usualAmounts } from './stepMix.ts';

const wool = { ...noLimit, bathPh: { least: 4.5, most: 8.5 }, temperatureC: 30, strengthGPerL: 8 };
const cardFor = (kind: StainClass, agent: Agent, areaCm2 = 60) => {
  const facts: PlanFacts = {
    ...{ route: 'rug in use', areaM2: 4, pile: { wool: 1 } },
    colours: [{ id: 'red', name: 'red', kind: 'field colour' }],
    stains: [{ id: 's', class: kind, areaCm2 }],
  };
  const card = spottingCards(facts, wool).find(({ agents }) => agents.includes(agent));
  if (card === undefined) throw new Error(`no card lays ${agent} on ${kind}`);
  return card;
};
const product = (
  agent: Agent,
  part: StockedProduct['parts'][number],
  more: Partial<StockedProduct> = {},
): StockedProduct => ({
  ...{ id: 'p', name: 'Invented product', serves: [agent], unit: 'g', parts: [part], removed: null },
  ...{ lots: [{ lot: 'L-1', amount: 5000 }], ...more },
});
const percent = (kind: 'acid' | 'oxidiser' | 'reducer' | 'surfactant' | 'solvent', value: number) =>
  ({ kind, strength: { value, unit: '% w/w' } }) as const;
const place = (...shelf: readonly StockedProduct[]): MixingPlace => ({
  shelf,
  water: { on: '2026-09-01', alkalinityMgPerLCaCO3: 250, hardnessMgPerLCaCO3: 300 },
  today: '2026-11-25',
});

/** One line, of a card with one agent. */
const mixed = (card: ReturnType<typeof cardFor>, from: MixingPlace) => {
  const mix = stepMix(card, from);
  const [line] = mix.lines;
  if (line === undefined) throw new Error('the card lays one agent');
  return { mix, line };
};

// Definition of mass fraction; ±5 % of the label and the batch of 100 mL are workshop settings.
describe('a spotter from this shelf', () => {
  const reducer = cardFor('synthetic dye', 'metabisulfite');
  test('of which 1 to 3 % is asked takes as much more of the product as it is weaker', () => {
    const { mix, line } = mixed(reducer, place(product('metabisulfite', percent('reducer', 50))));
    expect(mix).toMatchObject({ litres: 0.1, volume: 'made up' });
    // By hand: 1 g and 3 g in 100 mL, at a half, off by 5 % at worst: 1/(0.5 · 0.95) and 3/(0.5 · 1.05).
    expect(line.amount?.least).toBeCloseTo(2.105, 3);
    expect(line.amount?.most).toBeCloseTo(5.714, 3);
    expect(line.lot).toBe('L-1');
  });
  test('is never stronger than stated, nor weaker, though the label be off by 5 % either way', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 4, max: 100, noNaN: true }),
        fc.double({ min: -0.05, max: 0.05, noNaN: true }),
        (label, off) => {
          const { line } = mixed(reducer, place(product('metabisulfite', percent('reducer', label))));
          const share = (label / 100) * (1 + off);
          expect((line.amount?.most ?? 0) * share).toBeLessThanOrEqual(3 + 1e-9);
          expect((line.amount?.least ?? 0) * share).toBeGreaterThanOrEqual(1 - 1e-9);
        },
      ),
    );
  });
  test('is poured by its density', () => {
    const peroxide = product('hydrogen peroxide', percent('oxidiser', 12), {
      unit: 'mL',
      densityGPerMl: 1.04,
    });
    const { line } = mixed(cardFor('mould stain', 'hydrogen peroxide'), place(peroxide));
    // By hand: 3 g / (0.12 · 1.05) = 23.81 g; / 1.04 = 22.89 mL.
    expect(line.amount?.unit).toBe('mL');
    expect(line.amount?.most).toBeCloseTo(22.89, 2);
  });
  test('detergent is stated as it is bought, and its strength is no part of the sum', () => {
    const soap = product('neutral detergent', percent('surfactant', 25));
    const { line } = mixed(cardFor('tannin', 'neutral detergent'), place(soap));
    expect(line.amount).toMatchObject({ least: 0.2, most: 0.8 });
  });
  test('dry solvent is poured as it is, by the area, and no water is added', () => {
    const solvent = product('dry solvent', percent('solvent', 100), { unit: 'g', densityGPerMl: 0.75 });
    const { line } = mixed(cardFor('oil, wax or gum', 'dry solvent'), place(solvent));
    // 0.2 to 0.5 mL/cm² on 60 cm²: 12 to 30 mL, of 0.75 g/mL.
    expect(line).toMatchObject({ isNeat: true, amount: { least: 9, most: 22.5, unit: 'g' } });
  });
  test('acid brings the cup, not a litre, of this water to the middle of the band', () => {
    const acid = product('citric acid', { ...percent('acid', 100), chemical: 'citric acid, anhydrous' });
    const card = cardFor('tannin', 'citric acid');
    const { line } = mixed(card, place(acid));
    const solution = solutionOf({
      ...{ litres: 0.1, alkalinityMgPerLCaCO3: 250, activity: 'davies', openToAir: false },
      temperatureC: card.temperatureC.most,
      add: [{ agent: 'citric acid, anhydrous', grams: line.amount?.computed ?? 0, strength: 1 }],
    });
    const found = solution.ok ? bathPh(solution.value) : solution;
    expect(found.ok && found.value.pH).toBeCloseTo(5.25, 2);
    expect(line.targetPh).toBe(5.25);
  });
  test('water nobody read is reckoned from soft to hard, and asked for', () => {
    const acid = product('citric acid', { ...percent('acid', 100), chemical: 'citric acid, anhydrous' });
    const known = mixed(cardFor('tannin', 'citric acid'), place(acid)).line.amount;
    const { mix, line } = mixed(cardFor('tannin', 'citric acid'), { ...place(acid), water: null });
    expect(mix.water).toMatchObject({ asks: 'absent', alkalinity: { least: 0, most: 400 } });
    expect(line.amount?.least).toBeLessThan(known?.least ?? 0);
    expect(line.amount?.most).toBeGreaterThan(known?.most ?? 0);
  });
});

// Where a sulfite stands by itself: sulfurous acid 1.85 and 7.20 (crc-handbook), through bathPh.
describe('a reducer sets its own pH', () => {
  const powder = product('metabisulfite', {
    ...percent('reducer', 97),
    chemical: 'sodium metabisulfite',
  });
  const on = (band: { readonly least: number; readonly most: number }, water: number) => {
    const card = { ...cardFor('synthetic dye', 'metabisulfite'), targetPh: band };
    const from = { ...place(powder), water: { on: '2026-09-01', alkalinityMgPerLCaCO3: water } };
    return stepMix(card, from).lines[0];
  };
  test('between the two constants of its acid, and nearer to the upper one in hard water', () => {
    const [soft, hard] = [on({ least: 4, most: 7 }, 0), on({ least: 4, most: 7 }, 300)];
    // Bisulfite alone: (1.85 + 7.20) / 2 = 4.5, a little less with activity.
    expect(soft?.standsAtPh?.least).toBeGreaterThan(4);
    expect(soft?.standsAtPh?.most).toBeLessThan(4.6);
    expect(hard?.standsAtPh?.least).toBeGreaterThan(soft?.standsAtPh?.most ?? 14);
    expect(hard?.standsAtPh?.most).toBeLessThan(7.2);
    expect(soft?.problems).toEqual([]);
  });
  test('and outside what the place bears it is said, not hidden behind the band', () => {
    expect(on({ least: 5, most: 6 }, 0)?.problems.map(({ code }) => code)).toEqual(['spotter-off-band']);
    expect(on({ least: 4, most: 5 }, 300)?.problems.map(({ code }) => code)).toEqual(['spotter-off-band']);
  });
});

describe('a spotter that cannot be mixed says why', () => {
  const card = cardFor('synthetic dye', 'metabisulfite');
  const codes = (one: StockedProduct) => mixed(card, place(one)).line.problems.map(({ code }) => code);
  test('no strength is stated of it', () => {
    expect(codes(product('metabisulfite', percent('surfactant', 20)))).toEqual(['strength-missing']);
    expect(codes(product('metabisulfite', percent('reducer', 0)))).toEqual(['strength-missing']);
  });
  test('it is too weak even undiluted', () => {
    expect(codes(product('metabisulfite', percent('reducer', 0.5)))).toEqual(['product-too-weak']);
  });
  test('its lot is past its day; the amount of the product still stands', () => {
    const old = product('metabisulfite', percent('reducer', 97), {
      lots: [{ lot: 'L-0', amount: 800, expires: '2026-01-31' }],
    });
    const { line } = mixed(card, place(old));
    expect(line).toMatchObject({ lot: null, problems: [{ code: 'lot-expired', facts: { lot: 'L-0' } }] });
  });
  test('it is not on the shelf; the pure amount still stands', () => {
    const { line } = mixed(card, place());
    expect(line.amount).toEqual({ least: 1, most: 3, computed: 1, unit: 'g' });
    expect(line.problems.map(({ code }) => code)).toEqual(['agent-not-on-shelf']);
  });
});

test('no amount is said twice, and none that the shelf does not work out is left out', () => {
  const card = cardFor('synthetic dye', 'metabisulfite');
  const from = (one: StockedProduct) => usualAmounts(card, stepMix(card, place(one)));
  expect(from(product('metabisulfite', percent('reducer', 97)))).toEqual([]);
  expect(from(product('metabisulfite', percent('surfactant', 97)))).toEqual(card.amounts);
});
