import sharp from 'sharp';
import { beforeAll, describe, expect, test } from 'vitest';
import { cardOnRug } from './cardOnRug.ts';
import { jpegOf, weaveDesk } from './weaveDesk.ts';

const { files, weave, refusal } = weaveDesk();

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
