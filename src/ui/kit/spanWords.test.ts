import { expect, test } from 'vitest';
import { roughly, spanWords } from './spanWords.ts';

test('a dwell of under an hour shows minutes and seconds', () => {
  expect(spanWords(8 * 60 + 42)).toBe('08:42');
});

test('a longer one shows hours as well', () => {
  expect(spanWords(3600 + 8 * 60 + 42)).toBe('1:08:42');
});

test('time over is counted with a minus sign', () => {
  expect(spanWords(-130)).toBe('−02:10');
});

test('nothing left has no sign', () => {
  expect(spanWords(-0)).toBe('00:00');
});

test('long waits are told roughly, and hours are not rounded up', () => {
  expect([20, 300, 26.9 * 3600, 72 * 3600].map(roughly)).toEqual(['1 min', '5 min', '26 h', '3 days']);
});
