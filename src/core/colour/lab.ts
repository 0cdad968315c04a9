import srgb from '../../../data/colour/srgb.json' with { type: 'json' };

/** A colour in CIELAB under D65 for the 2° observer. */
export interface Lab {
  readonly L: number;
  readonly a: number;
  readonly b: number;
}

/** Red, green and blue proportional to light; 0 … 1 in the picture, above 1 after balancing is possible. */
export type LinearRgb = readonly [red: number, green: number, blue: number];

const tristimulus = ([x = 0, y = 1]: readonly number[]): LinearRgb => [x / y, 1, (1 - x - y) / y];

const determinant = (p: LinearRgb, q: LinearRgb, r: LinearRgb): number =>
  p[0] * (q[1] * r[2] - q[2] * r[1]) -
  q[0] * (p[1] * r[2] - p[2] * r[1]) +
  r[0] * (p[1] * q[2] - p[2] * q[1]);

const white = tristimulus(srgb.white);
const [red, green, blue] = [srgb.primaries.red, srgb.primaries.green, srgb.primaries.blue].map(
  tristimulus,
) as [LinearRgb, LinearRgb, LinearRgb];
const whole = determinant(red, green, blue);
/** How much of each primary makes the white, by Cramer's rule. */
const shares: LinearRgb = [
  determinant(white, green, blue) / whole,
  determinant(red, white, blue) / whole,
  determinant(red, green, white) / whole,
];

const linearOf = Float64Array.from({ length: 256 }, (_, byte) => {
  const { linearUpTo, slope, offset, exponent } = srgb.curve;
  const value = byte / 255;
  return value <= linearUpTo ? value / slope : ((value + offset) / (1 + offset)) ** exponent;
});

/**
 * Light of one sRGB channel.
 *
 * @param byte - channel of a picture [0 … 255, whole]
 * @returns linear value [0 … 1]
 * @source iec-61966-2-1, clause 5 (data/colour/srgb.json)
 */
export const linearFromByte = (byte: number): number => linearOf[byte] ?? Number.NaN;

const cubeRoot = (t: number): number => (t > (6 / 29) ** 3 ? Math.cbrt(t) : t / (3 * (6 / 29) ** 2) + 4 / 29);

/**
 * Colour of linear light in CIELAB, D65, 2° observer.
 *
 * @param light - linear sRGB [0 … 1 each]
 * @returns L* 0 … 100 with a* and b*
 * @source iso-cie-11664-4, the space; iec-61966-2-1, the primaries
 */
export function labFromLinear(light: LinearRgb): Lab {
  const of = (axis: 0 | 1 | 2): number =>
    light[0] * shares[0] * red[axis] + light[1] * shares[1] * green[axis] + light[2] * shares[2] * blue[axis];
  const [x, y, z] = [cubeRoot(of(0) / white[0]), cubeRoot(of(1)), cubeRoot(of(2) / white[2])];
  return { L: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/**
 * Colour of an sRGB pixel in CIELAB, D65, 2° observer.
 *
 * @param pixel - red, green, blue [0 … 255, whole]
 * @returns L* 0 … 100 with a* and b*
 * @source iec-61966-2-1, clause 5
 */
export const labFromSrgb = (pixel: LinearRgb): Lab =>
  labFromLinear([linearFromByte(pixel[0]), linearFromByte(pixel[1]), linearFromByte(pixel[2])]);

/**
 * Light a neutral surface of a lightness sends back.
 *
 * @param lightness - L* [8 … 100]
 * @returns share of the white's light [0 … 1]
 * @source iso-cie-11664-4, lightness solved for the luminance
 */
export const luminanceOfLightness = (lightness: number): number => ((lightness + 16) / 116) ** 3;
