import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { chemicalAgents } from './acidTable.ts';
import { bathPh } from './bathPh.ts';
import { type BathRecipe, solutionOf } from './bathRecipe.ts';
import { dose } from './dose.ts';
import { phOfBath } from './neutralise.ts';

const agentsOf = (...kinds: readonly string[]) =>
  chemicalAgents.filter(({ kind }) => kinds.includes(kind)).map(({ agent }) => agent);

/** From a pinch in a pond to a thick paste. */
const gramsPerLitre = fc.double({ min: -6, max: 2.3, noNaN: true }).map((log) => 10 ** log);

const anyBath: fc.Arbitrary<BathRecipe> = fc
  .record({
    litres: fc.constantFrom(0.001, 1, 40, 100_000),
    temperatureC: fc.double({ min: 0, max: 60, noNaN: true }),
    alkalinityMgPerLCaCO3: fc.double({ min: 0, max: 600, noNaN: true }),
    activity: fc.constantFrom('ideal' as const, 'davies' as const),
    openToAir: fc.boolean(),
    add: fc.array(
      fc.record({
        agent: fc.constantFrom(...agentsOf('acid', 'base', 'salt', 'reducer', 'oxidiser', 'chelator')),
        grams: gramsPerLitre,
      }),
      { maxLength: 4 },
    ),
  })
  .map((bath) => ({ ...bath, add: bath.add.map((one) => ({ ...one, grams: one.grams * bath.litres })) }));

describe('any bath of any agents', () => {
  test('has a pH, or is too salty for one, and its charges close to 1e-12 of all ions', () => {
    fc.assert(
      fc.property(anyBath, (bath) => {
        const solution = solutionOf(bath);
        if (!solution.ok) throw new Error(solution.problem.code);
        const found = bathPh(solution.value);
        if (!found.ok) {
          expect([bath.activity, found.problem.code]).toEqual(['davies', 'ionic-strength-too-high']);
          return;
        }
        const { pH, residualMolPerL, ionicStrengthMolPerL, bufferCapacityMolPerLPerPh } = found.value;
        expect(pH).toBeGreaterThan(-3);
        expect(pH).toBeLessThan(17);
        expect(Math.abs(residualMolPerL) / (2 * ionicStrengthMolPerL)).toBeLessThan(1e-12);
        expect(bufferCapacityMolPerLPerPh).toBeGreaterThan(0);
      }),
      { numRuns: 300 },
    );
  });

  test('is brought to a pH by the dose told for it, whatever is dosed', () => {
    let doses = 0;
    fc.assert(
      fc.property(
        anyBath,
        fc.constantFrom(...agentsOf('acid', 'base', 'salt', 'reducer')),
        fc.double({ min: 2, max: 12, noNaN: true }),
        (bath, agent, targetPh) => {
          const found = dose(bath, agent, targetPh);
          if (!found.ok) return;
          doses += 1;
          const { grams, interval } = found.value;
          const reached = phOfBath({ ...bath, add: [...bath.add, { agent, grams }] });
          expect(reached.ok ? reached.value : reached.problem.code).toBeCloseTo(targetPh, 6);
          expect(interval[0]).toBeLessThanOrEqual(grams);
          expect(interval[1]).toBeGreaterThanOrEqual(grams);
        },
      ),
      {
        numRuns: 400,
        // A salt beside its own pH, where the strength of the ions has more than one answer.
        examples: [
          [
            {
              ...{ litres: 0.001, temperatureC: 0, alkalinityMgPerLCaCO3: 0, openToAir: false },
              ...{ activity: 'davies', add: [{ agent: 'acetic acid', grams: 0.001 }] },
            },
            'disodium hydrogen citrate',
            5.10232554883812,
          ],
        ],
      },
    );
    expect(doses).toBeGreaterThan(60);
  });

  test('grows no less acid by acid, at unit activity', () => {
    fc.assert(
      fc.property(
        anyBath,
        fc.constantFrom('hydrochloric acid', 'citric acid, anhydrous', 'acetic acid', 'sulfamic acid'),
        gramsPerLitre,
        (bath, agent, perLitre) => {
          const ideal = { ...bath, activity: 'ideal' as const };
          const [before, after] = [
            ideal,
            { ...ideal, add: [...bath.add, { agent, grams: perLitre * bath.litres }] },
          ].map(phOfBath);
          if (before?.ok !== true || after?.ok !== true) throw new Error('refused');
          expect(after.value).toBeLessThanOrEqual(before.value + 1e-9);
        },
      ),
      { numRuns: 200 },
    );
  });
});
