import type { Picture } from './camera.ts';
import { between, type Chance, normal, wandering } from './chance.ts';
import type { LoomPicture } from './index.ts';

/** Things people photograph instead of a sharp back; none has a count. */
export const notWoven = ['plain paper', 'pile side', 'motion blur', 'out of focus', 'screen'] as const;

const paint = (
  width: number,
  height: number,
  light: (x: number, y: number, band: number) => number,
): Picture => {
  const rgb = new Uint8Array(width * height * 3);
  for (let y = 0; y < height; y += 1)
    for (let x = 0; x < width; x += 1)
      for (let band = 0; band < 3; band += 1)
        rgb[3 * (y * width + x) + band] = Math.min(255, Math.max(0, Math.round(light(x, y, band))));
  return { width, height, rgb };
};

/** A picture blurred along a line, as by a moving hand, or all round. */
export function blurred(
  { width, height, rgb }: Picture,
  dx: number,
  dy: number,
  chance: Chance,
  noise: number,
): Picture {
  const steps = Math.ceil(Math.hypot(dx, dy));
  const path = Array.from({ length: steps + 1 }, (_, step) => step / steps - 0.5);
  const across = Int32Array.from(path, (share) => Math.round(share * dx));
  const along = Int32Array.from(path, (share) => Math.round(share * dy));
  return paint(width, height, (x, y, band) => {
    let sum = 0;
    for (let step = 0; step <= steps; step += 1) {
      const px = Math.min(width - 1, Math.max(0, x + (across[step] ?? 0)));
      const py = Math.min(height - 1, Math.max(0, y + (along[step] ?? 0)));
      sum += rgb[3 * (py * width + px) + band] ?? 0;
    }
    return sum / (steps + 1) + noise * normal(chance);
  });
}

/** A back so far out of focus that no knot is left to see. */
export function outOfFocus(chance: Chance, loom: LoomPicture): Picture {
  const reach = 0.7 * between(chance, 3, 5) * Math.max(loom.truth.knotPx, loom.truth.rowPx);
  return blurred(blurred(loom, reach, reach, chance, 3), -reach, reach, chance, 3);
}

/** One of the things above that can be drawn without a loom. */
export function drawNotWoven(chance: Chance, kind: 'plain paper' | 'pile side' | 'screen'): Picture {
  const [width, height] = [800, 640];
  const slow = wandering(chance, 6);
  const noise = between(chance, 1, 6);
  if (kind === 'plain paper') {
    const shade = Float64Array.from({ length: width }, (_, x) => 20 * slow((x / width) * 6));
    return paint(width, height, (x, y) => 205 + (shade[x] ?? 0) + 10 * (y / height) + noise * normal(chance));
  }
  if (kind === 'screen') {
    const pitch = between(chance, 2.3, 3.4);
    const angle = between(chance, -0.1, 0.1);
    return paint(width, height, (x, y, band) => {
      const u = (x * Math.cos(angle) + y * Math.sin(angle)) / pitch;
      const v = (y * Math.cos(angle) - x * Math.sin(angle)) / pitch;
      return (
        150 +
        60 * Math.cos(2 * Math.PI * (u + band / 3)) +
        25 * Math.cos(2 * Math.PI * v) +
        noise * normal(chance)
      );
    });
  }
  // Tufts lean every way and overlap: strokes of random place, no lattice.
  const tuft = between(chance, 4, 12);
  const light = new Float32Array(width * height).fill(90);
  for (let piece = 0; piece < (width * height * 3) / tuft; piece += 1) {
    let x = between(chance, 0, width);
    let y = between(chance, 0, height);
    const lean = between(chance, 0.9, 2.2);
    const tone = between(chance, 50, 170);
    for (let step = 0; step < tuft; step += 1) {
      x += Math.cos(lean);
      y += Math.sin(lean);
      const at = Math.floor(y) * width + Math.floor(x);
      if (x >= 0 && x < width && y >= 0 && y < height) light[at] = tone;
    }
  }
  return paint(width, height, (x, y) => (light[y * width + x] ?? 0) + noise * normal(chance));
}
