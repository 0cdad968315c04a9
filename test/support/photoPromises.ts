import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { deflateSync } from 'node:zlib';
import exifr from 'exifr';
import sharp, { type Sharp } from 'sharp';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { PhotoArchive } from '../../src/ports/photos.ts';

const hash = (bytes: Uint8Array): string => createHash('sha256').update(bytes).digest('hex');

/** 64 × 48 px, left half red, right half blue, made by an HEVC encoder. */
export const heicPicture = readFileSync(new URL('./twoColours.heic', import.meta.url));

/** A picture whose left half is red and whose right half is blue. */
export function twoColours(widthPx: number, heightPx: number): Sharp {
  const half = {
    width: Math.floor(widthPx / 2),
    height: heightPx,
    channels: 3,
    background: '#c81e28',
  } as const;
  return sharp({
    create: { width: widthPx, height: heightPx, channels: 3, background: '#1428a0' },
  }).composite([{ input: { create: half }, left: 0, top: 0 }]);
}

/** Grain that does not compress away, so that a cut takes something from the picture. */
export function grain(widthPx: number, heightPx: number): Sharp {
  let state = 1;
  const data = Uint8Array.from({ length: widthPx * heightPx * 3 }, () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return state >> 16;
  });
  return sharp(data, { raw: { width: widthPx, height: heightPx, channels: 3 } });
}

/** A few kilobytes that say they are a picture of so many pixels, one bit each. */
export function bomb(sidePx: number): Buffer {
  const chunk = (type: string, data: Buffer) => {
    const body = Buffer.concat([Buffer.from(type, 'latin1'), data]);
    const frame = Buffer.alloc(8);
    frame.writeUInt32BE(data.length, 0);
    frame.writeUInt32BE(crc32(body), 4);
    return Buffer.concat([frame.subarray(0, 4), body, frame.subarray(4)]);
  };
  const header = Buffer.alloc(13);
  header.writeUInt32BE(sidePx, 0);
  header.writeUInt32BE(sidePx, 4);
  header.writeUInt8(1, 8);
  const rows = deflateSync(Buffer.alloc((Math.ceil(sidePx / 8) + 1) * sidePx));
  return Buffer.concat([
    Buffer.from('\x89PNG\r\n\x1a\n', 'latin1'),
    chunk('IHDR', header),
    chunk('IDAT', rows),
    chunk('IEND', Buffer.alloc(0)),
  ]);
}

/** The check sum of PNG chunks (ISO/IEC 15948, annex D). */
function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (const byte of bytes) {
    sum ^= byte;
    for (let bit = 0; bit < 8; bit += 1) sum = sum & 1 ? (sum >>> 1) ^ 0xedb88320 : sum >>> 1;
  }
  return (sum ^ 0xffffffff) >>> 0;
}

