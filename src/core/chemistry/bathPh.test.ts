import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { acidFamilies } from './acidTable.ts';
import { bathPh } from './bathPh.ts';
import { type BathRecipe, solutionOf } from './bathRecipe.ts';
import type { Solution } from './chargeBalance.ts';

const phOf = (recipe: Partial<BathRecipe> & Pick<BathRecipe, 'add'>): number => {
  const made = solutionOf({
    litres: 1,
    temperatureC: 25,
    alkalinityMgPerLCaCO3: 0,
    activity: 'ideal',
    openToAir: false,
    ...recipe,
  });
  if (!made.ok) return Number.NaN;
  const found = bathPh(made.value);
  return found.ok ? found.value.pH : Number.NaN;
};
const grams = (agent: string, mass: number) => ({ agent, grams: mass });

agreesWith(
  {
    source: 'crc-handbook',
    where: 'section 5, dissociation constants, solved by hand at unit activity',
    readFrom: 'a separate calculation from the same constants',
    within: 0.005,
    because: 'constants are given to a hundredth',
    rows: [
      { add: [grams('acetic acid', 6.0052)], expected: 2.881 },
      { add: [grams('citric acid, anhydrous', 5)], expected: 2.392 },
      { add: [grams('sodium carbonate', 1)], expected: 11.12 },
      { add: [grams('sodium bicarbonate', 8.4007)], expected: 8.34 },
      { add: [grams('citric acid, anhydrous', 9.6062), grams('sodium hydroxide', 3.9997)], expected: 5.582 },
      {
        add: [
          grams('potassium dihydrogen phosphate', 3.40215),
          grams('disodium hydrogen phosphate', 3.54895),
        ],
        expected: 7.198,
      },
    ],
  },
  ({ add }) => phOf({ add }),
);

agreesWith(
  {
    source: 'iupac-ph-2002',
    where: 'table of primary and secondary standards at 25 °C',
    readFrom: 'memory of the source',
    within: 0.05,
    because: 'the Davies equation knows no single ions',
    rows: [
      { add: [grams('potassium hydrogen phthalate', 10.211)], expected: 4.005 },
      {
        add: [grams('potassium dihydrogen phosphate', 3.4022), grams('disodium hydrogen phosphate', 3.549)],
        expected: 6.865,
      },
      { add: [grams('borax, decahydrate', 3.8137)], expected: 9.18 },
      { add: [grams('sodium bicarbonate', 2.1002), grams('sodium carbonate', 2.6497)], expected: 10.012 },
    ],
  },
  ({ add }) => phOf({ add, activity: 'davies' }),
);

agreesWith(
  {
    source: 'iupac-ph-2002',
    where: 'table of primary standards at 10 and 40 °C; tetraoxalate and dihydrogen citrate at 25 °C',
    readFrom: 'memory of the source',
    within: 0.05,
    because: 'the Davies equation knows no single ions',
    rows: [
      { temperatureC: 10, add: [grams('potassium hydrogen phthalate', 10.211)], expected: 3.997 },
      { temperatureC: 40, add: [grams('potassium hydrogen phthalate', 10.211)], expected: 4.027 },
      {
        temperatureC: 10,
        add: [grams('potassium dihydrogen phosphate', 3.4022), grams('disodium hydrogen phosphate', 3.549)],
        expected: 6.923,
      },
      {
        temperatureC: 40,
        add: [grams('potassium dihydrogen phosphate', 3.4022), grams('disodium hydrogen phosphate', 3.549)],
        expected: 6.838,
      },
      { temperatureC: 10, add: [grams('borax, decahydrate', 3.8137)], expected: 9.332 },
      { temperatureC: 40, add: [grams('borax, decahydrate', 3.8137)], expected: 9.068 },
      {
        temperatureC: 10,
        add: [grams('sodium bicarbonate', 2.1002), grams('sodium carbonate', 2.6497)],
        expected: 10.179,
      },
      {
        temperatureC: 40,
        add: [grams('sodium bicarbonate', 2.1002), grams('sodium carbonate', 2.6497)],
        expected: 9.889,
      },
      { temperatureC: 25, add: [grams('potassium dihydrogen citrate', 11.51)], expected: 3.776 },
      { temperatureC: 25, add: [grams('potassium tetraoxalate, dihydrate', 12.71)], expected: 1.679 },
    ],
  },
  ({ add, temperatureC }) => phOf({ add, temperatureC, activity: 'davies' }),
);

