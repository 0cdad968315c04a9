import fc from 'fast-check';
import { expect, test } from 'vitest';
import { agreesWith } from '../../../test/support/agreesWith.ts';
import { criticalHumidityPercent, mouldIndexHukka1999 } from './mouldIndexHukka1999.ts';

const steady = (temperatureC: number, rh: number, days: number, perHour = 1) =>
  Array.from({ length: days * 24 * perHour + 1 }, (_, i) => ({ hour: i / perHour, temperatureC, rh }));

/** Day at which a steady surface first reaches an index. */
const dayOf = (temperatureC: number, rh: number, wanted: number): number => {
  const course = mouldIndexHukka1999(steady(temperatureC, rh, 90, 10));
  const at = course.findIndex((index) => index >= wanted);
  const [before = 0, after = 0] = [course[at - 1], course[at]];
  return (at - 1 + (wanted - before) / (after - before)) / 240;
};

agreesWith(
  {
    source: 'hukka-viitanen-1999',
    where: 'equations 1 to 6 integrated by hand for the most sensitive class',
    readFrom: 'memory of the source',
    within: (expected) => expected * 0.01,
    because: 'days given to a tenth',
    rows: [
      { celsius: 20, rh: 0.9, index: 1, expected: 29.5 },
      { celsius: 20, rh: 0.9, index: 3, expected: 59.5 },
      { celsius: 20, rh: 0.97, index: 1, expected: 10.4 },
      { celsius: 20, rh: 0.97, index: 3, expected: 20.8 },
      { celsius: 25, rh: 1, index: 1, expected: 5.9 },
      { celsius: 25, rh: 1, index: 3, expected: 11.7 },
    ],
  },
  ({ celsius, rh, index }) => dayOf(celsius, rh, index),
);

agreesWith(
  {
    source: 'hukka-viitanen-1999',
    where: 'equation 1: critical humidity at 5 °C, and the flat part',
    readFrom: 'memory of the source',
    within: 0.1,
    because: 'rounded to a tenth of a per cent',
    rows: [
      { celsius: 5, expected: 100 - 3.13 * 5 + 0.16 * 25 - 0.00267 * 125 },
      { celsius: 25, expected: 80 },
    ],
  },
  ({ celsius }) => criticalHumidityPercent(celsius, 'very sensitive'),
);

test('nothing grows at the freezing point, nor a breath above it', () => {
  for (const celsius of [-5, 0, 1e-30]) expect(mouldIndexHukka1999(steady(celsius, 1, 10)).at(-1)).toBe(0);
});

test('a surface below the critical humidity grows nothing, and what grew falls back slowly', () => {
  expect(Math.max(...mouldIndexHukka1999(steady(20, 0.7, 30)))).toBe(0);
  const wetThenDry = [
    ...steady(25, 1, 8),
    ...steady(25, 0.4, 4).map((one) => ({ ...one, hour: one.hour + 193 })),
  ];
  const course = mouldIndexHukka1999(wetThenDry);
  const [wet = 0, sixHours = 0, aDay = 0, end = 0] = [193, 199, 217, course.length - 1].map(
    (at) => course[at] ?? 0,
  );
  expect(sixHours).toBeLessThan(wet);
  expect(wet - sixHours).toBeLessThan(0.01);
  expect(aDay).toBeCloseTo(sixHours, 3);
  expect(end).toBeLessThan(aDay);
});

test('damper never grows less, and the less sensitive class never more', () => {
  const rh = fc.double({ min: 0.5, max: 1, noNaN: true });
  fc.assert(
    fc.property(rh, rh, fc.double({ min: 1, max: 45, noNaN: true }), (a, b, celsius) => {
      const end = (humidity: number, of: 'very sensitive' | 'sensitive') =>
        mouldIndexHukka1999(steady(celsius, humidity, 10), of).at(-1) ?? Number.NaN;
      expect(end(Math.max(a, b), 'very sensitive')).toBeGreaterThanOrEqual(
        end(Math.min(a, b), 'very sensitive'),
      );
      expect(end(a, 'sensitive')).toBeLessThanOrEqual(end(a, 'very sensitive'));
    }),
    { numRuns: 40 },
  );
});
