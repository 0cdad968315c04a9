import limits from '../../../data/colour/blot.json' with { type: 'json' };
import { type Homography, project } from '../card/index.ts';
import type { LinearRgb } from './lab.ts';
import type { ColourPicture } from './measureArea.ts';

/** A picture as light: three values a pixel, NaN where nothing was photographed, with the share lost to clipping. */
export interface LinearPicture {
  readonly wide: number;
  readonly high: number;
  readonly rgb: Float32Array;
  readonly clipped: Float32Array;
}

/** What each byte of a channel stands for, as light. */
export type ByteLight = readonly [red: Float64Array, green: Float64Array, blue: Float64Array];

/** A picture made smaller by whole steps: the mean light of squares of `by` pixels. */
export function shrunk(picture: ColourPicture, lightOf: ByteLight, by: number): LinearPicture {
  const { widthPx, heightPx, data } = picture;
  const [wide, high] = [Math.floor(widthPx / by), Math.floor(heightPx / by)];
  const rgb = new Float32Array(3 * wide * high);
  const clipped = new Float32Array(wide * high);
  const [red, green, blue] = lightOf;
  for (let y = 0; y < high * by; y += 1)
    for (let x = 0; x < wide * by; x += 1) {
      const from = 3 * (y * widthPx + x);
      const to = Math.floor(y / by) * wide + Math.floor(x / by);
      const [r = 0, g = 0, b = 0] = [data[from], data[from + 1], data[from + 2]];
      rgb[3 * to] = (rgb[3 * to] ?? 0) + (red[r] ?? 0);
      rgb[3 * to + 1] = (rgb[3 * to + 1] ?? 0) + (green[g] ?? 0);
      rgb[3 * to + 2] = (rgb[3 * to + 2] ?? 0) + (blue[b] ?? 0);
      if (
        r >= limits.clippedFrom ||
        g >= limits.clippedFrom ||
        b >= limits.clippedFrom ||
        r <= limits.clippedTo ||
        g <= limits.clippedTo ||
        b <= limits.clippedTo
      )
        clipped[to] = (clipped[to] ?? 0) + 1;
    }
  const share = 1 / (by * by);
  return { wide, high, rgb: rgb.map((sum) => sum * share), clipped: clipped.map((sum) => sum * share) };
}

/** A picture as if its light had been even; `share` is the light of a whole picture's pixel over the mean light. */
export function evened(
  picture: LinearPicture,
  by: number,
  share: (x: number, y: number) => LinearRgb,
): LinearPicture {
  const rgb = picture.rgb.slice();
  for (let at = 0; at < picture.clipped.length; at += 1) {
    const [x, y] = [((at % picture.wide) + 0.5) * by, (Math.floor(at / picture.wide) + 0.5) * by];
    const here = share(x, y);
    for (let band = 0; band < 3; band += 1)
      rgb[3 * at + band] = (rgb[3 * at + band] ?? 0) / (here[band] ?? Number.NaN);
  }
  return { ...picture, rgb };
}

/**
 * A picture seen through a homography, in a frame of the size asked for.
 *
 * @param h - pixels of the frame to pixels of the picture
 */
export function seenThrough(source: LinearPicture, h: Homography, wide: number, high: number): LinearPicture {
  const rgb = new Float32Array(3 * wide * high).fill(Number.NaN);
  const clipped = new Float32Array(wide * high);
  for (let y = 0; y < high; y += 1)
    for (let x = 0; x < wide; x += 1) {
      const [px, py] = project(h, x, y);
      const [left, top] = [Math.floor(px), Math.floor(py)];
      if (!(left >= 0 && top >= 0 && left < source.wide - 1 && top < source.high - 1)) continue;
      const [fx, fy] = [px - left, py - top];
      const at = top * source.wide + left;
      const below = at + source.wide;
      const to = y * wide + x;
      for (let band = 0; band < 3; band += 1)
        rgb[3 * to + band] =
          ((source.rgb[3 * at + band] ?? 0) * (1 - fx) + (source.rgb[3 * at + 3 + band] ?? 0) * fx) *
            (1 - fy) +
          ((source.rgb[3 * below + band] ?? 0) * (1 - fx) + (source.rgb[3 * below + 3 + band] ?? 0) * fx) *
            fy;
      clipped[to] = source.clipped[at] ?? 0;
    }
  return { wide, high, rgb, clipped };
}

const byteOf = (light: number): number =>
  255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);

const bytes = Uint8Array.from({ length: 4096 }, (_, at) => Math.round(byteOf(at / 4095)));

/** The picture as sRGB bytes, to be shown; black where nothing was photographed. */
export function shownPicture({ wide, high, rgb }: LinearPicture): ColourPicture {
  const data = new Uint8Array(rgb.length);
  for (let at = 0; at < data.length; at += 1)
    data[at] = bytes[Math.round(4095 * Math.min(1, Math.max(0, rgb[at] ?? 0)))] ?? 0;
  return { widthPx: wide, heightPx: high, data };
}

/** Mean of squares around each pixel, where both pictures show something inside the rug. */
export function softened(
  { wide, high, rgb, clipped }: LinearPicture,
  reach: number,
  held: Uint8Array,
): LinearPicture {
  const out = new Float32Array(rgb.length).fill(Number.NaN);
  for (let band = 0; band < 3; band += 1) {
    const total = new Float64Array((wide + 1) * (high + 1));
    const count = new Float64Array((wide + 1) * (high + 1));
    for (let y = 0; y < high; y += 1)
      for (let x = 0; x < wide; x += 1) {
        const at = y * wide + x;
        const to = (y + 1) * (wide + 1) + x + 1;
        const on = held[at] === 1;
        total[to] =
          (on ? (rgb[3 * at + band] ?? 0) : 0) +
          (total[to - 1] ?? 0) +
          (total[to - wide - 1] ?? 0) -
          (total[to - wide - 2] ?? 0);
        count[to] =
          (on ? 1 : 0) + (count[to - 1] ?? 0) + (count[to - wide - 1] ?? 0) - (count[to - wide - 2] ?? 0);
      }
    for (let y = 0; y < high; y += 1)
      for (let x = 0; x < wide; x += 1) {
        if (held[y * wide + x] !== 1) continue;
        const [x0, y0] = [Math.max(0, x - reach), Math.max(0, y - reach)];
        const [x1, y1] = [Math.min(wide, x + reach + 1), Math.min(high, y + reach + 1)];
        const of = (sums: Float64Array): number =>
          (sums[y1 * (wide + 1) + x1] ?? 0) -
          (sums[y0 * (wide + 1) + x1] ?? 0) -
          (sums[y1 * (wide + 1) + x0] ?? 0) +
          (sums[y0 * (wide + 1) + x0] ?? 0);
        out[3 * (y * wide + x) + band] = of(total) / of(count);
      }
  }
  return { wide, high, rgb: out, clipped };
}
