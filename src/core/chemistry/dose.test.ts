import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { bathPh } from './bathPh.ts';
import { type BathRecipe, solutionOf } from './bathRecipe.ts';
import {
  dilution,
  hardnessFromGermanDegrees,
  leftAfterFills,
  peroxideVolumes,
  rinseWays,
} from './dilution.ts';
import { dose } from './dose.ts';
import { gasWarnings } from './gasWarnings.ts';

const hardWater: BathRecipe = {
  litres: 1,
  temperatureC: 25,
  alkalinityMgPerLCaCO3: 250,
  activity: 'ideal',
  openToAir: false,
  add: [],
};

agreesWith(
  {
    source: 'crc-handbook',
    where: 'section 5, dissociation constants: acid for 1 L of 250 mg/L CaCO₃ to pH 5.0, no CO₂ lost',
    readFrom: 'a separate calculation from the same constants',
    within: 0.003,
    because: 'three figures are given',
    rows: [
      { agent: 'acetic acid', expected: 0.452 },
      { agent: 'citric acid, anhydrous', expected: 0.555 },
    ],
  },
  ({ agent }) => {
    const found = dose(hardWater, agent, 5);
    return found.ok ? found.value.grams : Number.NaN;
  },
);

agreesWith(
  {
    source: 'crc-handbook',
    where: 'section 5, sulfurous acid pKa 1.85 and 7.20: free share at pH 3, 4, 5',
    readFrom: 'a separate calculation from the same constants',
    within: (expected) => expected * 0.02,
    because: 'two figures are given',
    rows: [
      { pH: 3, expected: 0.066 },
      { pH: 4, expected: 0.007 },
      { pH: 5, expected: 0.0007 },
    ],
  },
  ({ pH }) => {
    const found = dose(
      { ...hardWater, alkalinityMgPerLCaCO3: 0, add: [{ agent: 'sodium metabisulfite', grams: 1 }] },
      pH < 4.5 ? 'hydrochloric acid' : 'sodium hydroxide',
      pH,
    );
    if (!found.ok) return Number.NaN;
    const add = [
      { agent: 'sodium metabisulfite', grams: 1 },
      { agent: pH < 4.5 ? 'hydrochloric acid' : 'sodium hydroxide', grams: found.value.grams },
    ];
    const solution = solutionOf({ ...hardWater, alkalinityMgPerLCaCO3: 0, add });
    if (!solution.ok) return Number.NaN;
    const bath = bathPh(solution.value);
    return bath.ok ? (bath.value.shares['sulfurous']?.[0] ?? Number.NaN) : Number.NaN;
  },
);

describe('dosing', () => {
  test('dosing and then computing returns the target, for any water and litres', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 500, noNaN: true }),
        fc.double({ min: 1, max: 300, noNaN: true }),
        fc.double({ min: 3.5, max: 6, noNaN: true }),
        (alkalinityMgPerLCaCO3, litres, target) => {
          const recipe = { ...hardWater, litres, alkalinityMgPerLCaCO3 };
          const found = dose(recipe, 'citric acid, anhydrous', target);
          if (!found.ok) throw new Error(found.problem.code);
          const { grams, interval } = found.value;
          const solution = solutionOf({ ...recipe, add: [{ agent: 'citric acid, anhydrous', grams }] });
          if (!solution.ok) throw new Error(solution.problem.code);
          const bath = bathPh(solution.value);
          expect(bath.ok ? bath.value.pH : Number.NaN).toBeCloseTo(target, 6);
          expect(interval[0]).toBeLessThanOrEqual(grams);
          expect(interval[1]).toBeGreaterThanOrEqual(grams);
        },
      ),
      { numRuns: 40 },
    );
  });
  test('no acid makes a bath more alkaline, and the refusal says how far it reaches', () => {
    const found = dose(hardWater, 'acetic acid', 11);
    expect(found.ok ? null : found.problem.code).toBe('target-out-of-reach');
  });
  test('a weak lot and soft water together set the upper end of a base’s dose', () => {
    // Bicarbonate of the water helps soda towards pH 7 from an acid bath; the least of it needs the most soda.
    const acid = { ...hardWater, add: [{ agent: 'citric acid, anhydrous', grams: 1 }] };
    const found = dose(acid, 'sodium carbonate', 7, { strength: 0.05, alkalinity: 0.1 });
    const soft = dose({ ...acid, alkalinityMgPerLCaCO3: 225 }, 'sodium carbonate', 7);
    if (!found.ok || !soft.ok) throw new Error('refused');
    expect(found.value.interval[1]).toBeCloseTo(soft.value.grams / 0.95, 9);
  });
  // davies-1962, range of validity: 0.5 mol/L, which 28.5 g/L of salt (0.488 mol/L) all but fills.
  test('where the water may be one that no dose can be computed for, none is told as if it were known', () => {
    const salty = (alkalinityMgPerLCaCO3: number): BathRecipe => ({
      ...{ ...hardWater, alkalinityMgPerLCaCO3, activity: 'davies' as const },
      add: [{ agent: 'sodium chloride', grams: 28.5 }],
    });
    const asked = (alkalinity: number, share: number) =>
      dose(salty(alkalinity), 'citric acid, anhydrous', 4, { strength: 0.05, alkalinity: share });
    expect(asked(400, 0).ok).toBe(true);
    const hardest = asked(600, 0);
    expect(hardest.ok ? null : hardest.problem.code).toBe('ionic-strength-too-high');
    expect(asked(400, 0.5)).toEqual({
      ok: false,
      problem: {
        code: 'dose-range-open',
        facts: { agent: 'citric acid, anhydrous', targetPh: 4, alkalinityMgPerLCaCO3: 600 },
      },
    });
  });
  test('a dose is of the bottle as it is named: twenty times as much vinegar as acetic acid', () => {
    const [pure, vinegar] = ['acetic acid', 'white vinegar'].map((agent) => dose(hardWater, agent, 5));
    if (pure?.ok !== true || vinegar?.ok !== true) throw new Error('refused');
    expect(vinegar.value.grams / pure.value.grams).toBeCloseTo(20, 9);
  });
  test('an unknown agent and an impossible pH are named', () => {
    const strange = dose(hardWater, 'moon dust', 5);
    expect(strange.ok ? null : strange.problem.code).toBe('agent-unknown');
    const beyond = dose(hardWater, 'acetic acid', 15);
    expect(beyond.ok ? null : beyond.problem.code).toBe('out-of-range');
  });
  test('a strength of 120 % is refused', () => {
    const made = solutionOf({ ...hardWater, add: [{ agent: 'acetic acid', grams: 1, strength: 1.2 }] });
    expect(made.ok ? null : made.problem.code).toBe('out-of-range');
  });
});

