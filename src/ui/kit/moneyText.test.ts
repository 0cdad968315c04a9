import { expect, test } from 'vitest';
import { moneyDecimals, moneyText } from './moneyText.ts';

// ISO 4217, minor units: EUR 2, JPY 0, KWD 3.
test.each([
  ['EUR', 2],
  ['JPY', 0],
  ['KWD', 3],
])('%s is written with %d decimals', (currency, decimals) => {
  expect(moneyDecimals(currency)).toBe(decimals);
});

test('minor units are written as an amount', () => {
  expect(moneyText(12_050, 'EUR')).toBe('120.50 EUR');
  expect(moneyText(12_050, 'JPY')).toBe('12050 JPY');
});

test('a currency nobody knows is taken to have two decimals', () => {
  expect(moneyText(100, '??')).toBe('1.00 ??');
});
