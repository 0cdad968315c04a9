import { createHash } from 'node:crypto';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { memoryHouse } from '../support/memoryHouse.ts';
import { twoColours } from '../support/photoPromises.ts';
import { openedHouse, Tablet } from '../support/tablet.ts';

async function sent() {
  const { app, owner } = await openedHouse(memoryHouse());
  const bytes = new Uint8Array(await twoColours(900, 600).jpeg().toBuffer());
  const send = () =>
    owner.ask('/api/photographs', { method: 'POST', headers: { 'content-type': 'image/jpeg' }, body: bytes });
  const answer = await send();
  return { app, owner, bytes, send, answer: (await answer.json()) as { readonly photo: string } };
}

test('a photograph is kept under the hash of its bytes, once', async () => {
  const { bytes, answer, send } = await sent();
  const hash = createHash('sha256').update(bytes).digest('hex');
  expect(answer).toEqual({
    photo: hash,
    mediaType: 'image/jpeg',
    widthPx: 900,
    heightPx: 600,
    bytes: bytes.byteLength,
  });
  expect(await (await send()).json()).toEqual(answer);
});

test('its forms are asked for once and kept for a year; the original comes back byte for byte', async () => {
  const { owner, bytes, answer } = await sent();
  const of = (form: string) => owner.ask(`/api/photographs/${answer.photo}/${form}`);
  const thumbnail = await of('thumbnail');
  expect(thumbnail.headers.get('cache-control')).toBe('private, max-age=31536000, immutable');
  expect(thumbnail.headers.get('content-security-policy')).toBe("default-src 'none'; sandbox");
  const { width } = await sharp(await thumbnail.arrayBuffer()).metadata();
  expect(width).toBe(480);
  const original = await of('original');
  expect(original.headers.get('content-disposition')).toMatch(/^attachment/);
  expect(Buffer.from(await original.arrayBuffer()).equals(bytes)).toBe(true);
});

test('an unknown photograph or form is 404, and a stranger sees none', async () => {
  const { app, owner, answer } = await sent();
  for (const path of [`${answer.photo}/huge`, `${'0'.repeat(64)}/shown`, '..%2f..%2fwefthouse.db/original']) {
    expect({ path, status: (await owner.ask(`/api/photographs/${path}`)).status }).toEqual({
      path,
      status: 404,
    });
  }
  expect((await new Tablet(app).ask(`/api/photographs/${answer.photo}/shown`)).status).toBe(401);
});