const amount = fc.double({ min: 0, max: 0.08, noNaN: true });
const solution: fc.Arbitrary<Solution> = fc
  .record({
    acidsMolPerL: fc.record(Object.fromEntries(acidFamilies.map(({ acid }) => [acid, amount]))),
    strongChargeMolPerL: fc.double({ min: -0.05, max: 0.08, noNaN: true }),
    temperatureC: fc.double({ min: 0, max: 60, noNaN: true }),
    activity: fc.constantFrom('ideal', 'davies'),
    openToAir: fc.boolean(),
  })
  // Spectator ions of one sign carry at least half their net charge as ionic strength.
  .map((one) => ({ ...one, spectatorStrengthMolPerL: Math.abs(one.strongChargeMolPerL) / 2 }));

describe('laws', () => {
  test('the charges balance to 1e-12 of all ions and no figure is ever missing', () => {
    fc.assert(
      fc.property(solution, (one) => {
        const found = bathPh(one);
        if (!found.ok) return;
        // Twice the ionic strength is never less than the charge of either sign.
        const { residualMolPerL, ionicStrengthMolPerL } = found.value;
        expect(Math.abs(residualMolPerL) / (2 * ionicStrengthMolPerL)).toBeLessThan(1e-12);
        expect(Number.isFinite(found.value.pH)).toBe(true);
        for (const shares of Object.values(found.value.shares)) {
          expect(shares.reduce((a, b) => a + b, 0)).toBeCloseTo(1, 10);
        }
      }),
    );
  });
  test('more acid never raises the pH', () => {
    const litreOf = (acid: number) =>
      phOf({ add: [grams('sodium carbonate', 2), grams('citric acid, anhydrous', acid)] });
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        (a, b) => {
          expect(litreOf(Math.max(a, b))).toBeLessThanOrEqual(litreOf(Math.min(a, b)) + 1e-9);
        },
      ),
    );
  });
  test('pure water is neutral, and rain in contact with air is near pH 5.6', () => {
    expect(phOf({ add: [] })).toBeCloseTo(7, 2);
    // Stumm and Morgan, Aquatic Chemistry (1996): water at rest with air, about 5.6; from memory.
    expect(phOf({ add: [], openToAir: true })).toBeCloseTo(5.6, 1);
  });
  test('salt made in the bath counts as salt that was put in', () => {
    // One mole of lye and one of hydrochloric acid are one mole of common salt: by definition.
    const acetate = [grams('acetic acid', 0.6), grams('sodium acetate', 0.82)];
    const made = [...acetate, grams('sodium hydroxide', 3.9997), grams('hydrochloric acid', 3.6461)];
    const given = [...acetate, grams('sodium chloride', 5.8443)];
    const [byHand, bySalt] = [
      phOf({ add: made, activity: 'davies' }),
      phOf({ add: given, activity: 'davies' }),
    ];
    expect(byHand).toBeCloseTo(bySalt, 3);
    expect(bySalt).toBeLessThan(phOf({ add: acetate, activity: 'davies' }) - 0.03);
  });
  test('a strong brine is refused rather than guessed', () => {
    const made = solutionOf({
      litres: 1,
      temperatureC: 25,
      alkalinityMgPerLCaCO3: 0,
      activity: 'davies',
      openToAir: false,
      add: [grams('sodium chloride', 60)],
    });
    if (!made.ok) throw new Error(made.problem.code);
    const found = bathPh(made.value);
    expect(found.ok ? null : found.problem.code).toBe('ionic-strength-too-high');
  });
});
