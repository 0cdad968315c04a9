import limits from '../../../data/colour/cardLight.json' with { type: 'json' };
import type { CardGrey } from './cardLight.ts';

/**
 * Contrast of a picture near white: what a phone's tone curve makes of a difference.
 *
 * How dark a printer made the greys is known only roughly, so they move the usual contrast by no more than that
 * knowledge is worth.
 *
 * @param greys - light of the printed levels relative to the paper
 * @returns contrast, 1 where the picture is true, with its standard deviation
 * @source none: two normal beliefs multiplied (data/colour/cardLight.json)
 */
export function contrastOf(greys: readonly CardGrey[]): {
  readonly contrast: number;
  readonly contrastSigma: number;
} {
  const { usual, sigma } = limits.contrast;
  const { reflectance, logSigma } = limits.printedRelative['178'];
  const green = greys.find(({ printed }) => printed === 178)?.middle[1];
  if (green === undefined || !(green > 0 && green < 1)) return { contrast: usual, contrastSigma: sigma };
  const seen = Math.log(green) / Math.log(reflectance);
  const seenSigma = logSigma / -Math.log(reflectance);
  const [prior, evidence] = [1 / sigma ** 2, 1 / seenSigma ** 2];
  return {
    contrast: (usual * prior + seen * evidence) / (prior + evidence),
    contrastSigma: 1 / Math.sqrt(prior + evidence),
  };
}
