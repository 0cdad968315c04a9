import limits from '../../../data/colour/blot.json' with { type: 'json' };
import { done, type Result, refused } from '../../units/index.ts';
import type { BlotProblem } from './colourProblem.ts';
import { type LinearRgb, luminanceOfLightness } from './lab.ts';
import type { AreaLight } from './measureArea.ts';

/** Light at a place of the picture turned into what white paper under even white light would give. */
export type Balance = (place: Pick<AreaLight, 'x' | 'y' | 'light'>) => LinearRgb;

/** How the light was found: a level only, or a plane over the picture. */
export interface LightFound {
  readonly balance: Balance;
  readonly shape: 'level' | 'plane';
}

type Plane = readonly [level: number, perX: number, perY: number];

/** Least squares through patches whose middles are not in one line; null when they are. */
function fitPlane(patches: readonly AreaLight[], channel: 0 | 1 | 2): Plane | null {
  const mean = (of: (patch: AreaLight) => number): number =>
    patches.reduce((sum, patch) => sum + of(patch), 0) / patches.length;
  const [x0, y0, v0] = [mean((p) => p.x), mean((p) => p.y), mean((p) => p.light[channel])];
  const [xx, yy, xy] = [
    mean((p) => (p.x - x0) ** 2),
    mean((p) => (p.y - y0) ** 2),
    mean((p) => (p.x - x0) * (p.y - y0)),
  ];
  const spread = xx * yy - xy ** 2;
  if (spread < 0.01 * ((xx + yy) / 2) ** 2) return null;
  const xv = mean((p) => (p.x - x0) * (p.light[channel] - v0));
  const yv = mean((p) => (p.y - y0) * (p.light[channel] - v0));
  const [perX, perY] = [(xv * yy - yv * xy) / spread, (yv * xx - xv * xy) / spread];
  return [v0 - perX * x0 - perY * y0, perX, perY];
}

const valueAt = ([level, perX, perY]: Plane, { x, y }: { readonly x: number; readonly y: number }): number =>
  level + perX * x + perY * y;

/**
 * The light over a picture, from patches of one white paper.
 *
 * @param patches - at least one; three or more that are not in one line give a plane of gain
 * @param measured - the areas that will be balanced; the light must stay believable there
 * @returns the balance; paper comes out neutral with L* 95
 * @refuses blot-light-uneven - patches off the plane by more than 3 %, apart by more than 4 % without a plane, or
 * the plane falls by more than 1.8 times between the places used
 * @source workshop-setting (data/colour/blot.json); a plane by least squares in linear light
 */
export function lightPlane(
  patches: readonly AreaLight[],
  measured: readonly AreaLight[],
): Result<LightFound, BlotProblem> {
  const planes = ([0, 1, 2] as const).map((channel) => fitPlane(patches, channel));
  const isPlane = patches.length >= 3 && planes.every((plane) => plane !== null);
  const levels = ([0, 1, 2] as const).map(
    (channel): Plane => [patches.reduce((sum, { light }) => sum + light[channel], 0) / patches.length, 0, 0],
  );
  const used = levels.map((level, channel) => (isPlane ? (planes[channel] ?? level) : level));
  const gain = (place: { readonly x: number; readonly y: number }): readonly number[] =>
    used.map((plane) => valueAt(plane, place));

  const off = Math.max(
    ...patches.flatMap((patch) =>
      gain(patch).map((value, channel) => Math.abs((patch.light[channel] ?? 0) / value - 1)),
    ),
  );
  // Without a plane the patches are compared with their mean, so half of what they may be apart.
  if (!(off <= (isPlane ? limits.unevenAfterPlane : limits.unevenWithoutPlane / 2)))
    return refused('blot-light-uneven', { offPercent: Math.round(100 * off) });
  const greens = [...patches, ...measured].map((place) => gain(place)[1] ?? Number.NaN);
  const ratio = Math.max(...greens) / Math.min(...greens);
  if (!(Math.min(...greens) > 0 && ratio <= limits.lightRatio))
    return refused('blot-light-uneven', { offPercent: Math.round(100 * Math.abs(ratio - 1)) });

  const paper = luminanceOfLightness(limits.paperLightness);
  return done({
    shape: isPlane ? 'plane' : 'level',
    balance: (place) => {
      const [r = Number.NaN, g = Number.NaN, b = Number.NaN] = gain(place);
      const { light } = place;
      return [(light[0] / r) * paper, (light[1] / g) * paper, (light[2] / b) * paper];
    },
  });
}
