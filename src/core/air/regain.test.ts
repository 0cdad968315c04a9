import fc from 'fast-check';
import { expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { equilibriumRegain, ovenDryMass } from './regain.ts';

agreesWith(
  {
    source: 'ashrae-hvac-regain',
    where: 'table: Regain of Hygroscopic Materials',
    readFrom: 'memory of the source',
    within: 1e-9,
    because: 'the curve passes through the table',
    rows: [
      { fibre: 'wool', rh: 0.5, expected: 0.128 },
      { fibre: 'wool', rh: 0.7, expected: 0.172 },
      { fibre: 'silk', rh: 0.6, expected: 0.102 },
      { fibre: 'cotton', rh: 0.8, expected: 0.1 },
      { fibre: 'jute', rh: 0.4, expected: 0.085 },
      { fibre: 'viscose', rh: 0.9, expected: 0.16 },
    ] as const,
  },
  ({ fibre, rh }) => equilibriumRegain({ [fibre]: 1 }, rh, 'from the dry side').likely,
);

agreesWith(
  {
    source: 'ashrae-hvac-regain',
    where: 'table: Regain of Hygroscopic Materials, wool 12.8 % and cotton 5.9 % at 50 %',
    readFrom: 'memory of the source',
    within: 0.12,
    because: 'the likely mass lies between the two branches, half a point of regain apart',
    rows: [{ massKg: 12, expected: 12 / (1 + 0.75 * 0.128 + 0.25 * 0.059) }],
  },
  ({ massKg }) => ovenDryMass(massKg, { wool: 0.75, cotton: 0.25 }, 0.5, true).likely,
);

test('a wool rug weighed at 40 and again at 70 % gains about 6 % with nothing washed', () => {
  const at = (rh: number) => 1 + equilibriumRegain({ wool: 1 }, rh, 'from the dry side').likely;
  expect(at(0.7) / at(0.4) - 1).toBeGreaterThan(0.055);
  expect(at(0.7) / at(0.4) - 1).toBeLessThan(0.06);
});

test('damper air never means less water, and the wet side never holds less than the dry side', () => {
  const fibre = fc.constantFrom('wool', 'silk', 'cotton', 'linen', 'jute', 'viscose', 'nylon' as const);
  const rh = fc.double({ min: 0, max: 1, noNaN: true });
  fc.assert(
    fc.property(fibre, rh, rh, (of, a, b) => {
      const regain = (humidity: number, branch: 'from the dry side' | 'from the wet side') =>
        equilibriumRegain({ [of]: 1 }, humidity, branch).likely;
      expect(regain(Math.max(a, b), 'from the dry side')).toBeGreaterThanOrEqual(
        regain(Math.min(a, b), 'from the dry side') - 1e-12,
      );
      expect(regain(a, 'from the wet side')).toBeGreaterThanOrEqual(regain(a, 'from the dry side'));
    }),
  );
});

test('the less is known of fibre, air and rest, the wider the oven-dry mass', () => {
  const width = (estimate: { least: number; most: number }) => estimate.most - estimate.least;
  const known = ovenDryMass(10, { wool: 1 }, 0.5, true);
  expect(width(ovenDryMass(10, { wool: 1 }, 0.5, false))).toBeGreaterThan(width(known));
  expect(width(ovenDryMass(10, { wool: 1 }, null, true))).toBeGreaterThan(width(known));
  expect(width(ovenDryMass(10, {}, 0.5, true))).toBeGreaterThan(width(known));
  expect(known.least).toBeLessThanOrEqual(known.likely);
  expect(known.likely).toBeLessThanOrEqual(known.most);
});
