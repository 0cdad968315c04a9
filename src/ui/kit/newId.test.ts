import { expect, test } from 'vitest';
import { newId } from './newId.ts';

// RFC 9562, section 5.7: version 7 in the high nibble of octet 6, variant 10 in octet 8, time in the first 48 bits.
test('an id made on a tablet has the form of a UUID version 7', () => {
  expect(newId()).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

test('an id begins with the millisecond it was made in', () => {
  const before = Date.now();
  const made = Number.parseInt(newId().replaceAll('-', '').slice(0, 12), 16);
  expect(made).toBeGreaterThanOrEqual(before);
  expect(made).toBeLessThanOrEqual(Date.now());
});

test('a thousand ids are a thousand different ones', () => {
  expect(new Set(Array.from({ length: 1000 }, newId)).size).toBe(1000);
});
