import { expect, test } from 'vitest';
import { dryScenarioShape } from './dryScenarioShape.ts';
import { readShape } from './readShape.ts';

const rug = { id: 'a', areaM2: 6, dryMassKg: 18, fibres: { wool: 1 } };
const wrongOf = (changed: object) => {
  const read = readShape(dryScenarioShape, {
    hours: 72,
    room: { volumeM3: 100, airC: 30, startRh: 0.4, airSpeed: 1, airChangesPerHour: 1 },
    outside: { airC: 10, rh: 0.6 },
    rugs: [{ ...rug, ...changed }],
  });
  return read.ok ? null : read.problem.facts;
};

test('a misspelt field is named with its value and with the names there are', () => {
  expect(wrongOf({ starRegain: 0.5 })).toMatchObject({
    field: 'rugs[0].starRegain',
    value: '0.5',
    allowed: expect.stringMatching(/areaM2, dryMassKg, fibres.*startRegain/),
  });
});

test('a fibre nobody knows is answered with those there are', () => {
  expect(wrongOf({ fibres: { wool: 0.5, lama: 0.5 } })).toMatchObject({
    field: 'rugs[0].fibres.lama',
    value: '0.5',
    allowed: expect.stringMatching(/wool, camel.*unknown/),
  });
});

test('of several forms the one that is plainly meant is told, else all of them', () => {
  expect(wrongOf({ readings: [{ hour: 1, touch: 'moist' }] })).toEqual({
    field: 'rugs[0].readings[0].touch',
    value: '"moist"',
    allowed: 'one of: wet, damp, cool, dry',
  });
  expect(wrongOf({ readings: [{ hour: 1, mass: 30 }] })).toMatchObject({
    field: 'rugs[0].readings[0]',
    allowed: expect.stringMatching(/\{hour, massKg\} \{hour, pocketRh\}.*\{hour, touch\}/),
  });
});

test('a number beyond every number is shown as what it is', () => {
  expect(wrongOf({ areaM2: Number.POSITIVE_INFINITY })).toMatchObject({ value: 'Infinity' });
});
