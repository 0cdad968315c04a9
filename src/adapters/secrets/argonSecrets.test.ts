import { parseOptions } from '@node-rs/argon2';
import { expect, test } from 'vitest';
import { argonSecrets } from './argonSecrets.ts';

test('a passphrase is hashed by argon2id at 19 MiB and two passes, salted anew each time', async () => {
  const secrets = argonSecrets();
  const [one, two] = await Promise.all([secrets.hash('undyed wool'), secrets.hash('undyed wool')]);
  expect(one).not.toBe(two);
  expect(one).toMatch(/^\$argon2id\$/);
  // OWASP Password Storage Cheat Sheet, argon2id: at least 19 MiB, 2 iterations, 1 degree of parallelism (from memory).
  expect(parseOptions(one)).toMatchObject({ memoryCost: 19 * 1024, timeCost: 2, parallelism: 1 });
});

test('the right secret matches however its accents are encoded; a wrong one, and none at all, do not', async () => {
  const secrets = argonSecrets({ memoryKiB: 64, passes: 1 });
  const hash = await secrets.hash('Gar\u00e9 wool');
  expect(await secrets.matches('Gare\u0301 wool', hash)).toBe(true);
  expect(await secrets.matches('Gare wool', hash)).toBe(false);
  expect(await secrets.matches('Gare wool', null)).toBe(false);
});

test('tokens hold 256 random bits, codes 40 that are easy to read out', () => {
  const secrets = argonSecrets();
  expect(Buffer.from(secrets.token(), 'base64url')).toHaveLength(32);
  const codes = new Set(Array.from({ length: 200 }, () => secrets.spokenCode()));
  expect(codes.size).toBe(200);
  for (const code of codes) expect(code).toMatch(/^[0-9A-HJKMNP-TV-Z]{4}-[0-9A-HJKMNP-TV-Z]{4}$/);
});
