import sharp from 'sharp';
import { describe, expect, test } from 'vitest';
import { drawLoomPicture, type LoomPicture, seeded } from '../../bench/loom/index.ts';
import { blurred, drawNotWoven } from '../../bench/loom/notWoven.ts';
import { jpegOf, weaveDesk } from './weaveDesk.ts';

const { files, weave, refusal } = weaveDesk();

describe('what is no picture, too small or too large is refused by name', () => {
  const paper = jpegOf(drawNotWoven(seeded(1), 'plain paper'));

  test('a text that calls itself a picture', async () => {
    files.set('note.jpg', new TextEncoder().encode('not a picture at all'));
    expect((await refusal('note.jpg')).code).toBe('photograph-not-a-picture');
  });

  test('a JPEG that breaks off', async () => {
    const whole = await paper;
    files.set('half.jpg', whole.subarray(0, whole.length / 2));
    expect((await refusal('half.jpg')).code).toBe('photograph-damaged');
  });

  test('20 by 20 pixels', async () => {
    files.set(
      'tiny.png',
      await sharp({ create: { width: 20, height: 20, channels: 3, background: '#a33' } })
        .png()
        .toBuffer(),
    );
    const { code, happened } = await refusal('tiny.png');
    expect(code).toBe('weave-picture-too-small');
    expect(happened).toContain('20 × 20');
  });

  test('200 megapixels, without being opened', async () => {
    // A small JPEG whose frame header (ITU-T T.81, B.2.2) says 10 000 lines of 20 000: nothing else is to be read.
    const large = Buffer.from(await paper);
    const frame = large.findIndex((byte, at) => byte === 0xff && [0xc0, 0xc2].includes(large[at + 1] ?? 0));
    large.writeUInt16BE(10_000, frame + 5);
    large.writeUInt16BE(20_000, frame + 7);
    files.set('large.jpg', large);
    const { code, happened } = await refusal('large.jpg');
    expect(code).toBe('photograph-too-many-pixels');
    expect(happened).toContain('200');
  });
});

describe('what shows no countable back is refused or called unsure', () => {
  const unsure = async (name: string): Promise<void> => {
    const { code, answer } = await weave(name);
    if (code === 1) {
      expect(answer.refused.code).toMatch(/^weave-/);
      return;
    }
    expect(Math.min(answer.weftwise.confidence, answer.warpwise.confidence)).toBeLessThan(0.8);
    expect(answer.notes.join(' ')).toContain('Not sure enough to stand alone');
  };

  test.each(['plain paper', 'pile side', 'screen'] as const)('%s', async (kind) => {
    files.set(kind, await jpegOf(drawNotWoven(seeded(12), kind)));
    await unsure(kind);
  });

  /** What is still seen must be right where it is called sure. */
  async function rightWhereSure(name: string, { truth }: LoomPicture): Promise<void> {
    const { code, answer } = await weave(name);
    if (code === 1) {
      expect(answer.refused.code).toMatch(/^weave-/);
      return;
    }
    const fair = { weftwise: [truth.knotPx, truth.knotPx / 2], warpwise: [truth.rowPx] };
    for (const axis of ['weftwise', 'warpwise'] as const) {
      const { pitchPx, confidence } = answer[axis];
      if (confidence < 0.8) continue;
      expect(Math.min(...fair[axis].map((pitch) => Math.abs(pitchPx / pitch - 1)))).toBeLessThan(0.05);
    }
  }

  test.each([
    ['a hand that shook across the knots', 18, 28],
    ['a hand that shook along the rows', 52, 0],
    ['a hand that shook along the warps', 0, 52],
  ] as const)('%s', async (name, dx, dy) => {
    const chance = seeded(46);
    const loom = drawLoomPicture(chance, 7);
    files.set(name, await jpegOf(blurred(loom, dx, dy, chance, 3)));
    await rightWhereSure(name, loom);
  });

  test('a back photographed off a screen, whose raster beats with the knots', async () => {
    const chance = seeded(52);
    const loom = drawLoomPicture(chance, 5);
    const pitch = 2.6;
    const rgb = loom.rgb.map((light, at) => {
      const pixel = Math.floor(at / 3);
      const [x, y] = [pixel % loom.width, Math.floor(pixel / loom.width)];
      const across = Math.cos(2 * Math.PI * (x / pitch + (at % 3) / 3));
      return Math.min(255, light * (1 + 0.45 * across + 0.35 * Math.cos((2 * Math.PI * y) / pitch)));
    });
    files.set('moire', await jpegOf({ ...loom, rgb }));
    await rightWhereSure('moire', loom);
  });
});
