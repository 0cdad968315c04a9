import type { WeaveCount } from './countWeave.ts';
import type { Picture } from './picture.ts';

/** A stroke of the overlay in picture pixels. */
export interface Stroke {
  readonly from: readonly [number, number];
  readonly to: readonly [number, number];
  readonly axis: 'weftwise' | 'warpwise';
  /** Every tenth repeat, drawn heavier so that tens can be counted. */
  readonly tenth: boolean;
}

/**
 * Short strokes on every column and row that was followed, for the eye to check the count.
 *
 * @returns strokes in picture pixels; screens draw them as they like
 * @source none: this project's
 */
export function overlayStrokes(count: WeaveCount): readonly Stroke[] {
  const angle = (count.angleDeg * Math.PI) / 180;
  const alongWeft = [Math.cos(angle), Math.sin(angle)] as const;
  const alongWarp = [-Math.sin(angle), Math.cos(angle)] as const;
  return (['weftwise', 'warpwise'] as const).flatMap((axis) => {
    const [dx, dy] = axis === 'weftwise' ? alongWarp : alongWeft;
    const half = 0.4 * count[axis].pitchPx;
    // Three strips tell as much as thirty and leave the weave visible.
    const strips = count[axis].strips;
    const shown = [0.2, 0.5, 0.8].map((share) => strips[Math.floor(share * strips.length)]);
    return [...new Set(shown)].flatMap((strip) =>
      (strip?.marks ?? []).map(([x, y], index) => {
        const tenth = index % 10 === 0;
        const reach = tenth ? 2.2 * half : half;
        return {
          from: [x - reach * dx, y - reach * dy] as const,
          to: [x + reach * dx, y + reach * dy] as const,
          axis,
          tenth,
        };
      }),
    );
  });
}

const colours = { weftwise: [255, 64, 160], warpwise: [0, 200, 255] } as const;

/**
 * The picture with the overlay drawn in.
 *
 * @param picture - the picture that was counted; not altered
 * @returns three bytes to a pixel
 * @source none: this project's
 */
export function drawOverlay(picture: Picture, count: WeaveCount): Picture {
  const { width, height, channels } = picture;
  const data = new Uint8Array(width * height * 3);
  for (let at = 0; at < width * height; at += 1)
    for (let band = 0; band < 3; band += 1) data[3 * at + band] = picture.data[channels * at + band] ?? 0;
  const thick = Math.max(1, Math.round(Math.max(width, height) / 1200));
  const dot = (x: number, y: number, colour: readonly [number, number, number], size: number): void => {
    for (let py = Math.round(y - size / 2); py < Math.round(y + size / 2); py += 1)
      for (let px = Math.round(x - size / 2); px < Math.round(x + size / 2); px += 1) {
        if (px < 0 || py < 0 || px >= width || py >= height) continue;
        for (let band = 0; band < 3; band += 1) data[3 * (py * width + px) + band] = colour[band] ?? 0;
      }
  };
  for (const { from, to, axis, tenth } of overlayStrokes(count)) {
    const length = Math.hypot(to[0] - from[0], to[1] - from[1]);
    for (let step = 0; step <= length; step += 0.5) {
      const share = length === 0 ? 0 : step / length;
      dot(
        from[0] + share * (to[0] - from[0]),
        from[1] + share * (to[1] - from[1]),
        colours[axis],
        tenth ? 2 * thick : thick,
      );
    }
  }
  return { width, height, channels: 3, data };
}
