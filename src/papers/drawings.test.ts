import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { agreesWith } from '../../test/support/agreesWith.ts';
import type { Noted } from '../dossier/index.ts';
import { conditionMap } from './conditionMap.ts';
import { escaped } from './drawing.ts';
import { dryingPlot } from './dryingPlot.ts';
import { areaWords, dayWords, lengthWords, massWords, momentWords, moneyWords } from './measureWords.ts';
import type { PaperMark } from './paper.ts';
import { placeLabels } from './placeLabels.ts';
import { sourceWords } from './sourceWords.ts';
import { wovenBand } from './wovenBand.ts';

const markAt = (xMm: number, yMm: number, side: 'face' | 'back' | 'both'): Noted<'MarkRecorded'> => ({
  type: 'MarkRecorded',
  mark: 'm',
  word: 'hole',
  side,
  shape: 'point',
  pointsMm: [{ xMm, yMm }],
  grade: 4,
  activity: 'stable',
  photos: [],
  entry: 'e',
  when: '2026-11-23T08:00:00.000Z',
  by: 'p',
});
const size = { widthMm: 1000, lengthMm: 2000, round: false };
/** Centres of the dashed circles of point marks, by side. */
const centres = (svg: string) =>
  Array.from(svg.matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)" r="1.9"[^>]*dasharray/g), ([, x, y]) => [
    Number(x),
    Number(y),
  ]);

describe('the condition map', () => {
  test('sees the back turned over along its length: left becomes right, the start stays at the foot', () => {
    const map = conditionMap([{ number: '1', mark: markAt(100, 200, 'both') }], size);
    const [face, back] = centres(map?.svg ?? '');
    const [margin, width, length] = [9, 59, 118];
    expect(face?.[0]).toBeCloseTo(margin + width * 0.1, 2);
    expect(back?.[0]).toBeCloseTo(margin + width * 0.9, 2);
    expect(face?.[1]).toBeCloseTo(margin + length * 0.9, 2);
    expect(back?.[1]).toBeCloseTo(face?.[1] ?? 0, 2);
  });

  test('draws only the sides that carry marks, and nothing when no mark has a place', () => {
    expect(
      centres(conditionMap([{ number: '1', mark: markAt(1, 1, 'back') }], size)?.svg ?? ''),
    ).toHaveLength(1);
    expect(conditionMap([{ number: '1', mark: { ...markAt(1, 1, 'face'), pointsMm: [] } }], size)).toBeNull();
  });
});

describe('numbers beside marks', () => {
  const scattered = fc.array(
    fc.tuple(
      fc.double({ min: 0.02, max: 0.98, noNaN: true }),
      fc.double({ min: 0.02, max: 0.98, noNaN: true }),
    ),
    { minLength: 1, maxLength: 60 },
  );

  test('stay on the picture and, sixty of them, hide hardly one another', () => {
    fc.assert(
      fc.property(scattered, (points) => {
        const marks: readonly PaperMark[] = points.map((point, at) => ({
          label: String(at),
          shape: 'line',
          points: [point],
        }));
        const placed = placeLabels(marks, 168, 150);
        const hidden = placed.filter(({ labelMm: [x, y] }, at) =>
          placed.slice(0, at).some(({ labelMm: [ox, oy] }) => Math.hypot(x - ox, y - oy) < 4.2),
        );
        expect(hidden.length).toBeLessThanOrEqual(1);
        for (const {
          labelMm: [x, y],
        } of placed) {
          expect(x).toBeGreaterThanOrEqual(0);
          expect(x).toBeLessThanOrEqual(168);
          expect(y).toBeGreaterThanOrEqual(0);
          expect(y).toBeLessThanOrEqual(150);
        }
      }),
      { numRuns: 60 },
    );
  });
});

describe('the drying plot', () => {
  const plotted = (values: readonly number[]) =>
    dryingPlot({ name: 'mass, kg', points: values.map((value, hours) => ({ hours, value })), level: null })
      ?.svg ?? '';

  test('draws a lighter rug lower and a later reading further right', () => {
    const dots = Array.from(
      plotted([20, 15, 10]).matchAll(/<circle cx="([\d.]+)" cy="([\d.]+)"/g),
      ([, x, y]) => [Number(x), Number(y)],
    );
    expect(dots.map(([x]) => x)).toEqual([...dots.map(([x]) => x ?? 0)].sort((a, b) => a - b));
    expect(dots.map(([, y]) => y)).toEqual([...dots.map(([, y]) => y ?? 0)].sort((a, b) => a - b));
  });

  test('bears a single reading and readings that do not change', () => {
    for (const values of [[9.6], [9.6, 9.6, 9.6], [0, 0]])
      expect(plotted(values)).not.toMatch(/NaN|Infinity/);
    expect(plotted([])).toBe('');
  });
});

test('what a person typed stays text inside a drawing', () => {
  expect(escaped('<script>"&\u0001')).toBe('&lt;script&gt;&quot;&amp; ');
  const { svg } = wovenBand([{ name: '</text><image href="x"/>', state: 'now' }]);
  expect(svg).not.toContain('<image');
});

describe('figures', () => {
  agreesWith(
    {
      source: 'si-brochure',
      where: 'avoirdupois pound and international foot by their definitions, 0.453 592 37 kg and 0.3048 m',
      readFrom: 'memory of the source',
      within: 0.05,
      because: 'papers print a tenth',
      rows: [
        { words: massWords(0.45359237 * 20, 'customary'), unit: 'lb', expected: 20 },
        { words: areaWords(0.3048 ** 2 * 30, 'customary'), unit: 'ft²', expected: 30 },
      ],
    },
    ({ words, unit }) => Number(words.match(new RegExp(`\\(([\\d.]+) ${unit}`))?.[1]),
  );

  test('feet and inches never read twelve inches', () => {
    expect(lengthWords(304.8 * 10 - 1, 'customary')).toBe('304.7 cm (10 ft 0 in)');
    expect(lengthWords(2440, 'customary')).toContain('8 ft 0 in');
  });

  test('money has the decimals of its currency (ISO 4217: none for yen, three for dinar)', () => {
    expect(moneyWords({ amountMinor: 12_050, currency: 'EUR' })).toBe('€120.50');
    expect(moneyWords({ amountMinor: 12_050, currency: 'JPY' })).toMatch(/12,050$/);
    expect(moneyWords({ amountMinor: 12_050, currency: 'KWD' })).toMatch(/12\.050$/);
  });

  test('an instant is told by the workshop’s own clock, summer time and all', () => {
    expect(momentWords('2026-07-01T22:30:00.000Z', 'Europe/Vienna')).toBe('2 July 2026, 00:30');
    expect(momentWords('2026-12-01T22:30:00.000Z', 'Europe/Vienna')).toBe('1 December 2026, 23:30');
    expect(dayWords('2026-12-04')).toBe('4 December 2026');
  });
});

test('only a published work is named as an authority', () => {
  expect(sourceWords('cci-13-14')).toContain('CCI Notes 13/14');
  expect(sourceWords('workshop-setting')).toBe('workshop setting');
  expect(sourceWords('common-practice')).toBe('common practice, no published source');
  expect(sourceWords('memory')).toBe('recalled from the literature, not confirmed');
  expect(sourceWords('no such key')).toBe('no source on record');
});
