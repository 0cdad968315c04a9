import { expect, test } from 'vitest';
import { uuidv7 } from './uuidv7.ts';

// RFC 9562, appendix A.6 (from memory of the source): 22 February 2022, 14:22:22 at UTC−5, is 017F22E2-79B0-7…
test('an id of version 7 starts with the milliseconds of its making (RFC 9562, A.6)', () => {
  const id = uuidv7(() => Date.UTC(2022, 1, 22, 19, 22, 22)).next();
  expect(id.slice(0, 15)).toBe('017f22e2-79b0-7');
  expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-7[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
});

test('ids are in the order of their making, each once, even within a millisecond and with a clock set back', () => {
  const times = [5, 5, 4, 3, 5, 6, 6];
  const ids = uuidv7(() => times.shift() ?? 6);
  const made = Array.from({ length: 20_000 }, () => ids.next());
  expect(made).toEqual([...made].sort());
  expect(new Set(made).size).toBe(made.length);
});
