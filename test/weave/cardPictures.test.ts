import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { type CardShot, drawCardShot, photographCard } from '../../bench/loom/cardShot.ts';
import { seeded } from '../../bench/loom/index.ts';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { readCard } from '../../src/core/card/index.ts';

function shotOf(serial: string, widthPx: number, seed = 5): CardShot {
  const chance = seeded(seed);
  const drawn = drawCardShot(chance, 20);
  const shot = {
    ...drawn.shot,
    widthPx,
    heightPx: Math.round(0.8 * widthPx),
    pxPerMm: widthPx / 215,
    noise: 3,
  };
  return photographCard(chance, { ...drawn, serial, shot });
}

async function read(width: number, height: number, data: Uint8Array) {
  const codes = await zxingCodes.read({ widthPx: width, heightPx: height, channels: 3, data });
  return readCard({ width, height, channels: 3, data }, codes, { barMm: 100 });
}

// Against the camera that took the rendered photographs.
describe('photographs of every size', () => {
  const shot = shotOf('7K3M4Q', 1600);
  const raw = { width: shot.width, height: shot.height, channels: 3 } as const;

  test('2 megapixels and 50 give the same scale', async () => {
    const small = await read(shot.width, shot.height, shot.rgb);
    expect(small.ok && Math.abs(small.value.mmPerPx / shot.mmPerPx - 1)).toBeLessThan(0.003);
    const by = 5;
    const { data } = await sharp(shot.rgb, { raw })
      .resize(by * shot.width, by * shot.height, { kernel: 'cubic' })
      .raw()
      .toBuffer({ resolveWithObject: true });
    expect((by * shot.width * by * shot.height) / 1e6).toBeGreaterThan(50);
    const large = await read(by * shot.width, by * shot.height, new Uint8Array(data));
    expect(large.ok && Math.abs((by * large.value.mmPerPx) / shot.mmPerPx - 1)).toBeLessThan(0.003);
  });

  test('two cards lying side by side are told, with both serials', async () => {
    const other = shotOf('8SQMUJ', 1600, 6);
    const both = await sharp({
      create: { width: 2 * shot.width, height: shot.height, channels: 3, background: '#808080' },
    })
      .composite([
        { input: Buffer.from(shot.rgb), raw, left: 0, top: 0 },
        { input: Buffer.from(other.rgb), raw, left: shot.width, top: 0 },
      ])
      .removeAlpha()
      .raw()
      .toBuffer();
    const result = await read(2 * shot.width, shot.height, new Uint8Array(both));
    expect(!result.ok && result.problem.code).toBe('two-cards');
    expect(!result.ok && result.problem.facts).toMatchObject({
      serials: expect.arrayContaining(['7K3M4Q', '8SQMUJ']),
    });
  });
});
