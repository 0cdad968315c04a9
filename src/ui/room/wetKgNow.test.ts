import { expect, test } from 'vitest';
import { hungRug } from '../../../test/support/hungRug.ts';
import type { DryAnswer } from '../../core/drying/index.ts';
import { wetKgNow } from './wetKgNow.ts';

// That unknown counts as the worst case in lifting is a rule of this project; 2.4 kg of water per kg: common practice.

const zero = '2026-03-02T08:00:00.000Z';
const noon = '2026-03-02T12:00:00.000Z';
const half = { rugs: [{ id: 'r1', course: [{ hour: 0, regain: 0.5 }] }] } as unknown as DryAnswer;
const ovenDry = { likely: 10, least: 7, most: 14 };
const weighed = (massKg: number) => ({ looks: [{ when: noon, massKg }] });

test('a rug weighed dry is its dry mass and its water', () => {
  expect(wetKgNow(hungRug(), half, zero, noon)).toBeCloseTo(15, 9);
  expect(wetKgNow(hungRug(), null, zero, noon)).toBeCloseTo(34, 9);
});

test('one nobody weighed dry is as heavy as its kind may be', () => {
  const guessed = hungRug({ ovenDry, ovenDryFrom: 'mass band' });
  expect(wetKgNow(guessed, half, zero, noon)).toBeCloseTo(21, 9);
  expect(wetKgNow(guessed, null, zero, noon)).toBeCloseTo(47.6, 9);
});

test('and once it was weighed wet, what that showed: it has only grown lighter', () => {
  const guessed = { ovenDry, ovenDryFrom: 'mass band' } as const;
  expect(wetKgNow(hungRug({ ...guessed, ...weighed(17) }), half, zero, noon)).toBe(17);
  expect(wetKgNow(hungRug({ ...guessed, ...weighed(30) }), half, zero, noon)).toBe(30);
  expect(wetKgNow(hungRug({ ...guessed, ...weighed(30) }), null, zero, noon)).toBe(30);
});
