import blotLimits from '../../../data/colour/blot.json' with { type: 'json' };
import type { CardGrey, CardLight } from './cardLight.ts';
import { linearFromByte, luminanceOfLightness } from './lab.ts';
import type { ByteLight } from './linearPicture.ts';

/** A curve in logarithms, straight between its points and with the slope of its last pieces beyond them. */
function throughPoints(points: readonly (readonly [from: number, to: number])[]): (value: number) => number {
  return (value) => {
    const at = Math.log(Math.max(1e-5, value));
    let index = 1;
    while (index < points.length - 1 && at < (points[index]?.[0] ?? 0)) index += 1;
    const [[x0, y0], [x1, y1]] = [points[index - 1] ?? [0, 0], points[index] ?? [1, 1]];
    return Math.exp(y0 + ((at - x0) / (x1 - x0)) * (y1 - y0));
  };
}

/** From the light of one picture's greys to that of another's, channel by channel; both relative to their paper. */
function greyCurve(from: readonly CardGrey[], to: readonly CardGrey[], channel: 0 | 1 | 2) {
  const points: [number, number][] = [[0, 0]];
  for (const grey of from.toSorted((p, q) => q.printed - p.printed)) {
    const other = to.find(({ printed }) => printed === grey.printed);
    const [x, y] = [Math.log(grey.middle[channel]), Math.log(other?.middle[channel] ?? Number.NaN)];
    const last = points.at(-1)?.[0] ?? 0;
    // Greys too close to tell apart, or not seen, make no point.
    if (grey.printed < 255 && Number.isFinite(x) && Number.isFinite(y) && x < last - 0.1) points.push([x, y]);
  }
  return points.length < 2 ? (value: number) => value : throughPoints(points);
}

/**
 * What the bytes of a picture stand for as light of a surface, by the paper and greys of its card.
 *
 * @param light - of the picture, from `cardLight`
 * @param like - of the picture whose tone curve is taken over, when both show the same card
 * @param contrast - of that tone curve
 * @returns light of each byte of each channel; the card's paper has L* 95
 * @source none: greys of one card matched in the logarithm of linear light
 */
export function byteLight(light: CardLight, like: CardLight | null, contrast: number): ByteLight {
  const paper = luminanceOfLightness(blotLimits.paperLightness);
  const of = (channel: 0 | 1 | 2): Float64Array => {
    const curve = like === null ? (value: number) => value : greyCurve(light.greys, like.greys, channel);
    return Float64Array.from({ length: 256 }, (_, byte) => {
      const seen = linearFromByte(byte) / light.paper[channel];
      return paper * Math.max(0, curve(seen)) ** (1 / contrast);
    });
  };
  return [of(0), of(1), of(2)];
}
