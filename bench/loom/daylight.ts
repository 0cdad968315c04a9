import { between, type Chance, normal, wandering } from './chance.ts';
import type { RugSpec, ShotSpec } from './rugSpec.ts';
import type { WovenBack } from './weaveBack.ts';

/** Mean over a square of `2 reach + 1` pixels, by running sums. */
function squareMean(plane: Float32Array, wide: number, high: number, reach: number): Float32Array {
  const rows = new Float32Array(plane.length);
  const size = 2 * reach + 1;
  for (let y = 0; y < high; y += 1) {
    let sum = 0;
    const at = (x: number): number => plane[y * wide + Math.min(wide - 1, Math.max(0, x))] ?? 0;
    for (let x = -reach; x <= reach; x += 1) sum += at(x);
    for (let x = 0; x < wide; x += 1) {
      rows[y * wide + x] = sum / size;
      sum += at(x + reach + 1) - at(x - reach);
    }
  }
  const out = new Float32Array(plane.length);
  const sums = new Float64Array(wide);
  const clampRow = (y: number): number => Math.min(high - 1, Math.max(0, y)) * wide;
  for (let y = -reach; y <= reach; y += 1)
    for (let x = 0; x < wide; x += 1) sums[x] = (sums[x] ?? 0) + (rows[clampRow(y) + x] ?? 0);
  for (let y = 0; y < high; y += 1)
    for (let x = 0; x < wide; x += 1) {
      out[y * wide + x] = (sums[x] ?? 0) / size;
      sums[x] =
        (sums[x] ?? 0) + (rows[clampRow(y + reach + 1) + x] ?? 0) - (rows[clampRow(y - reach) + x] ?? 0);
    }
  return out;
}

/**
 * Lets light fall on the back: side light on the slopes, furrows darker than crowns, hair and dirt.
 *
 * @returns light returned, linear, three to a pixel (the woven colours are overwritten)
 */
export function daylight(
  chance: Chance,
  rug: Pick<RugSpec, 'weftwiseKnotsPer7cm' | 'warpwiseKnotsPer7cm' | 'dirt' | 'hair'>,
  shot: ShotSpec,
  back: Pick<WovenBack, 'wide' | 'high' | 'pxPerMm' | 'height' | 'colour'>,
): Float32Array {
  const { wide, high, pxPerMm, height, colour } = back;
  const knotMm = 70 / rug.weftwiseKnotsPer7cm;
  const reach = Math.max(1, Math.round(0.3 * Math.min(knotMm, 70 / rug.warpwiseKnotsPer7cm) * pxPerMm));
  const around = squareMean(height, wide, high, reach);
  const azimuth = (shot.lightFromDeg * Math.PI) / 180;
  const rise = (shot.lightHeightDeg * Math.PI) / 180;
  const lightX = Math.cos(azimuth) * Math.cos(rise);
  const lightY = Math.sin(azimuth) * Math.cos(rise);
  const lightZ = Math.sin(rise);
  const stain = wandering(chance, 5);
  const stainAlong = wandering(chance, 5);
  for (let y = 0; y < high; y += 1)
    for (let x = 0; x < wide; x += 1) {
      const at = y * wide + x;
      const slopeX =
        ((height[at + (x + 1 < wide ? 1 : 0)] ?? 0) - (height[at - (x > 0 ? 1 : 0)] ?? 0)) * 0.5 * pxPerMm;
      const slopeY =
        ((height[at + (y + 1 < high ? wide : 0)] ?? 0) - (height[at - (y > 0 ? wide : 0)] ?? 0)) *
        0.5 *
        pxPerMm;
      const soft = 0.6;
      const facing =
        (lightZ - soft * (slopeX * lightX + slopeY * lightY)) /
        Math.sqrt(1 + soft * soft * (slopeX ** 2 + slopeY ** 2));
      const sunk = ((around[at] ?? 0) - (height[at] ?? 0)) / knotMm;
      const furrow = Math.exp(-2.6 * Math.max(0, sunk)) * (1 + 0.25 * Math.min(1, Math.max(0, -sunk)));
      const soil = 1 - rug.dirt * 0.5 * Math.max(0, stain((x / wide) * 5) * stainAlong((y / high) * 5) + 0.2);
      const hair = 1 + rug.hair * (chance() + chance() - 1);
      const light = (0.35 + 0.65 * Math.max(0, facing)) * furrow * soil * hair;
      for (let band = 0; band < 3; band += 1) colour[3 * at + band] = (colour[3 * at + band] ?? 0) * light;
    }
  const lint = Math.round(rug.dirt * 60);
  for (let piece = 0; piece < lint; piece += 1) {
    let x = between(chance, 0, wide);
    let y = between(chance, 0, high);
    let way = between(chance, 0, 2 * Math.PI);
    const tone = chance() < 0.6 ? 0.6 : 0.02;
    const steps = between(chance, 0.3, 3) * knotMm * pxPerMm;
    for (let step = 0; step < steps; step += 1) {
      x += Math.cos(way);
      y += Math.sin(way);
      way += 0.06 * normal(chance);
      if (x < 0 || y < 0 || x >= wide || y >= high) break;
      const at = Math.floor(y) * wide + Math.floor(x);
      for (let band = 0; band < 3; band += 1)
        colour[3 * at + band] = 0.4 * (colour[3 * at + band] ?? 0) + 0.6 * tone;
    }
  }
  return colour;
}
