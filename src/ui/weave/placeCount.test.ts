import { describe, expect, test } from 'vitest';
import type { WeaveScale } from '../../core/weave/index.ts';
import { seenByCounter } from '../../dossier/index.ts';
import { axisOfTaps, notYet, placeScale, seenByHand } from './placeCount.ts';
import { countOf, nodesOf } from './rugCount.ts';
import { noScale } from './weaveScale.ts';

const scale = (change: Partial<WeaveScale> = {}): WeaveScale => ({
  mmPerPx: 0.1,
  weftwiseMmPerPx: 0.1,
  warpwiseMmPerPx: 0.1,
  from: 'given',
  interval95: [0.1, 0.1],
  measured: true,
  ...change,
});
const counted = {
  pitchPx: 20,
  pitchInterval95: [19.9, 20.1],
  confidence: 0.9,
  basis: 'automatic',
  strips: [],
} as const;
const tap = (x: number, y: number, unit = 1) => ({ x, y, unit });

// Arithmetic of the definitions; 70 mm over 0.1 mm to a pixel are 700 px.
describe('what is seen along an axis', () => {
  test('a repeat every 20 px of a tenth of a millimetre is 35 in 7 cm', () => {
    expect(seenByCounter('weftwise', counted, scale(), 'automatic')).toMatchObject({
      count: 35,
      overMm: 70,
      confidence: 0.9,
    });
  });

  test('each axis has its own millimetres to a pixel', () => {
    const tilted = scale({ warpwiseMmPerPx: 0.125 });
    expect(seenByCounter('weftwise', counted, tilted, 'confirmed').count).toBeCloseTo(35, 9);
    expect(seenByCounter('warpwise', counted, tilted, 'confirmed').count).toBeCloseTo(28, 9);
  });

  test('no count is surer than one per cent without a measured card', () => {
    const half = (one: WeaveScale) => {
      const { count, interval95 } = seenByCounter('weftwise', counted, one, 'confirmed');
      return interval95.most / count - 1;
    };
    expect(half(scale())).toBeCloseTo(0.01, 6);
    expect(half(scale({ from: 'card' }))).toBeCloseTo(0.005, 6);
    expect(half(scale({ from: 'card', measured: false, interval95: [0.097, 0.103] }))).toBeGreaterThan(0.03);
  });

  test('nine repeats between two taps 180 px apart are 35 in 7 cm, and closer taps are less sure', () => {
    const hand = { from: tap(10, 10), to: tap(190, 10), repeats: 9 };
    const seen = seenByHand(hand, scale(), null);
    expect(seen.count).toBeCloseTo(35, 9);
    expect(seen.basis).toBe('by hand');
    const near = seenByHand({ ...hand, from: tap(10, 10, 3), to: tap(190, 10, 3) }, scale(), null);
    expect(near.interval95.most).toBeGreaterThan(seen.interval95.most);
  });

  test('taps level in the picture run across the rug, upright ones along it', () => {
    expect(axisOfTaps(tap(0, 0), tap(50, 9), null)).toBe('weftwise');
    expect(axisOfTaps(tap(0, 0), tap(9, 50), null)).toBe('warpwise');
  });
});

describe('keeping a place', () => {
  const seen = seenByCounter('weftwise', counted, scale(), 'confirmed');

  test('asks first for a scale, then for what is not counted, then for a person’s eye', () => {
    expect(notYet(null, { weftwise: seen, warpwise: seen }, 0.8)).toMatch(/how large/);
    expect(notYet(scale(), { weftwise: seen, warpwise: null }, 0.8)).toMatch(/along the rug/);
    const unsure = { ...seen, basis: 'automatic' as const, confidence: 0.7 };
    expect(notYet(scale(), { weftwise: unsure, warpwise: seen }, 0.8)).toMatch(/not sure enough/);
    expect(notYet(scale(), { weftwise: seen, warpwise: seen }, 0.8)).toBeNull();
  });

  test('a scale is recorded for the photograph as kept, not as reduced', () => {
    const recorded = placeScale(scale(), 2, null, undefined, { ...noScale, way: 'typed', mmPerPx: 0.05 });
    expect(recorded).toMatchObject({ from: 'given', mmPerPx: 0.05 });
  });

  test('nodes are a person’s word, else what all colour changes agree on, else unknown', () => {
    const at = (nodesSeen: 1 | 2 | null) => ({ nodesSeen });
    expect(nodesOf('2', [at(1)])).toEqual({ value: 2, why: 'seen on the back' });
    expect(nodesOf('unknown', [at(null), at(1)])).toEqual({ value: 1, why: 'colour changes' });
    expect(nodesOf('unknown', [at(2), at(1)])).toBeNull();
    expect(countOf([], '1')).toBeNull();
  });
});
