import geometry from '../../../data/card/geometry.json' with { type: 'json' };
import blotLimits from '../../../data/colour/blot.json' with { type: 'json' };
import limits from '../../../data/colour/cardLight.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import { type CardReading, project, solve, unproject } from '../card/index.ts';
import type { BlotProblem } from './colourProblem.ts';
import { contrastOf } from './contrast.ts';
import { type LinearRgb, linearFromByte, luminanceOfLightness } from './lab.ts';
import type { Balance } from './lightPlane.ts';
import { type ColourPicture, robustLight } from './measureArea.ts';

/** One printed level of the card, as light relative to its paper, for each side of the window. */
export interface CardGrey {
  readonly printed: number;
  readonly sides: readonly LinearRgb[];
  readonly middle: LinearRgb;
}

/** What the card tells of the light in its picture. */
export interface CardLight {
  /** Light of a place of the picture as white paper under even white light would give it. */
  readonly balance: Balance;
  /** Light of the paper, mean over the card. */
  readonly paper: LinearRgb;
  /** Light of paper at a place of the picture [px] where pieces all round tell it; null where one card cannot. */
  readonly gain: ((x: number, y: number) => LinearRgb) | null;
  /** How the light of the paper grows along the card's x and y [share per mm]. */
  readonly fallPerMm: readonly [x: number, y: number];
  /** How far the paper lies from the fitted light, root mean square [share]. */
  readonly offShare: number;
  readonly greys: readonly CardGrey[];
  /** Logarithm of the light in the picture over that of the surface; 1 is a true picture. */
  readonly contrast: number;
  readonly contrastSigma: number;
}

interface Strip {
  readonly u: number;
  readonly v: number;
  readonly light: LinearRgb;
}

/** Light of a rectangle of the card [mm as drawn, by its middle and size]; null when it is not wholly seen. */
function lightOn(
  picture: ColourPicture,
  card: CardReading,
  [x, y]: readonly [number, number],
  [width, height]: readonly [number, number],
): { readonly light: LinearRgb; readonly clipped: number } | null {
  const printed = card.halfWindowMm / (geometry.window / 2);
  const step = Math.max(card.mmPerPx / printed, Math.min(width, height) / 12);
  const pixels: LinearRgb[] = [];
  let clipped = 0;
  for (let dy = -height / 2 + step / 2; dy < height / 2; dy += step)
    for (let dx = -width / 2 + step / 2; dx < width / 2; dx += step) {
      const [px, py] = project(card.homography, (x + dx) * printed, (y + dy) * printed);
      const [column, row] = [Math.round(px), Math.round(py)];
      if (column < 0 || row < 0 || column >= picture.widthPx || row >= picture.heightPx) return null;
      const at = 3 * (row * picture.widthPx + column);
      const [r = 0, g = 0, b = 0] = [picture.data[at], picture.data[at + 1], picture.data[at + 2]];
      if (Math.max(r, g, b) >= blotLimits.clippedFrom || Math.min(r, g, b) <= blotLimits.clippedTo)
        clipped += 1;
      pixels.push([linearFromByte(r), linearFromByte(g), linearFromByte(b)]);
    }
  return { light: robustLight(pixels).light, clipped: clipped / pixels.length };
}

/** The four sides of the window: `along` it and `out` of it to the card's x and y. */
const sides: readonly ((along: number, out: number) => readonly [number, number])[] = [
  (along, out) => [along, -out],
  (along, out) => [out, along],
  (along, out) => [along, out],
  (along, out) => [-out, along],
];

const terms = (u: number, v: number): readonly number[] => [1, u, v, u * u, u * v, v * v];

/** Gain over the card: a surface of second degree through the paper around the window, strips off it left out. */
function lightSurface(strips: readonly Strip[]) {
  let kept = strips;
  for (let round = 0; ; round += 1) {
    const fits = ([0, 1, 2] as const).map((channel) => {
      const rows = kept.map(({ u, v }) => terms(u, v));
      const normal = terms(0, 0).map((_, i) =>
        terms(0, 0).map((__, j) => rows.reduce((sum, row) => sum + (row[i] ?? 0) * (row[j] ?? 0), 0)),
      );
      const right = terms(0, 0).map((_, i) =>
        kept.reduce((sum, strip, at) => sum + (rows[at]?.[i] ?? 0) * strip.light[channel], 0),
      );
      return solve(normal, right) ?? [];
    });
    const gain = (u: number, v: number): LinearRgb => {
      const row = terms(u, v);
      const of = (channel: number): number =>
        row.reduce((sum, term, at) => sum + term * (fits[channel]?.[at] ?? Number.NaN), 0);
      return [of(0), of(1), of(2)];
    };
    const off = ({ u, v, light }: Strip): number => {
      const at = gain(u, v);
      return Math.max(...at.map((value, channel) => Math.abs((light[channel] ?? 0) / value - 1)));
    };
    const inside = strips.filter((strip) => off(strip) <= limits.outlierShare);
    if (round === 2 || inside.length < 12) {
      const rms = Math.sqrt(kept.reduce((sum, strip) => sum + off(strip) ** 2, 0) / kept.length);
      return { gain, offShare: rms, outliers: 1 - inside.length / strips.length };
    }
    kept = inside;
  }
}

