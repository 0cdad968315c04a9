import { describe, expect, test } from 'vitest';
import { seeded } from '../../bench/loom/index.ts';
import { drawLooseShot, type LooseShotSpec, photographLoose } from '../../bench/loom/looseShot.ts';
import { zxingCodes } from '../../src/adapters/codes/zxingCodes.ts';
import {
  type CornerName,
  cardPdf,
  drawLooseCard,
  project,
  readCard,
  readEitherCard,
  readLooseCard,
} from '../../src/core/card/index.ts';

async function read(
  change: (spec: LooseShotSpec) => LooseShotSpec = (spec) => spec,
  { barMm = 100, tilt = 30, seed = 11, corners }: Asked = {},
) {
  const chance = seeded(seed);
  const drawn = drawLooseShot(chance, tilt, corners);
  const smaller = { ...drawn.shot, widthPx: 900, heightPx: 700, pxPerMm: 0.88, blurPx: 0.4 };
  const shot = photographLoose(chance, change({ ...drawn, shot: smaller }));
  const codes = await zxingCodes.read({
    widthPx: shot.width,
    heightPx: shot.height,
    channels: 3,
    data: shot.rgb,
  });
  const picture = { width: shot.width, height: shot.height, channels: 3, data: shot.rgb } as const;
  const reading = readLooseCard(picture, codes, { barMm });
  const truth = reading.ok ? shot.mmPerPxAt(...project(reading.value.homography, 0, 0)) : Number.NaN;
  return { shot, codes, picture, reading, truth };
}
interface Asked {
  readonly barMm?: number | null;
  readonly tilt?: number;
  readonly seed?: number;
  readonly corners?: readonly CornerName[];
}

// Against the camera that took the rendered photographs.
describe('loose pieces at the corners of a rug', () => {
  test('give scale and perspective wherever they lie and however they are turned', async () => {
    const { truth, reading, picture, codes } = await read(undefined, { seed: 21, tilt: 40 });
    if (!reading.ok) throw new Error(`${reading.problem.code} ${JSON.stringify(reading.problem.facts)}`);
    const { mmPerPx, interval95, serial, form, patches } = reading.value;
    expect(Math.abs(mmPerPx / truth - 1)).toBeLessThan(0.005);
    expect(truth).toBeGreaterThan(interval95[0]);
    expect(truth).toBeLessThan(interval95[1]);
    expect([serial, form]).toEqual(['7K3M4Q', 'loose']);
    const mean = (printed: number): number => {
      const those = patches.filter((patch) => patch.printed === printed);
      return those.reduce((sum, { green }) => sum + green, 0) / those.length;
    };
    expect(mean(0)).toBeLessThan(mean(96));
    expect(mean(96)).toBeLessThan(mean(178));
    expect(mean(178)).toBeLessThan(mean(255));
    // They are no card with a window, and are never taken for one.
    const asWindow = readCard(picture, codes, { barMm: 100 });
    expect(!asWindow.ok && asWindow.problem.code).toBe('card-not-found');
  });

  test('two pieces leave one per cent, one is refused', async () => {
    const two = await read(undefined, { corners: ['A', 'C'], tilt: 20, seed: 35 });
    expect(two.reading.ok && Math.abs(two.reading.value.mmPerPx / two.truth - 1)).toBeLessThan(0.01);
    const one = readLooseCard(two.picture, two.codes.slice(0, 1), { barMm: 100 });
    expect(!one.ok && one.problem.code).toBe('card-one-code');
  });

  test('printed at 97 % they are put right by their bar, and unverified without', async () => {
    const small = (spec: LooseShotSpec): LooseShotSpec => ({ ...spec, printed: [0.97, 0.97] });
    const { truth, reading, picture, codes } = await read(small, { barMm: 97 });
    expect(reading.ok && Math.abs(reading.value.mmPerPx / truth - 1)).toBeLessThan(0.005);
    const unmeasured = readLooseCard(picture, codes, { barMm: null });
    expect(unmeasured.ok && unmeasured.value.measured).toBe(false);
    expect(unmeasured.ok && unmeasured.value.interval95[1] / unmeasured.value.mmPerPx).toBeGreaterThan(1.029);
  });

  test('pieces serve their own rug only; pieces of two cards or beside a card with a window are told', async () => {
    const { picture, codes } = await read((spec) => ({ ...spec, tag: 'R-0417X' }));
    const [first, ...rest] = codes;
    if (first === undefined) throw new Error('no code');
    const other = { ...first, text: 'WEFTL-ZZZZZZ-A' };
    const two = readLooseCard(picture, [other, ...rest], { barMm: 100 });
    expect(!two.ok && two.problem.code).toBe('two-cards');
    const sheet = { ...first, text: 'WEFT-9P2X5W-A' };
    const both = readEitherCard(picture, [sheet, ...rest], { barMm: 100 });
    expect(!both.ok && both.problem).toMatchObject({
      code: 'two-cards',
      facts: { serials: expect.arrayContaining(['9P2X5W', '7K3M4Q']) },
    });
    const own = readEitherCard(picture, codes, { barMm: 100, tag: 'r-0417x' });
    expect(own.ok && [own.value.form, own.value.serial, own.value.tag]).toEqual([
      'loose',
      '7K3M4Q',
      'R-0417X',
    ]);
    const foreign = readEitherCard(picture, codes, { barMm: 100, tag: 'R-0500' });
    expect(!foreign.ok && foreign.problem).toEqual({
      code: 'card-other-tag',
      facts: { found: 'R-0417X', expected: 'R-0500' },
    });
  });

  test('a print two per cent longer one way is called stretched when the pieces lie parallel', async () => {
    const { reading } = await read((spec) => ({
      ...spec,
      printed: [1, 1.03],
      pieces: spec.pieces.map((piece) => ({ ...piece, turnDeg: 0 })),
      shot: { ...spec.shot, tiltDeg: 2, rollDeg: 0 },
    }));
    expect(!reading.ok && reading.problem.code).toBe('card-stretched');
  });
});

describe('the sheet of loose pieces', () => {
  test('has its bar of 100 mm and everything within the paper, on A4 and on letter', () => {
    const drawn = drawLooseCard({ serial: '7K3M4Q', tag: 'R-0417X', draw: zxingCodes.draw });
    if (!drawn.ok) throw new Error(drawn.problem.code);
    const long = drawLooseCard({ serial: '7K3M4Q', tag: 'R-0417XY', draw: zxingCodes.draw });
    expect(!long.ok && long.problem.code).toBe('card-tag-not-usable');
    for (const paper of ['a4', 'letter'] as const) {
      const pdf = new TextDecoder('latin1').decode(cardPdf(drawn.value, paper));
      // 1 in = 72 pt = 25.4 mm.
      expect(pdf).toContain(' 283.4646 ');
      const [, wide = 0, high = 0] = /MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)?.map(Number) ?? [];
      for (const [, x, y, w, h] of pdf.matchAll(/^[\d.]+ g ([-\d.]+) ([-\d.]+) ([\d.]+) ([\d.]+) re f$/gm)) {
        expect(Number(x)).toBeGreaterThan(0);
        expect(Number(y)).toBeGreaterThan(0);
        expect(Number(x) + Number(w)).toBeLessThan(wide);
        expect(Number(y) + Number(h)).toBeLessThan(high);
      }
    }
  });
});
