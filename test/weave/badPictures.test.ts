import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { drawLoomPicture, type LoomPicture, seeded } from '../../bench/loom/index.ts';
import { blurred, drawNotWoven } from '../../bench/loom/notWoven.ts';
import { cardOnRug } from './cardOnRug.ts';
import { jpegOf, weaveDesk } from './weaveDesk.ts';

const { files, call } = weaveDesk();

const weave = async (...args: string[]) => {
  const { code, out } = await call('weave', ...args, '--json');
  return { code, answer: JSON.parse(out) };
};

const refusal = async (...args: string[]) => {
  const { code, answer } = await weave(...args);
  expect(code).toBe(1);
  for (const part of ['happened', 'matters', 'now']) expect(answer.refused[part].length).toBeGreaterThan(20);
  return answer.refused;
};

describe('what is no picture, too small or too large is refused by name', () => {
  test('a text that calls itself a picture', async () => {
    files.set('note.jpg', new TextEncoder().encode('not a picture at all'));
    expect((await refusal('note.jpg')).code).toBe('photograph-not-a-picture');
  });

  test('a JPEG that breaks off', async () => {
    const whole = await jpegOf(drawNotWoven(seeded(1), 'plain paper'));
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
    const large = await sharp({ create: { width: 20_000, height: 10_000, channels: 3, background: '#a33' } })
      .jpeg()
      .toBuffer();
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

describe('a card that cannot be trusted is said to be so', () => {
  beforeAll(async () => {
    // Close enough to count, too close for the tag at the foot of the sheet.
    const near = { widthPx: 900, heightPx: 800, pxPerMm: 5.7, rollDeg: 2, tiltDeg: 8 };
    files.set('small.jpg', await jpegOf(cardOnRug(78, near, { printed: [0.97, 0.97], tag: 'R-0417' })));
    const far = { ...near, widthPx: 720, heightPx: 720, pxPerMm: 3 };
    const [left, right] = [
      await jpegOf(cardOnRug(79, far, { tag: 'R-0417', serial: '7K3M4Q' })),
      await jpegOf(cardOnRug(80, far, { serial: '9P2X5W' })),
    ];
    files.set('tagged.jpg', left);
    files.set(
      'two.jpg',
      await sharp({ create: { width: 1440, height: 720, channels: 3, background: '#777' } })
        .composite([
          { input: left, left: 0, top: 0 },
          { input: right, left: 720, top: 0 },
        ])
        .jpeg({ quality: 88 })
        .toBuffer(),
    );
  });

  test('printed at 97 %, it is put right by its measured bar', async () => {
    const { answer } = await weave('small.jpg', '--card-bar-mm', '97', '--nodes-per-knot', '1');
    expect(Math.abs(answer.weftwise.knotsPer7cm / 30 - 1)).toBeLessThan(0.02);
    expect(Math.abs(answer.warpwise.knotsPer7cm / 34 - 1)).toBeLessThan(0.02);
    expect(answer.notes.join(' ')).not.toContain('never measured');
  });

  test('printed at 97 % and never measured, it is called unverified, ±3 %, and the truth lies within', async () => {
    const { answer } = await weave('small.jpg', '--nodes-per-knot', '1');
    expect(answer.notes.join(' ')).toContain('never measured');
    const [low, high] = answer.scale.interval95;
    expect(high / answer.scale.mmPerPx).toBeGreaterThan(1.029);
    expect(low / answer.scale.mmPerPx).toBeLessThan(0.971);
    expect(answer.weftwise.interval95[0]).toBeLessThan(30.6);
    expect(answer.weftwise.interval95[1]).toBeGreaterThan(29.4);
  });

  test('two cards in one picture', async () => {
    expect((await refusal('two.jpg')).code).toBe('two-cards');
  });

  test('a card whose tag is not in the picture, when a tag was asked for', async () => {
    const { answer } = await weave('small.jpg', '--tag', 'R-0417');
    expect(answer.notes.join(' ')).toContain('No tag of a card was read');
  });

  test('a card of another rug', async () => {
    const { code, happened } = await refusal('tagged.jpg', '--tag', 'R-0500');
    expect(code).toBe('card-other-tag');
    expect(happened).toMatch(/R-0417.*R-0500|R-0500.*R-0417/);
  });
});
