import { describe, expect, test } from 'vitest';
import { type CardShotSpec, drawCardShot, photographCard } from '../../bench/loom/cardShot.ts';
import { seeded } from '../../bench/loom/index.ts';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import { type CardOptions, cardPdf, drawCard, readCard } from '../../src/core/card/index.ts';

const order = { serial: '7K3M4Q', tag: 'R-0417', draw: zxingCodes.draw };

async function read(
  change: (spec: CardShotSpec) => CardShotSpec,
  options: CardOptions = { barMm: 100 },
  seed = 5,
) {
  const chance = seeded(seed);
  const drawn = drawCardShot(chance, 30);
  const shot = photographCard(
    chance,
    change({
      ...drawn,
      shot: { ...drawn.shot, widthPx: 800, heightPx: 720, pxPerMm: 4.1, tiltDeg: 20, noise: 4 },
    }),
  );
  const codes = await zxingCodes.read({
    widthPx: shot.width,
    heightPx: shot.height,
    channels: 3,
    data: shot.rgb,
  });
  const picture = { width: shot.width, height: shot.height, channels: 3, data: shot.rgb } as const;
  return { shot, codes, picture, reading: readCard(picture, codes, options) };
}

describe('reading the weave card from a photograph', () => {
  test('scale, serial, tag and greys come back from a tilted picture', async () => {
    const { shot, reading } = await read((spec) => ({ ...spec, serial: '7K3M4Q' }));
    if (!reading.ok) throw new Error(reading.problem.code);
    const { mmPerPx, serial, tag, patches, interval95 } = reading.value;
    expect(Math.abs(mmPerPx / shot.mmPerPx - 1)).toBeLessThan(0.005);
    expect(shot.mmPerPx).toBeGreaterThan(interval95[0]);
    expect(shot.mmPerPx).toBeLessThan(interval95[1]);
    expect([serial, tag]).toEqual(['7K3M4Q', 'R-0417']);
    const mean = (printed: number): number => {
      const those = patches.filter((patch) => patch.printed === printed);
      return those.reduce((sum, { green }) => sum + green, 0) / those.length;
    };
    expect(mean(0)).toBeLessThan(mean(96));
    expect(mean(96)).toBeLessThan(mean(178));
    expect(mean(178)).toBeLessThan(mean(255));
  });

  test('one hidden code does no harm, two leave one per cent, one is refused', async () => {
    const three = await read((spec) => ({ ...spec, hidden: ['B'] }));
    expect(three.reading.ok && Math.abs(three.reading.value.mmPerPx / three.shot.mmPerPx - 1)).toBeLessThan(
      0.005,
    );
    const two = await read((spec) => ({ ...spec, hidden: ['B', 'C'] }));
    expect(two.reading.ok && Math.abs(two.reading.value.mmPerPx / two.shot.mmPerPx - 1)).toBeLessThan(0.01);
    const one = await read((spec) => ({ ...spec, hidden: ['A', 'B', 'C'] }));
    expect(!one.reading.ok && one.reading.problem.code).toBe('card-one-code');
  });

  test('a card printed at 97 % is put right by its measured bar, and unverified without', async () => {
    const small = (spec: CardShotSpec): CardShotSpec => ({ ...spec, printed: [0.97, 0.97] });
    const measured = await read(small, { barMm: 97 });
    expect(
      measured.reading.ok && Math.abs(measured.reading.value.mmPerPx / measured.shot.mmPerPx - 1),
    ).toBeLessThan(0.005);
    const unmeasured = readCard(measured.picture, measured.codes, { barMm: null });
    expect(unmeasured.ok && unmeasured.value.measured).toBe(false);
    expect(unmeasured.ok && unmeasured.value.interval95[1] / unmeasured.value.mmPerPx).toBeGreaterThan(1.029);
  });

  test('a card printed two per cent longer one way is called stretched', async () => {
    const { reading } = await read((spec) => ({
      ...spec,
      printed: [1, 1.02],
      shot: { ...spec.shot, tiltDeg: 3 },
    }));
    expect(!reading.ok && reading.problem.code).toBe('card-stretched');
  });

  test('no card, two cards, another tag and an impossible bar are told apart', async () => {
    const { codes, picture, reading } = await read((spec) => spec);
    expect(reading.ok).toBe(true);
    const code = (seen: typeof codes, options: CardOptions = { barMm: 100 }): string => {
      const result = readCard(picture, seen, options);
      return result.ok ? 'read' : result.problem.code;
    };
    expect(code([])).toBe('card-not-found');
    expect(code(codes.filter(({ text }) => text.startsWith('WEFT-TAG')))).toBe('card-not-found');
    expect(code([...codes, ...codes.slice(0, 1).map((one) => ({ ...one, text: 'WEFT-ZZZZZZ-A' }))])).toBe(
      'two-cards',
    );
    expect(code(codes, { barMm: 100, tag: 'R-0500' })).toBe('card-other-tag');
    expect(code(codes, { barMm: 42 })).toBe('out-of-range');
  });

  test('codes that do not lie on one card disagree', async () => {
    const { codes, picture } = await read((spec) => spec);
    const moved = codes.map((one) =>
      one.text.endsWith('-A')
        ? { ...one, corners: one.corners.map(([x, y]) => [x + 60, y - 40] as const) }
        : one,
    );
    const result = readCard(picture, moved, { barMm: 100 });
    expect(!result.ok && result.problem.code).toBe('card-codes-disagree');
  });
});

describe('the sheet', () => {
  test('a page of A4 is 595.28 by 841.89 points and the bar 283.46 (1 in = 72 pt = 25.4 mm)', () => {
    const drawn = drawCard(order);
    if (!drawn.ok) throw new Error(drawn.problem.code);
    const pdf = new TextDecoder('latin1').decode(cardPdf(drawn.value, 'a4'));
    const [, wide, high] = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf) ?? [];
    expect(Number(wide)).toBeCloseTo(595.28, 1);
    expect(Number(high)).toBeCloseTo(841.89, 1);
    expect(pdf).toContain(' 283.4646 ');
    expect(pdf.startsWith('%PDF-1.4')).toBe(true);
    expect(pdf.trimEnd().endsWith('%%EOF')).toBe(true);
  });

  test('a serial or tag that its code cannot hold is refused', () => {
    const code = (change: Partial<typeof order>): string => {
      const drawn = drawCard({ ...order, ...change });
      return drawn.ok ? 'drawn' : drawn.problem.code;
    };
    expect(code({ serial: 'abc' })).toBe('card-serial-not-usable');
    expect(code({ tag: 'a tag with spaces' })).toBe('card-tag-not-usable');
  });
});
