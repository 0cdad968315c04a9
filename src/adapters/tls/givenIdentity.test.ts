import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { givenIdentity } from './givenIdentity.ts';
import { localIdentity } from './localAuthority.ts';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'wefthouse-tls-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const fileWith = (name: string, text: string): string => {
  writeFileSync(join(folder, name), text);
  return join(folder, name);
};

test('a certificate and its key are taken; a key of another, no PEM, and a missing file are refused by name', async () => {
  const [one, other] = await Promise.all(
    ['one', 'other'].map((name) => localIdentity(join(folder, name), new Date(), ['localhost'])),
  );
  const certificate = fileWith('c.pem', one?.certificate ?? '');
  const key = fileWith('k.pem', one?.key ?? '');
  expect(await givenIdentity(certificate, key)).toMatchObject({ ok: true });
  const foreign = fileWith('other.pem', other?.key ?? '');
  expect(await givenIdentity(certificate, foreign)).toMatchObject({
    problem: { code: 'certificate-unreadable', facts: { file: foreign } },
  });
  const text = fileWith('text.pem', 'not a certificate');
  expect(await givenIdentity(text, key)).toMatchObject({ problem: { facts: { file: text } } });
  expect(await givenIdentity(certificate, text)).toMatchObject({ problem: { facts: { file: text } } });
  const missing = join(folder, 'missing.pem');
  expect(await givenIdentity(missing, key)).toMatchObject({ problem: { facts: { file: missing } } });
});
