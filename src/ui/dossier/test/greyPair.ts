import table from '../../../../data/wash/greyScales.json' with { type: 'json' };
import type { Grade } from '../../../core/wash/index.ts';

export type GreyScale = 'staining' | 'change';

/** CIELAB lightness 0 … 100 of a neutral grey as an sRGB colour. */
const greyOf = (lightness: number): string => {
  const luminance = lightness > 8 ? ((lightness + 16) / 116) ** 3 : lightness / 903.3;
  const coded = luminance <= 0.0031308 ? 12.92 * luminance : 1.055 * luminance ** (1 / 2.4) - 0.055;
  const byte = Math.round(Math.min(1, Math.max(0, coded)) * 255);
  return `rgb(${byte} ${byte} ${byte})`;
};

/** The two greys of a step as far as a screen can show them: the unchanged one, then the changed one. */
export const greyPair = (scale: GreyScale, grade: Grade): readonly [string, string] => {
  const row = table.rows.find((one) => one.grade === grade);
  const difference = row?.[scale] ?? 0;
  return scale === 'staining'
    ? [greyOf(table.whiteLightness), greyOf(table.whiteLightness - difference)]
    : [greyOf(table.greyLightness), greyOf(table.greyLightness + difference)];
};