/** What every store of photographs promises. */
export function photoPromises(name: string, make: () => { photos: PhotoArchive; remove: () => void }): void {
  describe(`${name} keeps the promises of a store of photographs:`, () => {
    let photos: PhotoArchive;
    let remove: () => void;
    beforeAll(() => {
      ({ photos, remove } = make());
    });
    afterAll(() => remove());

    const refusal = async (bytes: Uint8Array, claimed: string) => {
      const answer = await photos.keep(bytes, claimed);
      if (answer.ok) throw new Error('it was kept');
      expect(await photos.describe(hash(bytes))).toBeNull();
      return answer.problem;
    };

    test.each([
      ['image/jpeg', () => twoColours(64, 48).jpeg().toBuffer()],
      ['image/png', () => twoColours(64, 48).png().toBuffer()],
      ['image/webp', () => twoColours(64, 48).webp().toBuffer()],
      ['image/heic', () => Promise.resolve(heicPicture)],
    ])('a picture as %s is kept untouched under the hash of its bytes', async (type, draw) => {
      const bytes = await draw();
      const kept = await photos.keep(bytes, type);
      const photo = { photo: hash(bytes), mediaType: type, widthPx: 64, heightPx: 48, bytes: bytes.length };
      expect(kept).toEqual({ ok: true, value: photo });
      expect(await photos.describe(photo.photo)).toEqual(photo);
      const original = await photos.read(photo.photo, 'original');
      expect(original?.mediaType).toBe(type);
      expect(hash(original?.bytes ?? new Uint8Array())).toBe(photo.photo);
      const shown = await photos.read(photo.photo, 'shown');
      const { data } = await sharp(shown?.bytes).raw().toBuffer({ resolveWithObject: true });
      // Red at the left edge, blue at the right, within what the codings lose.
      expect(Math.abs((data[0] ?? 0) - 200)).toBeLessThan(12);
      expect(Math.abs((data[63 * 3 + 2] ?? 0) - 160)).toBeLessThan(12);
    });

    test('the same bytes twice are one photograph', async () => {
      const bytes = await twoColours(30, 20).png().toBuffer();
      const twice = await Promise.all([photos.keep(bytes, 'image/png'), photos.keep(bytes, '')]);
      expect(twice[0]).toEqual(twice[1]);
      expect(await photos.keep(bytes, 'image/png')).toEqual(twice[0]);
    });

    test('a camera held on its side gives an upright picture, without place or maker in what is shown', async () => {
      const bytes = await twoColours(600, 400)
        .jpeg()
        .withExif({
          IFD0: { Make: 'Invented', Orientation: '6' },
          IFD3: {
            GPSLatitudeRef: 'N',
            GPSLatitude: '38/1 25/1 0/1',
            GPSLongitudeRef: 'E',
            GPSLongitude: '27/1 8/1 0/1',
          },
        })
        .withMetadata({ orientation: 6 })
        .toBuffer();
      const kept = await photos.keep(bytes, 'image/jpeg');
      if (!kept.ok) throw new Error('refused');
      expect([kept.value.widthPx, kept.value.heightPx]).toEqual([400, 600]);
      for (const form of ['shown', 'thumbnail'] as const) {
        const read = await photos.read(kept.value.photo, form);
        expect(await exifr.parse(Buffer.from(read?.bytes ?? []), { gps: true })).toBeUndefined();
        const { data, info } = await sharp(read?.bytes).raw().toBuffer({ resolveWithObject: true });
        expect(info.height / info.width).toBeCloseTo(1.5, 2);
        // Orientation 6: the left of the sensor is up.
        expect(data[0]).toBeGreaterThan(180);
        expect(data[data.length - 1]).toBeGreaterThan(140);
      }
    });

    test('what is shown has at most 2400 px, a thumbnail at most 480, and small pictures stay as they are', async () => {
      const kept = await photos.keep(await twoColours(3000, 1000).jpeg().toBuffer(), 'image/jpeg');
      if (!kept.ok) throw new Error('refused');
      const size = async (form: 'shown' | 'thumbnail') => {
        const { width, height } = await sharp((await photos.read(kept.value.photo, form))?.bytes).metadata();
        return [width, height];
      };
      expect(await size('shown')).toEqual([2400, 800]);
      expect(await size('thumbnail')).toEqual([480, 160]);
    });

    test.each([
      ['image/jpeg', () => grain(200, 150).jpeg().toBuffer()],
      ['image/png', () => grain(200, 150).png().toBuffer()],
      ['image/webp', () => grain(200, 150).webp().toBuffer()],
      ['image/heic', () => Promise.resolve(heicPicture)],
    ])('a picture as %s that is cut off anywhere is refused as damaged', async (type, draw) => {
      const bytes = await draw();
      for (const share of [0.3, 0.6, 0.95]) {
        const problem = await refusal(bytes.subarray(0, Math.floor(bytes.length * share)), type);
        expect([share, problem.code]).toEqual([share, 'photograph-damaged']);
      }
    });

    test('a picture under a wrong name is refused, with what it claimed and what it is', async () => {
      const png = await twoColours(10, 11).png().toBuffer();
      expect(await refusal(png, 'image/jpeg')).toEqual({
        code: 'photograph-not-a-picture',
        facts: { claimed: 'image/jpeg', found: 'image/png' },
      });
    });

    test.each([
      ['nothing at all', Buffer.alloc(0), 'an empty file'],
      ['a document', Buffer.from('%PDF-1.7\n'), 'a PDF document'],
      ['a drawing with a script', Buffer.from('<svg onload="x"/>'), 'a web page or a drawing as text'],
      ['chance', Buffer.from([1, 2, 3, 4, 5, 6, 7, 8, 9]), 'a file of unknown kind'],
    ])('%s is no photograph', async (_what, bytes, found) => {
      expect(await refusal(bytes, 'image/jpeg')).toEqual({
        code: 'photograph-not-a-picture',
        facts: { claimed: 'image/jpeg', found },
      });
    });

    test('a file over 40 MB is refused by its size', async () => {
      const bytes = Buffer.concat([await twoColours(9, 9).jpeg().toBuffer(), Buffer.alloc(40_000_001)]);
      expect((await refusal(bytes, 'image/jpeg')).code).toBe('photograph-too-large');
    });

    test('a few kilobytes that would unfold to 144 megapixels are refused before they do', async () => {
      const bytes = bomb(12_000);
      expect(bytes.length).toBeLessThan(30_000);
      const problem = await refusal(bytes, 'image/png');
      expect(problem).toEqual({
        code: 'photograph-too-many-pixels',
        facts: { megapixels: 144, most: 100 },
      });
    });

    test('all that was kept, and nothing that was refused, is what its name says', async () => {
      const bytes = await twoColours(12, 34).png().toBuffer();
      const before = (await photos.verify()).photos;
      await photos.keep(bytes, 'image/png');
      await photos.keep(bytes.subarray(0, 60), 'image/png');
      expect(await photos.verify()).toEqual({ photos: before + 1, broken: [] });
    });

    test('a name that is no hash finds nothing, least of all another file', async () => {
      for (const photo of ['', '../incoming', 'A'.repeat(64), `../${'a'.repeat(61)}`, '0'.repeat(64)]) {
        expect(await photos.describe(photo)).toBeNull();
        expect(await photos.read(photo, 'original')).toBeNull();
      }
    });
  });
}