const meanOf = (lights: readonly LinearRgb[]): LinearRgb => {
  const of = (channel: 0 | 1 | 2): number =>
    lights.reduce((sum, light) => sum + light[channel], 0) / lights.length;
  return [of(0), of(1), of(2)];
};

/**
 * The light over a picture, from the paper and the greys of the weave card in it.
 *
 * @param picture - the picture the card was read in
 * @param card - from `readCard`
 * @returns the balance (paper comes out neutral with L* 95), the greys relative to the paper, the contrast
 * @refuses blot-clipped - paper too bright or too dark to be measured; blot-card-too-small - its paper is fewer than
 * four pixels wide between window and greys; blot-light-uneven - the paper is off a smooth surface by more than
 * 2 %, more than 15 % of it by 4 %, or its light falls by more than 2.2 times
 * @source workshop-setting (data/colour/cardLight.json); a surface of second degree by least squares in linear light
 */
export function cardLight(picture: ColourPicture, card: CardReading): Result<CardLight, BlotProblem> {
  const { strip, leastPxAcross } = limits;
  const near = geometry.window / 2 + strip.fromWindow;
  const far = geometry.patches.near - strip.beforePatches;
  const pxAcross = (far - near) / card.mmPerPx;
  if (!(pxAcross >= leastPxAcross)) return refused('blot-card-too-small', { mmPerPx: card.mmPerPx });

  const strips: Strip[] = [];
  let clipped = 0;
  for (const place of sides)
    for (let along = -strip.last; along <= strip.last; along += strip.every) {
      const middle = place(along, (near + far) / 2);
      const [wide, high] = place(strip.length, far - near).map(Math.abs);
      const seen = lightOn(picture, card, middle, [wide ?? 0, high ?? 0]);
      if (seen === null) continue;
      if (seen.clipped > limits.clippedShare) clipped += 1;
      strips.push({ u: middle[0] / near, v: middle[1] / near, light: seen.light });
    }
  if (strips.length < 24)
    return refused('blot-card-cut-off', { seenPercent: Math.round((100 * strips.length) / 48) });
  if (clipped / strips.length > limits.clippedShare)
    return refused('blot-clipped', {
      name: 'card',
      sharePercent: Math.round((100 * clipped) / strips.length),
    });

  const { gain, offShare, outliers } = lightSurface(strips);
  const greens = strips.map(({ u, v }) => gain(u, v)[1]);
  const ratio = Math.max(...greens) / Math.min(...greens);
  if (!(offShare <= limits.mostOff && outliers <= limits.mostOutliers))
    return refused('blot-light-uneven', {
      offPercent: Math.max(1, Math.round(100 * Math.max(offShare, outliers))),
    });
  if (!(Math.min(...greens) > 0 && ratio <= limits.lightRatio))
    return refused('blot-light-uneven', { offPercent: Math.round(100 * (ratio - 1)) });

  const { patches } = geometry;
  const deep = (patches.near + patches.far) / 2;
  const greys = patches.levels.map((printed, index): CardGrey => {
    const seen = sides.flatMap((place) => {
      const [x, y] = place(patches.centres[index] ?? 0, deep);
      const side = 0.6 * Math.min(patches.wide, patches.far - patches.near);
      const found = lightOn(picture, card, [x, y], [side, side]);
      const at = gain(x / near, y / near);
      return found === null
        ? []
        : [[found.light[0] / at[0], found.light[1] / at[1], found.light[2] / at[2]] as const];
    });
    return { printed, sides: seen, middle: meanOf(seen) };
  });
  const printed = card.halfWindowMm / (geometry.window / 2);
  const paper = luminanceOfLightness(blotLimits.paperLightness);
  const { contrast, contrastSigma } = contrastOf(greys);
  return done({
    balance: ({ x, y, light }) => {
      const [mmX, mmY] = unproject(card.homography, x, y);
      const at = gain(mmX / printed / near, mmY / printed / near);
      const of = (channel: 0 | 1 | 2): number => paper * (light[channel] / at[channel]) ** (1 / contrast);
      return [of(0), of(1), of(2)];
    },
    gain: null,
    paper: meanOf(strips.map(({ light }) => light)),
    fallPerMm: [gain(1, 0)[1] - gain(-1, 0)[1], gain(0, 1)[1] - gain(0, -1)[1]].map(
      (rise) => rise / gain(0, 0)[1] / (2 * near * printed),
    ) as [number, number],
    offShare,
    greys,
    contrast,
    contrastSigma,
  });
}
