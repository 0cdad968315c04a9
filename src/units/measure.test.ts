import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../test/support/agreesWith.ts';
import { boundsIn, keptFrom, type Measure, measureWords, shownIn } from './measure.ts';

agreesWith<{ readonly measure: Measure; readonly typed: number }>(
  {
    source: 'nist-sp-811',
    where:
      'appendix B.8: cubic foot, foot per minute, inch, pound, square foot, pint (U.S. liquid), degree Fahrenheit',
    readFrom: 'memory of the source',
    within: (expected) => Math.abs(expected) * 5e-7,
    because: 'the table gives seven figures',
    rows: [
      { measure: 'volume', typed: 1, expected: 2.831685e-2 },
      { measure: 'airSpeed', typed: 1, expected: 5.08e-3 },
      { measure: 'gap', typed: 1, expected: 25.4 },
      { measure: 'span', typed: 1, expected: 304.8 },
      { measure: 'mass', typed: 1, expected: 4.535924e-1 },
      { measure: 'area', typed: 1, expected: 9.290304e-2 },
      { measure: 'waterPerDay', typed: 1, expected: 4.731765e-1 },
      { measure: 'waterPerHour', typed: 1, expected: 4.731765e-1 },
      { measure: 'widthLoad', typed: 1, expected: 1.488164 },
      // 5.678263 W/(m²·K) for Btu/(h·ft²·°F), over one square foot.
      { measure: 'wallLoss', typed: 1, expected: 5.678263 * 9.290304e-2 },
      { measure: 'temperature', typed: 212, expected: 100 },
      { measure: 'temperature', typed: -40, expected: -40 },
    ],
  },
  ({ measure, typed }) => keptFrom(measure, typed, 'customary'),
);

describe('a measure', () => {
  const all = [
    'temperature',
    'volume',
    'airSpeed',
    'span',
    'gap',
    'mass',
    'waterPerDay',
    'wallLoss',
  ] as const;

  test('typed in either system is shown again as it was typed', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.constantFrom('metric', 'customary'),
        fc.integer({ min: 1, max: 20_000 }),
        (measure, units, typed) => shownIn(measure, keptFrom(measure, typed, units), units) === typed,
      ),
    );
  });

  test('may be typed at both ends of its bounds, and is then within what is kept', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...all),
        fc.constantFrom('metric', 'customary'),
        fc.integer({ min: 1, max: 100 }),
        fc.integer({ min: 1, max: 900 }),
        (measure, units, least, wide) => {
          const bounds = boundsIn(measure, least, least + wide, units);
          return (
            keptFrom(measure, bounds.least, units) >= least * (1 - 1e-8) &&
            keptFrom(measure, bounds.most, units) <= (least + wide) * (1 + 1e-8)
          );
        },
      ),
    );
  });

  test('is read with its unit', () => {
    expect(measureWords('temperature', 28.6, 'metric')).toBe('28.6 °C');
    expect(measureWords('temperature', 28.6, 'customary')).toBe('83.5 °F');
    expect(measureWords('airSpeed', 1.5, 'customary')).toBe('295 ft/min');
    expect(measureWords('humidityRatio', 0.01, 'customary')).toBe('70 grains/lb');
    expect(boundsIn('temperature', 5, 45, 'customary')).toEqual({ least: 41, most: 113 });
  });
});
