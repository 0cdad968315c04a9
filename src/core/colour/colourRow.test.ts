import { describe, expect, test } from 'vitest';
import { type ColourRow, colourRow } from './colourRow.ts';
import { drawDifferenceMap } from './drawDifferenceMap.ts';
import { type LinearRgb, linearFromByte } from './lab.ts';
import type { LinearPicture } from './linearPicture.ts';

type Bytes = readonly [number, number, number];
const lightOf = (bytes: Bytes): LinearRgb => bytes.map(linearFromByte) as unknown as LinearRgb;

/** A picture of one colour. */
const plain = (light: LinearRgb): LinearPicture => ({
  ...{ wide: 12, high: 12, clipped: new Float32Array(144) },
  rgb: Float32Array.from({ length: 432 }, (_, at) => light[at % 3] ?? 0),
});
const veiled = (colour: Bytes, soil: Bytes, share: number): LinearRgb => {
  const [p, q] = [lightOf(colour), lightOf(soil)];
  return p.map((light, band) => (1 - share) * light + share * (q[band] ?? 0)) as unknown as LinearRgb;
};
const doubt = { lightAt: () => 0.02, perAxis: 0.3, contrastSigma: 0.05 };
const row = (before: LinearRgb, after: LinearRgb) =>
  colourRow(
    plain(before),
    plain(after),
    { name: 'green', area: { x: 0, y: 0, width: 12, height: 12 } },
    doubt,
  ) as ColourRow;

const green: Bytes = [49, 82, 58];
const dust: Bytes = [95, 77, 48];

describe('a colour before and after', () => {
  test('unchanged grades 5 and its hue stays', () => {
    expect(row(lightOf(green), lightOf(green))).toMatchObject({ grade: '5', hueMoved: false });
  });
  test('under dust that went, its hue turns but did not move: soil explains it', () => {
    const washed = row(veiled(green, dust, 0.2), lightOf(green));
    expect(Math.abs(washed.hueTurnDeg)).toBeGreaterThan(3);
    expect(washed.hueMoved).toBe(false);
    expect(washed.grade).not.toBe('5');
  });
  test('a dye that shifted is flagged: no veil of soil makes olive of green or blue of red', () => {
    expect(row(lightOf(green), lightOf([77, 90, 44])).hueMoved).toBe(true);
    expect(row(lightOf([140, 30, 35]), lightOf([90, 40, 110])).hueMoved).toBe(true);
  });
  test('outside the second picture, or too small, it is left out with the reason', () => {
    const away = plain([Number.NaN, Number.NaN, Number.NaN]);
    const at = { name: 'green', area: { x: 0, y: 0, width: 12, height: 12 } };
    expect(colourRow(plain(lightOf(green)), away, at, doubt)).toEqual({ name: 'green', why: 'not-in-both' });
    const small = { name: 'green', area: { x: 0, y: 0, width: 3, height: 3 } };
    expect(colourRow(plain(lightOf(green)), plain(lightOf(green)), small, doubt)).toMatchObject({
      why: 'too-small',
    });
  });
});

test('a greater difference is drawn darker, and nothing to compare is drawn as neither', () => {
  const deltaE = Float32Array.from([0, 3, 6, 12, Number.NaN]);
  const { data } = drawDifferenceMap({ widthPx: 5, heightPx: 1, deltaE });
  const light = [0, 1, 2, 3].map(
    (at) => (data[3 * at] ?? 0) + (data[3 * at + 1] ?? 0) + (data[3 * at + 2] ?? 0),
  );
  expect(light).toEqual(light.toSorted((a, b) => b - a));
  expect(light).not.toContain((data[12] ?? 0) + (data[13] ?? 0) + (data[14] ?? 0));
});
