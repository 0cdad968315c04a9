import { describe, expect, test } from 'vitest';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import { nextReadingWords } from '../../text/nextReadingWords.ts';
import { dryForecast } from './dryForecast.ts';
import type { DryReading } from './scenario.ts';

describe('what to read next', () => {
  const nextOf = (readings: readonly DryReading[]) => {
    const scenario = dryingScenario({ uncertainty: true, draws: 400, rugs: [dryingRug({ readings })] });
    const answer = dryForecast(scenario);
    return answer.ok ? answer.value.rugs[0]?.spread : undefined;
  };
  test('is the scale first, after the last reading, with what it is expected to bring', () => {
    const [first] = nextOf([])?.next ?? [];
    expect(first?.kind).toBe('massKg');
    expect(first?.widthAfter).toBeLessThan((first?.widthNow ?? 0) * 0.6);
    const later = nextOf([{ hour: 3, massKg: 29.6 }])?.next ?? [];
    for (const { hour, widthAfter, widthNow } of later) {
      expect(hour).toBeGreaterThan(3);
      expect(widthAfter).toBeLessThan(widthNow);
    }
  });
  test('and, once taken as foretold, leaves an interval near the expected one', () => {
    const before = nextOf([]);
    const next = before?.next.find(({ kind }) => kind === 'massKg');
    const band = before?.bands.find(({ hour }) => hour === next?.hour);
    if (next === undefined || band === undefined) throw new Error('nothing to read');
    const after = nextOf([{ hour: next.hour, massKg: 18 * (1 + band.median) }]);
    const [from, to] = after?.interval80 ?? [null, null];
    const width = (to ?? 72) - (from ?? 0);
    expect(width).toBeGreaterThan(next.widthAfter * 0.6);
    expect(width).toBeLessThan(next.widthAfter * 1.6);
  });
  test('nothing, once nothing is left to be told', () => {
    expect(nextOf([{ hour: 20, touch: 'dry' }])?.next).toEqual([]);
  });
  test('is said in words', () => {
    const [first] = nextOf([])?.next ?? [];
    expect(first === undefined ? '' : nextReadingWords(first)).toMatch(/^Weigh it at hour \d+: it tells/);
  });
});
