import { describe, expect, test } from 'vitest';
import {
  drawLoomPicture,
  drawRug,
  drawShot,
  type LoomPicture,
  type RugSpec,
  seeded,
  weaveOnLoom,
  wools,
} from '../../../bench/loom/index.ts';
import { drawNotWoven } from '../../../bench/loom/notWoven.ts';
import { countWeave } from './countWeave.ts';
import { overlayStrokes } from './overlay.ts';
import type { Picture } from './picture.ts';

/** A plain rug of known make; what a test changes is what it is about. */
function weave(change: Partial<RugSpec>, tilt = 0): LoomPicture {
  const chance = seeded(31);
  const drawn = drawRug(chance);
  const rug: RugSpec = {
    ...drawn,
    weftwiseKnotsPer7cm: 40,
    warpwiseKnotsPer7cm: 40,
    knot: 'symmetric',
    depressionDeg: 80,
    wefts: 1,
    weftShare: 0.08,
    weftColour: wools.ivory,
    offset: false,
    pairing: 0.01,
    warpJitter: 0.02,
    rowJitter: 0.02,
    nodeJitter: 0.05,
    waviness: 0.1,
    drift: 0.005,
    skewDeg: 0,
    plyDepth: 0.05,
    hair: 0.05,
    relief: 0.9,
    dirt: 0,
    design: {
      kind: 'curves',
      colours: [wools.madder, wools.ivory, wools.indigo],
      motifKnots: [12, 12],
      abrash: 0.05,
    },
    ...change,
  };
  const shot = {
    ...drawShot(chance, rug, 14),
    widthPx: 560,
    heightPx: 520,
    rollDeg: 3,
    tiltDeg: tilt,
    blurPx: 0.7,
    noise: 4,
  };
  return weaveOnLoom(chance, rug, shot);
}

const asPicture = ({
  width,
  height,
  rgb,
}: {
  readonly width: number;
  readonly height: number;
  readonly rgb: Uint8Array;
}): Picture => ({ width, height, channels: 3, data: rgb });

const countOf = (picture: Picture, options = {}) => {
  const counted = countWeave(picture, options);
  if (!counted.ok) throw new Error(counted.problem.code);
  return counted.value;
};

const share = (value: number, truth: number): number => Math.abs(value / truth - 1);

