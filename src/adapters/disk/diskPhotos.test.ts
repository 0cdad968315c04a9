import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { throwAwayFolder } from '../../../test/support/openInFolder.ts';
import { photoPromises, twoColours } from '../../../test/support/photoPromises.ts';
import { DiskPhotos } from './diskPhotos.ts';

photoPromises('the store of photographs on disk', () => {
  const { folder, remove } = throwAwayFolder();
  return { photos: new DiskPhotos(folder), remove };
});

let folder: string;
let remove: () => void;
beforeEach(() => {
  ({ folder, remove } = throwAwayFolder());
});
afterEach(() => remove());

const keepOne = async () => {
  const bytes = await twoColours(40, 30).png().toBuffer();
  const kept = await new DiskPhotos(folder).keep(bytes, 'image/png');
  if (!kept.ok) throw new Error('refused');
  return { bytes, photo: kept.value, beside: join(folder, kept.value.photo.slice(0, 2)) };
};

test('the original lies in the folder byte for byte, and nothing is left on its way', async () => {
  const { bytes, photo, beside } = await keepOne();
  const onDisk = readFileSync(join(beside, photo.photo));
  expect(createHash('sha256').update(onDisk).digest('hex')).toBe(photo.photo);
  expect(onDisk.equals(bytes)).toBe(true);
  expect(readdirSync(join(folder, 'incoming'))).toEqual([]);
  expect(statSync(join(beside, photo.photo)).mode & 0o077).toBe(0);
});

test('forms and description that someone removed are made again from the original', async () => {
  const { photo, beside } = await keepOne();
  const photos = new DiskPhotos(folder);
  const before = await photos.read(photo.photo, 'shown');
  for (const ending of ['.shown.jpg', '.thumbnail.jpg', '.json']) rmSync(join(beside, photo.photo + ending));
  expect(await photos.describe(photo.photo)).toEqual(photo);
  expect(await photos.read(photo.photo, 'shown')).toEqual(before);
});

test('an original that something outside changed is named', async () => {
  const { photo, beside } = await keepOne();
  writeFileSync(join(beside, photo.photo), 'other bytes');
  expect(await new DiskPhotos(folder).verify()).toEqual({ photos: 1, broken: [photo.photo] });
});

test('a file left half-written by a crash is no photograph, and is cleared away after a day', async () => {
  const { photo } = await keepOne();
  const left = join(folder, 'incoming', 'left');
  writeFileSync(left, 'half');
  expect(await new DiskPhotos(folder).describe(photo.photo)).toEqual(photo);
  expect(readdirSync(join(folder, 'incoming'))).toEqual(['left']);
  const twoDaysAgo = Date.now() / 1000 - 2 * 24 * 3600;
  utimesSync(left, twoDaysAgo, twoDaysAgo);
  new DiskPhotos(folder);
  expect(readdirSync(join(folder, 'incoming'))).toEqual([]);
});

test('when the folder has gone, a photograph is refused and not written elsewhere', async () => {
  const photos = new DiskPhotos(folder);
  rmSync(folder, { recursive: true });
  const answer = await photos.keep(await twoColours(8, 8).png().toBuffer(), 'image/png');
  expect(answer).toEqual({
    ok: false,
    problem: { code: 'record-unavailable', facts: { reason: 'not-writable' } },
  });
});
