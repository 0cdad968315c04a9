import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import limits from '../../../data/colour/compare.json' with { type: 'json' };
import { type CardReading, unproject } from '../card/index.ts';
import { type CardLight, cardLight } from './cardLight.ts';
import { colourDifference } from './fastnessGrade.ts';
import { type Lab, type LinearRgb, labFromLinear } from './lab.ts';
import { type ByteLight, evened, type LinearPicture, shrunk } from './linearPicture.ts';
import { looseLight, onLoosePiece } from './looseLight.ts';
import type { ColourPicture } from './measureArea.ts';
import type { CardPicture } from './readCardBlot.ts';

/** The light over a picture, by whichever form of the card lies in it. */
export const lightOf = ({ picture, card }: CardPicture) =>
  card.form === 'loose' ? looseLight(card) : cardLight(picture, card);

/** The picture made smaller and corrected; its light evened out where pieces all round tell it. */
export function corrected(
  picture: ColourPicture,
  light: CardLight,
  table: ByteLight,
  contrast: number,
  by: number,
) {
  const small = shrunk(picture, table, by);
  const { gain, paper } = light;
  if (gain === null) return small;
  return evened(small, by, (x, y) => {
    const here = gain(x, y);
    const of = (channel: 0 | 1 | 2): number => (here[channel] / paper[channel]) ** (1 / contrast);
    return [of(0), of(1), of(2)];
  });
}

/** A picture without its card and the paper around that, which hide the rug. */
export function withoutCard(picture: LinearPicture, by: number, card: CardReading): LinearPicture {
  const printed = card.halfWindowMm / (geometry.window / 2);
  const { across, up, down } = limits.cardReach;
  const onWindowCard = (x: number, y: number): boolean => {
    const [mmX, mmY] = unproject(card.homography, x, y);
    return Math.abs(mmX) < across * printed && mmY > -up * printed && mmY < down * printed;
  };
  const isHidden = card.form === 'loose' ? onLoosePiece(card) : onWindowCard;
  const rgb = picture.rgb.slice();
  for (let at = 0; at < picture.clipped.length; at += 1) {
    const [x, y] = [((at % picture.wide) + 0.5) * by, (Math.floor(at / picture.wide) + 0.5) * by];
    if (isHidden(x, y)) rgb.fill(Number.NaN, 3 * at, 3 * at + 3);
  }
  return { ...picture, rgb };
}

/** How far the greys of each side differ between the pictures when both are corrected. */
export function controlDifference(
  was: CardLight,
  is: CardLight,
  correct: readonly ((light: LinearRgb) => Lab)[],
): number {
  const [ofBefore, ofAfter] = correct;
  if (ofBefore === undefined || ofAfter === undefined) return Number.NaN;
  const steps = was.greys
    .filter(({ printed }) => printed > 0)
    .flatMap(({ printed, sides }) => {
      const other = is.greys.find((grey) => grey.printed === printed)?.sides ?? [];
      return sides.flatMap((light, side) => {
        const second = other[side];
        return second === undefined ? [] : [colourDifference(ofBefore(light), ofAfter(second)) ** 2];
      });
    });
  return Math.sqrt(steps.reduce((sum, step) => sum + step, 0) / steps.length);
}

/** Colour of light relative to the paper, through the table of bytes that corrected its picture. */
export const through =
  (light: CardLight, table: ByteLight) =>
  (relative: LinearRgb): Lab => {
    const of = (channel: 0 | 1 | 2): number => {
      const values = table[channel];
      const wanted = relative[channel] * light.paper[channel];
      // The byte of this light, between two of the table.
      const byte = wanted <= 0.0031308 ? 255 * 12.92 * wanted : 255 * (1.055 * wanted ** (1 / 2.4) - 0.055);
      const left = Math.min(254, Math.max(0, Math.floor(byte)));
      return (values[left] ?? 0) + (byte - left) * ((values[left + 1] ?? 0) - (values[left] ?? 0));
    };
    return labFromLinear([of(0), of(1), of(2)]);
  };