describe('counting a weave', () => {
  const loom = weave({});
  const picture = asPicture(loom);
  const count = countOf(picture);

  test('columns and rows of a clean back are found within two per cent', () => {
    expect(share(count.weftwise.pitchPx, loom.truth.knotPx)).toBeLessThan(0.02);
    expect(share(count.warpwise.pitchPx, loom.truth.rowPx)).toBeLessThan(0.02);
    expect(Math.abs(count.angleDeg - loom.truth.angleDeg)).toBeLessThan(1.5);
  });

  test('every strip is a count with its fractions, and agrees with the pitch', () => {
    const { strips, pitchPx } = count.weftwise;
    const clear = strips.filter((strip) => strip.clear > 0.9);
    expect(clear.length).toBeGreaterThan(strips.length / 2);
    const middle =
      clear.map((strip) => strip.lengthPx / strip.count).sort((a, b) => a - b)[clear.length >> 1] ?? 0;
    expect(share(middle, pitchPx)).toBeLessThan(0.04);
    expect(overlayStrokes(count).length).toBeGreaterThan(60);
  });

  test('the same picture gives the same count', () => {
    expect(countOf(picture)).toEqual(count);
  });

  test('two taps decide the factor, the picture refines it', () => {
    const twice = 2 * loom.truth.knotPx;
    const angle = (loom.truth.angleDeg * Math.PI) / 180;
    const [x, y] = [loom.width / 2, loom.height / 2];
    const reach = 4.1 * twice;
    const tapped = countOf(picture, {
      taps: [
        {
          from: [x - (reach / 2) * Math.cos(angle), y - (reach / 2) * Math.sin(angle)],
          to: [x + (reach / 2) * Math.cos(angle), y + (reach / 2) * Math.sin(angle)],
          repeats: 4,
        },
      ],
    });
    expect([tapped.weftwise.basis, tapped.warpwise.basis]).toEqual(['tapped', 'automatic']);
    expect(share(tapped.weftwise.pitchPx, twice)).toBeLessThan(0.06);
  });

  test('a confirmed pair is kept and called confirmed', () => {
    const confirmed = countOf(picture, {
      confirmed: { weftwisePx: count.weftwise.pitchPx, warpwisePx: count.warpwise.pitchPx },
    });
    expect([confirmed.weftwise.basis, confirmed.warpwise.basis]).toEqual(['confirmed', 'confirmed']);
    expect(share(confirmed.warpwise.pitchPx, loom.truth.rowPx)).toBeLessThan(0.02);
  });

  test('what stays open is refused with every reading, and a person’s choice is counted', () => {
    const level = drawLoomPicture(seeded(700), 6);
    const shown = asPicture(level);
    const open = countWeave(shown);
    if (open.ok || open.problem.code !== 'weave-undecided') throw new Error('the picture is not left open');
    const { candidates } = open.problem.facts;
    const fair = (pitchPx: number) => share(pitchPx, level.truth.knotPx) < 0.03;
    const right = candidates.find(({ weftwise }) => fair(weftwise));
    expect(candidates.some(({ weftwise }) => fair(2 * weftwise))).toBe(true);
    if (right === undefined) throw new Error('the true reading is not offered');
    const chosen = countOf(shown, {
      confirmed: { weftwisePx: right.weftwise, warpwisePx: right.warpwise },
    });
    expect(fair(chosen.weftwise.pitchPx)).toBe(true);
  });

  test('a window in the picture is counted by itself', () => {
    const part = countOf(picture, { window: { x: 100, y: 80, width: 380, height: 360 } });
    expect(share(part.weftwise.pitchPx, loom.truth.knotPx)).toBeLessThan(0.03);
  });

  test('level warps show twice as many columns as knots', () => {
    const level = weave({ depressionDeg: 0, weftwiseKnotsPer7cm: 20 });
    const counted = countOf(asPicture(level));
    expect(share(counted.weftwise.pitchPx, level.truth.knotPx / 2)).toBeLessThan(0.03);
  });
});

describe('a count is refused', () => {
  const code = (picture: Picture, options = {}): string => {
    const counted = countWeave(picture, options);
    return counted.ok ? 'answered' : counted.problem.code;
  };
  const loom = asPicture(weave({}));

  test('when the picture is 20 by 20 px', () => {
    expect(code({ width: 20, height: 20, channels: 3, data: new Uint8Array(1200) })).toBe(
      'weave-picture-too-small',
    );
  });

  test('when the picture is black', () => {
    expect(code({ width: 300, height: 300, channels: 3, data: new Uint8Array(270_000) })).toBe(
      'weave-not-seen',
    );
  });

  test.each(['plain paper', 'pile side', 'screen'] as const)('or at least not sure, of %s', (kind) => {
    for (const seed of [1, 2]) {
      const counted = countWeave(asPicture(drawNotWoven(seeded(seed), kind)));
      if (counted.ok)
        expect(Math.min(counted.value.weftwise.confidence, counted.value.warpwise.confidence)).toBeLessThan(
          0.8,
        );
    }
  });

  test.each([
    [{ x: 500, y: 0, width: 200, height: 200 }],
    [{ x: -1, y: 0, width: 200, height: 200 }],
    [{ x: 0.5, y: 0, width: 200, height: 200 }],
    [{ x: 0, y: 0, width: 0, height: 0 }],
  ])('when the window %j is not in the picture', (window) => {
    expect(code(loom, { window })).toBe('weave-window-outside');
  });

  test('when taps lie along no axis, too close, over too few, or twice along one axis', () => {
    const taps = (x: number, y: number, repeats: number) => ({
      from: [100, 100],
      to: [100 + x, 100 + y],
      repeats,
    });
    for (const bad of [
      [taps(150, 150, 5)],
      [taps(10, 0, 8)],
      [taps(200, 0, 1)],
      [taps(200, 10, 10), taps(220, 8, 11)],
    ])
      expect(code(loom, { taps: bad })).toBe('taps-not-usable');
  });
});