agreesWith(
  {
    source: 'common-practice',
    where: 'serial dilution by perfect mixing, worked by hand',
    readFrom: 'hand calculation: (2/12)³ and (0.33/10.33)²',
    within: 5e-6,
    because: 'five decimals are given',
    rows: [
      { retained: 2, fills: 3, expected: 0.00463 },
      { retained: 0.33, fills: 2, expected: 0.00102 },
    ],
  },
  ({ retained, fills }) => leftAfterFills(retained, 10, fills),
);

describe('rinsing and diluting', () => {
  test('extraction between fills beats more water', () => {
    const ways = rinseWays(0.005);
    if (!ways.ok) throw new Error(ways.problem.code);
    const litres = (way: string) => ways.value.find((one) => one.way === way)?.litresPerKg ?? Number.NaN;
    expect(litres('fill, drain and extract')).toBeLessThan(litres('fill and drain'));
    for (const { left } of ways.value) expect(left).toBeLessThanOrEqual(0.005 + 1e-12);
    expect([...ways.value].map(({ litresPerKg }) => litresPerKg)).toEqual(
      ways.value.map(({ litresPerKg }) => litresPerKg).sort((a, b) => a - b),
    );
  });
  test('a dilution keeps the amount of agent', () => {
    const made = dilution(80, 5, 16);
    if (!made.ok) throw new Error(made.problem.code);
    expect(made.value.concentrateL * 80).toBeCloseTo(16 * 5, 10);
    expect(made.value.concentrateL + made.value.waterL).toBeCloseTo(16, 12);
    expect(dilution(5, 80, 1).ok).toBe(false);
  });
  test('3 % peroxide is near ten volumes; a German degree is 17.848 mg/L', () => {
    // 30.0 g/L over 34.01 g/mol; common practice calls 3 % "10 volumes", no published source.
    expect(peroxideVolumes(30 / 34.01)).toBeCloseTo(9.9, 1);
    expect(hardnessFromGermanDegrees(10)).toBeCloseTo(178.48, 10);
  });
});

// Sulfur dioxide from thiosulfate in acid: general chemistry, from memory.
test.each(['sodium metabisulfite', 'sodium thiosulfate'])(
  '%s with acid gasses: below pH 4 it is blocked',
  (agent) => {
    const solution = solutionOf({
      ...hardWater,
      alkalinityMgPerLCaCO3: 0,
      add: [
        { agent, grams: 5 },
        { agent: 'citric acid, anhydrous', grams: 10 },
      ],
    });
    if (!solution.ok) throw new Error(solution.problem.code);
    const bath = bathPh(solution.value);
    if (!bath.ok) throw new Error(bath.problem.code);
    expect(gasWarnings(bath.value, solution.value.acidsMolPerL)).toMatchObject([
      { gas: 'sulfur dioxide', level: 'blocked' },
    ]);
  },
);
