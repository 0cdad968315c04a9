import { describe, expect, test } from 'vitest';
import { bathPh, solutionOf } from '../chemistry/index.ts';
import type { MixingPlace, StockedProduct } from './productFor.ts';
import { stepMix } from './stepMix.ts';
import type { PlanStep } from './washPlan.ts';

const acidRinse: PlanStep = {
  order: 1,
  kind: 'acid rinse',
  wet: true,
  what: 'Leave the rug slightly acid.',
  agents: ['citric acid'],
  amounts: [
    { agent: 'citric acid', least: 10, most: 30, unit: 'g', source: 'workshop-setting' },
    { agent: 'water, at most 28 °C', least: 8, most: 8, unit: 'L', source: 'workshop-setting' },
  ],
  targetPh: { least: 4.5, most: 5.5 },
  temperatureC: { least: 20, most: 25 },
  ...{ tools: [], protection: [], people: 1, stopConditions: [], log: [], source: 'common-practice' },
};
const wash: PlanStep = {
  ...acidRinse,
  kind: 'wash',
  agents: ['neutral detergent'],
  amounts: [
    { agent: 'detergent concentrate', least: 30, most: 80, unit: 'g', source: 'workshop-setting' },
    { agent: 'water, at most 28 °C', least: 10, most: 10, unit: 'L', source: 'workshop-setting' },
  ],
};
const crystals: StockedProduct = {
  id: 'c1',
  name: 'Hearth crystals',
  serves: ['citric acid'],
  unit: 'g',
  parts: [{ kind: 'acid', chemical: 'citric acid, monohydrate', strength: { value: 99.5, unit: '% w/w' } }],
  lots: [
    { lot: 'K-2', amount: 5000, expires: '2027-06-30' },
    { lot: 'K-1', amount: 400, expires: '2026-12-31' },
  ],
  removed: null,
};
const soap: StockedProduct = {
  id: 's1',
  name: 'Meadow wool wash',
  serves: ['neutral detergent'],
  unit: 'mL',
  densityGPerMl: 1.03,
  parts: [{ kind: 'surfactant', strength: { value: 25, unit: '% w/w' } }],
  lots: [{ lot: 'M-7', amount: 4000 }],
  removed: null,
};
const place: MixingPlace = {
  shelf: [crystals, soap],
  water: { on: '2026-09-01', alkalinityMgPerLCaCO3: 250, hardnessMgPerLCaCO3: 300 },
  today: '2026-11-25',
};
const only = (step: PlanStep, more: Partial<MixingPlace> = {}) => {
  const mix = stepMix(step, { ...place, ...more });
  const [line] = mix.lines;
  if (line === undefined) throw new Error('the step has one agent');
  return { mix, line };
};

describe('a bath from this shelf', () => {
  test('the acid brings this water to the middle of the band, in grams of the product itself', () => {
    const { mix, line } = only(acidRinse);
    expect(mix).toMatchObject({ litres: 8, volume: 'bath' });
    expect(line).toMatchObject({
      targetPh: 5,
      product: { name: 'Hearth crystals' },
      lot: 'K-1',
      problems: [],
    });
    const solution = solutionOf({
      ...{ litres: 8, temperatureC: 25, alkalinityMgPerLCaCO3: 250, activity: 'davies', openToAir: false },
      add: [{ agent: 'citric acid, monohydrate', grams: line.amount?.computed ?? 0, strength: 0.995 }],
    });
    const found = solution.ok ? bathPh(solution.value) : solution;
    expect(found.ok && found.value.pH).toBeCloseTo(5, 4);
    expect(line.amount?.least).toBeLessThan(line.amount?.computed ?? 0);
    expect(line.amount?.most).toBeGreaterThan(line.amount?.computed ?? 0);
  });

  test('detergent by area is poured by its density', () => {
    const { line } = only(wash);
    expect(line.amount?.unit).toBe('mL');
    expect(line.amount?.least).toBeCloseTo(30 / 1.03, 10);
    expect(line.amount?.most).toBeCloseTo(80 / 1.03, 10);
  });

  test('a weaker product takes more, in proportion', () => {
    const half = {
      ...crystals,
      parts: crystals.parts.map((part) => ({ ...part, strength: { ...part.strength, value: 49.75 } })),
    };
    const [full, weak] = [only(acidRinse), only(acidRinse, { shelf: [half] })];
    expect(weak.line.amount?.computed).toBeCloseTo((full.line.amount?.computed ?? 0) * 2, 4);
  });

  test('a strength nobody wrote down counts as pure: the least is dosed, and the supplier is asked', () => {
    const unknown = {
      ...crystals,
      parts: crystals.parts.map((part) => ({ ...part, strength: { value: null, unit: '% w/w' } as const })),
    };
    const [known, asked] = [only(acidRinse), only(acidRinse, { shelf: [unknown] })];
    expect(asked.line.amount?.computed).toBeCloseTo((known.line.amount?.computed ?? 0) * 0.995, 6);
    expect(asked.line.problems).toMatchObject([
      { code: 'strength-unknown', facts: { chemicals: ['citric acid, monohydrate'] } },
    ]);
    expect(known.line.problems).toEqual([]);
  });

  test('an acid in which no chemical is named is not dosed', () => {
    const parts = [{ kind: 'acid', strength: { value: 80, unit: '% w/w' } }] as const;
    const { line } = only(acidRinse, { shelf: [{ ...crystals, parts }] });
    expect(line.amount).toBeNull();
    expect(line.problems.map(({ code }) => code)).toEqual(['composition-unknown']);
  });

  test('without a reading of the water the range is wide, begins at nearly nothing, and is asked for', () => {
    const { mix, line } = only(acidRinse, { water: null });
    expect(mix.water.asks).toBe('absent');
    expect(line.amount?.least).toBeLessThan(1);
    expect(line.amount?.most).toBeGreaterThan((only(acidRinse).line.amount?.most ?? 0) * 1.3);
  });

  test('the lot that expires first is taken, and a lot past its day never', () => {
    const later = only(acidRinse, { today: '2027-01-15' });
    expect(later.line.lot).toBe('K-2');
    const tooLate = only(acidRinse, { today: '2027-08-01' });
    expect(tooLate.line.lot).toBeNull();
    expect(tooLate.line.problems.map(({ code }) => code)).toContain('lot-expired');
  });

  test('a product taken off the shelf is named, and the plan still says how much of the pure acid', () => {
    const { line } = only(acidRinse, { shelf: [{ ...crystals, removed: 'The bag was damp.' }] });
    expect(line.product).toBeNull();
    expect(line.problems).toMatchObject([{ code: 'agent-off-shelf', facts: { why: 'The bag was damp.' } }]);
    expect(line.amount?.computed).toBeGreaterThan(0);
  });

  test('an agent nobody shelved is said so', () => {
    expect(only(wash, { shelf: [] }).line.problems.map(({ code }) => code)).toEqual(['agent-not-on-shelf']);
  });

  test('stock that does not last for the bath is said so', () => {
    const few = { ...crystals, lots: [{ lot: 'K-1', amount: 1 }] };
    expect(only(acidRinse, { shelf: [few] }).line.problems.map(({ code }) => code)).toEqual(['stock-short']);
  });
});
