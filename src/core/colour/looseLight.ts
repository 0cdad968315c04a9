import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import blotLimits from '../../../data/colour/blot.json' with { type: 'json' };
import limits from '../../../data/colour/looseLight.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import { type CardReading, type Patch, unproject } from '../card/index.ts';
import type { CardGrey, CardLight } from './cardLight.ts';
import type { BlotProblem } from './colourProblem.ts';
import { contrastOf } from './contrast.ts';
import { type LinearRgb, linearFromByte, luminanceOfLightness } from './lab.ts';
import { lightPlane } from './lightPlane.ts';

const { levels, centres, y: patchesTop, high } = geometry.loose.patches;
const white = levels[0] ?? 255;

/** Light of a byte that is a mean of bytes, between the two whole ones. */
const linearOf = (byte: number): number => {
  const left = Math.min(254, Math.floor(byte));
  return linearFromByte(left) + (byte - left) * (linearFromByte(left + 1) - linearFromByte(left));
};

const lightOf = ({ red, green, blue }: Patch): LinearRgb => [linearOf(red), linearOf(green), linearOf(blue)];

const meanOf = (lights: readonly LinearRgb[]): LinearRgb => {
  const of = (channel: 0 | 1 | 2): number =>
    lights.reduce((sum, light) => sum + light[channel], 0) / lights.length;
  return [of(0), of(1), of(2)];
};

const ratio = (p: LinearRgb, q: LinearRgb): LinearRgb => [p[0] / q[0], p[1] / q[1], p[2] / q[2]];

/**
 * The light over a whole rug, from the white and the greys of the loose pieces at its corners.
 *
 * @param card - from `readLooseCard`
 * @returns the balance: a plane of light through the pieces' white; greys are told from the white of their own piece
 * @refuses blot-clipped - a white too bright or too dark; blot-card-cut-off - fewer than three whites seen;
 * blot-card-too-small - greys fewer than four pixels wide where measured; blot-light-uneven - as lightPlane
 * @source workshop-setting (data/colour/looseLight.json); a plane by least squares in linear light
 */
export function looseLight(card: CardReading): Result<CardLight, BlotProblem> {
  const { wide } = geometry.loose.patches;
  if (!((0.6 * wide) / card.mmPerPx >= limits.leastPxAcross))
    return refused('blot-card-too-small', { mmPerPx: card.mmPerPx });
  const whites = card.patches.filter(({ printed, red }) => printed === white && Number.isFinite(red));
  const burnt = whites.filter(({ clipped }) => clipped).length;
  if (burnt > 0)
    return refused('blot-clipped', {
      name: 'card',
      sharePercent: Math.round((100 * burnt) / whites.length),
    });
  if (whites.length < limits.leastPieces)
    return refused('blot-card-cut-off', { seenPercent: Math.round((100 * whites.length) / 4) });

  const places = whites.map((patch) => {
    const [x, y] = patch.middle;
    return { x, y, light: lightOf(patch), blocks: [] };
  });
  const plane = lightPlane(places, []);
  if (!plane.ok) return plane;
  if (plane.value.shape !== 'plane')
    return refused('blot-card-cut-off', { seenPercent: Math.round((100 * whites.length) / 4) });

  const paper = luminanceOfLightness(blotLimits.paperLightness);
  const one: LinearRgb = [1, 1, 1];
  const gain = (x: number, y: number): LinearRgb => {
    const balanced = plane.value.balance({ x, y, light: one });
    return [paper / balanced[0], paper / balanced[1], paper / balanced[2]];
  };
  const off = places.flatMap(({ x, y, light }) => ratio(light, gain(x, y)).map((share) => (share - 1) ** 2));
  const greys = levels.map((printed): CardGrey => {
    const sides = whites.flatMap((paperHere) => {
      const grey = card.patches.find((patch) => patch.side === paperHere.side && patch.printed === printed);
      return grey === undefined || grey.clipped ? [] : [ratio(lightOf(grey), lightOf(paperHere))];
    });
    return { printed, sides, middle: meanOf(sides) };
  });
  const { contrast, contrastSigma } = contrastOf(greys);
  return done({
    balance: ({ x, y, light }) => {
      const at = gain(x, y);
      const of = (channel: 0 | 1 | 2): number => paper * (light[channel] / at[channel]) ** (1 / contrast);
      return [of(0), of(1), of(2)];
    },
    paper: meanOf(places.map(({ light }) => light)),
    gain,
    fallPerMm: [0, 0],
    offShare: Math.max(limits.leastOff, Math.sqrt(off.reduce((sum, step) => sum + step, 0) / off.length)),
    ...{ greys, contrast, contrastSigma },
  });
}

/** Whether a place of the picture lies on one of the loose pieces [px]. */
export function onLoosePiece(card: CardReading): (x: number, y: number) => boolean {
  const { left, top, width, height } = geometry.loose;
  const [near = 0, far = 1] = [centres[0], centres.at(-1)];
  const pieces = card.patches.flatMap((first) => {
    const last = card.patches.find(
      ({ side, printed }) => side === first.side && printed === levels.at(-1) && first.printed === white,
    );
    if (last === undefined) return [];
    const [x0, y0] = unproject(card.homography, ...first.middle);
    const [x1, y1] = unproject(card.homography, ...last.middle);
    return [{ x0, y0, ex: (x1 - x0) / (far - near), ey: (y1 - y0) / (far - near) }];
  });
  return (x, y) => {
    const [mmX, mmY] = unproject(card.homography, x, y);
    return pieces.some(({ x0, y0, ex, ey }) => {
      const size = ex * ex + ey * ey;
      const u = ((mmX - x0) * ex + (mmY - y0) * ey) / size + near;
      const v = ((mmY - y0) * ex - (mmX - x0) * ey) / size + patchesTop + high / 2;
      const edge = limits.edgeMm;
      return u > left - edge && u < left + width + edge && v > top - edge && v < top + height + edge;
    });
  };
}
