import { type Chance, normal } from './chance.ts';
import type { ShotSpec } from './rugSpec.ts';

export interface Picture {
  readonly width: number;
  readonly height: number;
  /** sRGB, three bytes to a pixel. */
  readonly rgb: Uint8Array;
}

/** Where a point of the plane [mm from the point the camera looks at] falls in the picture [px]. */
export type Projection = (xMm: number, yMm: number) => readonly [xPx: number, yPx: number];

/** Pin-hole camera over a plane: rolled, tilted, looking at the plane's origin. */
export function cameraOver(shot: ShotSpec): { readonly toPicture: Projection; readonly toPlane: Projection } {
  const { widthPx, heightPx, pxPerMm } = shot;
  const roll = (shot.rollDeg * Math.PI) / 180;
  const tilt = (shot.tiltDeg * Math.PI) / 180;
  const towards = (shot.tiltTowardsDeg * Math.PI) / 180;
  const focal = 1.15 * Math.max(widthPx, heightPx);
  const distance = focal / pxPerMm;
  const [cr, sr, ct, st, ca, sa] = [roll, tilt, towards].flatMap((angle) => [
    Math.cos(angle),
    Math.sin(angle),
  ]) as [number, number, number, number, number, number];
  const toPicture: Projection = (x, y) => {
    const rx = x * cr - y * sr;
    const ry = x * sr + y * cr;
    const along = rx * ca + ry * sa;
    const side = -rx * sa + ry * ca;
    const depth = distance + along * st;
    const u = (along * ct * ca - side * sa) / depth;
    const v = (along * ct * sa + side * ca) / depth;
    return [widthPx / 2 + focal * u, heightPx / 2 + focal * v];
  };
  const toPlane: Projection = (px, py) => {
    const u = (px - widthPx / 2) / focal;
    const v = (py - heightPx / 2) / focal;
    const along = u * ca + v * sa;
    const side = -u * sa + v * ca;
    const far = (along * distance) / (ct - along * st);
    const near = side * (distance + far * st);
    const rx = far * ca - near * sa;
    const ry = far * sa + near * ca;
    return [rx * cr + ry * sr, -rx * sr + ry * cr];
  };
  return { toPicture, toPlane };
}

/** Gaussian blur of three interleaved bands, in place. */
export function blur(light: Float32Array, width: number, height: number, sigma: number): void {
  if (sigma < 0.2) return;
  const reach = Math.ceil(3 * sigma);
  const weights = Float32Array.from({ length: 2 * reach + 1 }, (_, index) =>
    Math.exp(-((index - reach) ** 2) / (2 * sigma * sigma)),
  );
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const pass = (count: number, lines: number, step: number, stride: number): void => {
    // A line with its ends held on beyond the picture.
    const line = new Float32Array(count + 2 * reach);
    for (let index = 0; index < lines; index += 1)
      for (let band = 0; band < 3; band += 1) {
        const start = index * stride + band;
        for (let at = 0; at < count; at += 1) line[reach + at] = light[start + at * step] ?? 0;
        line.fill(line[reach] ?? 0, 0, reach);
        line.fill(line[reach + count - 1] ?? 0, reach + count);
        for (let at = 0; at < count; at += 1) {
          let value = 0;
          for (let tap = 0; tap < weights.length; tap += 1)
            value += (weights[tap] ?? 0) * (line[at + tap] ?? 0);
          light[start + at * step] = value / sum;
        }
      }
  };
  pass(width, height, 3, 3 * width);
  pass(height, width, 3 * width, 3);
}

/**
 * Photographs a plane.
 *
 * @param look - the light the plane returns at a point [mm], added to `into` with a weight
 */
export function photograph(
  chance: Chance,
  shot: ShotSpec,
  look: (xMm: number, yMm: number, weight: number, into: Float32Array, at: number) => void,
): Picture {
  const { widthPx: width, heightPx: height } = shot;
  const { toPlane } = cameraOver(shot);
  const light = new Float32Array(width * height * 3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      for (const [dx, dy] of [
        [0.25, 0.25],
        [0.75, 0.25],
        [0.25, 0.75],
        [0.75, 0.75],
      ] as const) {
        const [xMm, yMm] = toPlane(x + dx, y + dy);
        look(xMm, yMm, 0.25, light, 3 * (y * width + x));
      }
  blur(light, width, height, shot.blurPx);
  const fallX = Math.cos(shot.lightFromDeg) * shot.lightFall;
  const fallY = Math.sin(shot.lightFromDeg) * shot.lightFall;
  const mean = light.reduce((sum, value) => sum + value, 0) / light.length;
  const gain = Math.min(4, Math.max(0.8, 0.2 / mean));
  const shown = new Float32Array(light.length);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1) {
      const fall = 1 + fallX * (x / width - 0.5) + fallY * (y / height - 0.5);
      for (let band = 0; band < 3; band += 1) {
        const at = 3 * (y * width + x) + band;
        shown[at] = 255 * Math.max(0, gain * (light[at] ?? 0) * fall) ** (1 / 2.2);
      }
    }
  if (shot.sharpen > 0) {
    const soft = shown.slice();
    blur(soft, width, height, 1.2);
    for (let at = 0; at < shown.length; at += 1)
      shown[at] = (shown[at] ?? 0) + shot.sharpen * ((shown[at] ?? 0) - (soft[at] ?? 0));
  }
  const rgb = new Uint8Array(shown.length);
  for (let at = 0; at < shown.length; at += 1) {
    const level = shown[at] ?? 0;
    const grain = shot.noise * (0.5 + Math.sqrt(Math.max(0, level) / 255) * 0.7) * normal(chance);
    rgb[at] = Math.min(255, Math.max(0, Math.round(level + grain)));
  }
  return { width, height, rgb };
}
