import limits from '../../../data/colour/blot.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import type { AreaName, BlotProblem } from './colourProblem.ts';
import { type LinearRgb, linearFromByte } from './lab.ts';

/** A picture in sRGB, rows from the top, three bytes a pixel. */
export interface ColourPicture {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly data: Uint8Array;
}

/** A rectangle of whole pixels from the upper left corner. */
export interface Area {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** The light of an area: of the whole and of its blocks, each with its middle in pixels. */
export interface AreaLight {
  readonly x: number;
  readonly y: number;
  readonly light: LinearRgb;
  readonly blocks: readonly {
    readonly x: number;
    readonly y: number;
    readonly light: LinearRgb;
  }[];
}

const middle = (values: Float64Array): number => values.toSorted()[values.length >> 1] ?? Number.NaN;

export const areasOverlap = (p: Area, q: Area): boolean =>
  p.x < q.x + q.width && q.x < p.x + p.width && p.y < q.y + q.height && q.y < p.y + p.height;

/** Mean of what remains when pixels far from the median in any channel are left out, and how much remains. */
export function robustLight(pixels: readonly LinearRgb[]): {
  readonly light: LinearRgb;
  readonly kept: number;
} {
  const bounds = ([0, 1, 2] as const).map((channel) => {
    const values = Float64Array.from(pixels, (pixel) => pixel[channel]);
    const centre = middle(values);
    // 1.4826 turns the median deviation of normal noise into its standard deviation; the floor is the
    // light of one step of 8 bits near white.
    const spread = Math.max(
      1.4826 * middle(values.map((value) => Math.abs(value - centre))),
      linearFromByte(255) - linearFromByte(254),
    );
    return { centre, reach: limits.outlierDeviations * spread };
  });
  const kept = pixels.filter((pixel) =>
    bounds.every(({ centre, reach }, channel) => Math.abs((pixel[channel] ?? Number.NaN) - centre) <= reach),
  );
  const mean = (channel: 0 | 1 | 2): number =>
    kept.reduce((sum, pixel) => sum + pixel[channel], 0) / kept.length;
  return { light: [mean(0), mean(1), mean(2)], kept: kept.length / pixels.length };
}

/**
 * Light of an area without its threads, lint and specks.
 *
 * @param picture - sRGB picture
 * @param area - whole pixels inside it, at least 18 on a side
 * @param name - what the area is to the person
 * @returns linear light of the area and of its 3 × 3 blocks
 * @refuses blot-area-outside, blot-area-too-small; blot-clipped - more than 2 % of the pixels with a channel
 * ≥ 250 or ≤ 5; blot-area-mixed - less than 75 % of the pixels belong together
 * @source workshop-setting (data/colour/blot.json); the mean of what lies within three median deviations
 */
export function measureArea(
  picture: ColourPicture,
  area: Area,
  name: AreaName,
): Result<AreaLight, BlotProblem> {
  const { widthPx: width, heightPx: height, data } = picture;
  const whole = [area.x, area.y, area.width, area.height].every((n) => Number.isInteger(n) && n >= 0);
  if (!whole || area.x + area.width > width || area.y + area.height > height)
    return refused('blot-area-outside', { name, area, width, height });
  const { leastSidePx, blocksPerSide } = limits;
  if (Math.min(area.width, area.height) < leastSidePx)
    return refused('blot-area-too-small', { name, area, leastSidePx });

  const all: LinearRgb[] = [];
  const blocks = Array.from({ length: blocksPerSide ** 2 }, (): LinearRgb[] => []);
  let clipped = 0;
  for (let row = 0; row < area.height; row += 1)
    for (let column = 0; column < area.width; column += 1) {
      const at = ((area.y + row) * width + area.x + column) * 3;
      const [r = 0, g = 0, b = 0] = [data[at], data[at + 1], data[at + 2]];
      if (Math.max(r, g, b) >= limits.clippedFrom || Math.min(r, g, b) <= limits.clippedTo) clipped += 1;
      const pixel: LinearRgb = [linearFromByte(r), linearFromByte(g), linearFromByte(b)];
      all.push(pixel);
      const down = Math.floor((row * blocksPerSide) / area.height);
      const along = Math.floor((column * blocksPerSide) / area.width);
      blocks[down * blocksPerSide + along]?.push(pixel);
    }
  const clippedShare = clipped / all.length;
  if (clippedShare > limits.clippedShare)
    return refused('blot-clipped', { name, sharePercent: Math.round(100 * clippedShare) });
  const { light, kept } = robustLight(all);
  if (kept < limits.keptShare)
    return refused('blot-area-mixed', { name, keptPercent: Math.round(100 * kept) });
  return done({
    ...{ x: area.x + area.width / 2, y: area.y + area.height / 2, light },
    blocks: blocks.map((pixels, index) => ({
      x: area.x + (((index % blocksPerSide) + 0.5) * area.width) / blocksPerSide,
      y: area.y + ((Math.floor(index / blocksPerSide) + 0.5) * area.height) / blocksPerSide,
      light: robustLight(pixels).light,
    })),
  });
}
