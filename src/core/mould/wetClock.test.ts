import { expect, test } from 'vitest';
import { wetClock } from './wetClock.ts';

test('dry within 24 h is in time, within 48 h amber, later or never red (US EPA mould course)', () => {
  expect([0, 24, 24.1, 48, 48.1, null].map(wetClock)).toEqual([
    ...['in time', 'in time', 'amber', 'amber', 'red', 'red'],
  ]);
});
