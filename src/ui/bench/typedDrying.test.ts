import { expect, test } from 'vitest';
import { dryScenarioOf, missingOf, untouchedDrying } from './typedDrying.ts';

const typed = {
  ...untouchedDrying,
  ...{ areaM2: 6, massKg: 20, volumeM3: 100, airC: 30, rhPercent: 40, outsideC: 12, outsideRhPercent: 60 },
};

test('an untouched form gives no scenario and says what is missing', () => {
  expect(dryScenarioOf(untouchedDrying)).toBeNull();
  expect(missingOf(untouchedDrying)).toContain('massKg');
  expect(missingOf(untouchedDrying)).not.toContain('litresPerDay');
});

test('without machines no rating is asked for; with one it is', () => {
  expect(dryScenarioOf(typed)?.dehumidifiers).toEqual([]);
  expect(missingOf({ ...typed, machines: 1 })).toEqual(['litresPerDay']);
  expect(dryScenarioOf({ ...typed, machines: 1, litresPerDay: 60 }, 1)?.dehumidifiers).toHaveLength(2);
});

test('the mass as weighed in a room holds some water that is taken off', () => {
  const [rug] = dryScenarioOf(typed)?.rugs ?? [];
  expect(rug?.dryMassKg).toBeLessThan(18.2);
  expect(rug?.dryMassKg).toBeGreaterThan(17);
  expect(rug?.fibres).toEqual({ wool: 0.75, cotton: 0.25 });
});

test('per cent become fractions, and as many rugs hang as were typed', () => {
  const scenario = dryScenarioOf({ ...typed, together: 3 });
  expect(scenario?.room.startRh).toBe(0.4);
  expect(scenario?.outside.rh).toBe(0.6);
  expect(scenario?.rugs).toHaveLength(3);
});
