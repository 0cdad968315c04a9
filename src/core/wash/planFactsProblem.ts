import type { PlanFacts } from './planFacts.ts';
import type { PlanFactsInvalid } from './planProblem.ts';

type Fault = PlanFactsInvalid['facts']['faults'][number];

const between = (field: string, value: number | undefined, least: number, most: number): readonly Fault[] =>
  value === undefined || (Number.isFinite(value) && value >= least && value <= most)
    ? []
    : [{ field, value: String(value), allowed: `${least} to ${most}` }];

function blendFaults(pile: PlanFacts['pile']): readonly Fault[] {
  if (pile === undefined) return [];
  const shares = Object.values(pile);
  const sum = shares.reduce((a, b) => a + (b ?? 0), 0);
  const negative = shares.some((share) => !((share ?? 0) >= 0));
  if (shares.length === 0 || (!negative && Math.abs(sum - 1) <= 0.005)) return [];
  return [{ field: 'pile', value: String(sum), allowed: 'shares of 0 to 1 that add up to 1' }];
}

function colourFaults({ colours = [], dyeTests = [], stains = [] }: PlanFacts): readonly Fault[] {
  const ids = colours.map(({ id }) => id);
  const twice = ids.filter((id, index) => ids.indexOf(id) !== index);
  const strange = dyeTests.filter(({ colour }) => !ids.includes(colour));
  return [
    ...twice.map((id) => ({ field: 'colours', value: id, allowed: 'each id once' })),
    ...strange.map(({ colour }) => ({
      field: 'dyeTests.colour',
      value: colour,
      allowed: `one of: ${ids.join(', ')}`,
    })),
    ...dyeTests.flatMap(({ pH, temperatureC, minutes, strengthGPerL }, i) => [
      ...between(`dyeTests[${i}].pH`, pH, 0, 14),
      ...between(`dyeTests[${i}].temperatureC`, temperatureC, 0, 100),
      ...between(`dyeTests[${i}].minutes`, minutes, 0, 20_000),
      ...between(`dyeTests[${i}].strengthGPerL`, strengthGPerL, 0, 500),
    ]),
    ...stains.flatMap(({ areaCm2 }, i) => between(`stains[${i}].areaCm2`, areaCm2, 0, 1e6)),
  ];
}

/**
 * What in the facts cannot be: every fault with its field, value and what is allowed.
 *
 * @source none: rule of this project
 */
export function factsProblem(facts: PlanFacts): PlanFactsInvalid | null {
  const faults = [
    ...between('areaM2', facts.areaM2, 0.01, 500),
    ...between('dryMassKg', facts.dryMassKg, 0.01, 1000),
    ...between('lengthM', facts.lengthM, 0.05, 50),
    ...between('pileHeightMm', facts.pileHeightMm, 0, 300),
    ...between('expectedDryingHours', facts.expectedDryingHours, 0, 10_000),
    ...between('monthsSinceWash', facts.monthsSinceWash, 0, 5000),
    ...between('promiseHours', facts.promiseHours, 0, 100_000),
    ...blendFaults(facts.pile),
    ...colourFaults(facts),
  ];
  return faults.length === 0 ? null : { code: 'wash-facts-invalid', facts: { faults } };
}
