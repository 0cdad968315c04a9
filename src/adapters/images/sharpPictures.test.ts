import fc from 'fast-check';
import sharp from 'sharp';
import { expect, test } from 'vitest';
import { bomb, grain, heicPicture, twoColours } from '../../../test/support/photoPromises.ts';
import { sharpPictures } from './sharpPictures.ts';

async function decoded(bytes: Uint8Array, maxPixels?: number) {
  const answer = await sharpPictures.decode(bytes, maxPixels === undefined ? {} : { maxPixels });
  if (!answer.ok) throw new Error(`refused: ${answer.problem.code}`);
  return answer.value;
}

test('pixels written as PNG come back the same', async () => {
  const size = fc.integer({ min: 1, max: 12 });
  await fc.assert(
    fc.asyncProperty(size, size, fc.infiniteStream(fc.nat(255)), async (widthPx, heightPx, values) => {
      const data = Uint8Array.from(values.take(widthPx * heightPx * 3));
      const image = { widthPx, heightPx, channels: 3, data } as const;
      const back = await decoded(await sharpPictures.encodePng(image));
      expect([back.widthPx, back.heightPx]).toEqual([widthPx, heightPx]);
      expect(Buffer.from(back.data).equals(data)).toBe(true);
    }),
    { numRuns: 25 },
  );
});

test.each([
  ['a HEIC picture', async () => heicPicture],
  ['a picture with transparency', () => twoColours(64, 48).ensureAlpha().png().toBuffer()],
  ['a picture of 16 bits', () => twoColours(64, 48).toColourspace('rgb16').png().toBuffer()],
  ['a picture for print', () => twoColours(64, 48).toColourspace('cmyk').jpeg({ quality: 95 }).toBuffer()],
  ['a WebP picture', () => twoColours(64, 48).webp({ lossless: true }).toBuffer()],
])('%s is decoded to 8 bits of red, green and blue', async (_kind, draw) => {
  const { widthPx, heightPx, channels, data } = await decoded(await draw());
  expect([widthPx, heightPx, channels, data.length]).toEqual([64, 48, 3, 64 * 48 * 3]);
  expect((data[0] ?? 0) - (data[2] ?? 0)).toBeGreaterThan(100);
  expect((data[63 * 3 + 2] ?? 0) - (data[63 * 3] ?? 0)).toBeGreaterThan(90);
});

test('a grey picture has three equal channels', async () => {
  const grey = sharp({ create: { width: 5, height: 4, channels: 3, background: '#808080' } }).greyscale();
  const { data } = await decoded(await grey.png().toBuffer());
  expect(data.length).toBe(5 * 4 * 3);
  expect(new Set(data).size).toBe(1);
});

test('what is transparent is white', async () => {
  const clear = sharp({ create: { width: 2, height: 2, channels: 4, background: '#00000000' } });
  expect(new Set((await decoded(await clear.png().toBuffer())).data)).toEqual(new Set([255]));
});

test('a picture taken sideways is upright', async () => {
  const sideways = await twoColours(60, 40).withMetadata({ orientation: 6 }).jpeg().toBuffer();
  const { widthPx, heightPx, data } = await decoded(sideways);
  expect([widthPx, heightPx]).toEqual([40, 60]);
  expect(data[0]).toBeGreaterThan(180);
});

test('a picture made smaller has no more pixels than asked for and remembers its size', async () => {
  const bytes = await twoColours(900, 600).jpeg().toBuffer();
  const { widthPx, heightPx, fullWidthPx, fullHeightPx } = await decoded(bytes, 10_000);
  expect(widthPx * heightPx).toBeLessThanOrEqual(10_000);
  expect(widthPx / heightPx).toBeCloseTo(1.5, 1);
  expect([fullWidthPx, fullHeightPx]).toEqual([900, 600]);
  expect((await decoded(bytes, 900 * 600)).widthPx).toBe(900);
});

test.each(['jpeg', 'png'] as const)(
  'stripes finer than a smaller %s can show become even, not coarser stripes',
  async (format) => {
    const side = 1200;
    const data = Uint8Array.from({ length: side * side * 3 }, (_, at) =>
      (Math.floor(at / 3) % side) % 3 === 0 ? 230 : 20,
    );
    const stripes = sharp(data, { raw: { width: side, height: side, channels: 3 } });
    const { widthPx, data: small } = await decoded(
      await stripes.toFormat(format, { quality: 95 }).toBuffer(),
      290 * 290,
    );
    const row = small.subarray(widthPx * 3 * 100, widthPx * 3 * 101);
    const middle = row.filter((_, at) => at % 3 === 0 && at > 30 && at < row.length - 30);
    // 210 levels between the stripes; what is left must be far below what an eye or a spectrum would count.
    expect(Math.max(...middle) - Math.min(...middle)).toBeLessThan(6);
  },
);

test('what is no picture, or too large, is refused as a photograph would be', async () => {
  const refusal = async (bytes: Uint8Array) => {
    const answer = await sharpPictures.decode(bytes);
    return answer.ok ? null : answer.problem.code;
  };
  expect(await refusal(Buffer.from('no picture'))).toBe('photograph-not-a-picture');
  expect(await refusal(bomb(12_000))).toBe('photograph-too-many-pixels');
  expect(await refusal((await grain(64, 48).jpeg().toBuffer()).subarray(0, 900))).toBe('photograph-damaged');
});

test('a damaged picture is decoded or refused, and never anything else', async () => {
  const pictures = await Promise.all(
    [grain(40, 30).jpeg(), grain(40, 30).png(), grain(40, 30).webp()].map((picture) => picture.toBuffer()),
  );
  const damage = fc.array(fc.tuple(fc.double({ min: 0, max: 0.9999, noNaN: true }), fc.nat(255)), {
    minLength: 1,
  });
  await fc.assert(
    fc.asyncProperty(fc.constantFrom(...pictures), damage, async (picture, places) => {
      const bytes = Uint8Array.from(picture);
      for (const [share, value] of places) bytes[Math.floor(share * bytes.length)] = value;
      const answer = await sharpPictures.decode(bytes);
      if (answer.ok) expect(answer.value.data.length).toBe(answer.value.widthPx * answer.value.heightPx * 3);
      else expect(answer.problem.code).toMatch(/^photograph-/);
    }),
    { numRuns: 150 },
  );
});
