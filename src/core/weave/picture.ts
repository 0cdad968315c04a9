/** A decoded picture: sRGB bytes, upright, row by row. */
export interface Picture {
  readonly width: number;
  readonly height: number;
  readonly channels: 3 | 4;
  /** `width × height × channels` bytes. */
  readonly data: Uint8Array | Uint8ClampedArray;
}

/** A rectangle of a picture [px]. */
export interface Window {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One grey plane, row by row. */
export interface Plane {
  readonly wide: number;
  readonly high: number;
  readonly at: Float32Array;
}

/** One size of a picture's window, as the logarithm of its light in three bands. */
export interface Level {
  /** Picture pixels per pixel of this level. */
  readonly scale: number;
  /** Centre of the level's first pixel in the picture [px]. */
  readonly left: number;
  readonly top: number;
  readonly red: Plane;
  readonly green: Plane;
  readonly blue: Plane;
}

/** Darkest light that still tells something; keeps sensor noise in shadows from ruling the logarithm. */
const darkLevel = 14;

const plane = (wide: number, high: number): Plane => ({ wide, high, at: new Float32Array(wide * high) });

/** Binomial weights whose zero at the new Nyquist frequency keeps fine yarn from folding into false rows. */
const kernels: Readonly<Record<number, readonly number[]>> = {
  1: [1],
  2: [1, 5, 10, 10, 5, 1].map((weight) => weight / 32),
  4: [1, 3, 7, 14, 22, 30, 35, 35, 30, 22, 14, 7, 3, 1].map((weight) => weight / 224),
  8: Array.from({ length: 28 }, (_, tap) => 0.5 - 0.5 * Math.cos((2 * Math.PI * (tap + 0.5)) / 28)).map(
    (weight) => weight / 14,
  ),
};

/**
 * Cuts a window out of a picture at 1, 1/2, 1/4 or 1/8 of its size, low-passed before it is thinned.
 *
 * @param picture - sRGB bytes
 * @param window - inside the picture [px]
 * @param scale - picture pixels per pixel of the level
 * @returns planes of ln(light + 14), light 0 … 255
 * @source none: signal practice; averaging two by two was seen to fold yarn into false rows
 */
export function cutLevel(picture: Picture, window: Window, scale: 1 | 2 | 4 | 8): Level {
  const { data, channels, width } = picture;
  const taps = kernels[scale] ?? [1];
  const wide = Math.floor(window.width / scale);
  const high = Math.floor(window.height / scale);
  const bands = [plane(wide, high), plane(wide, high), plane(wide, high)] as const;
  const before = (taps.length - scale) / 2;
  const lastX = window.width - 1;
  const lastY = window.height - 1;
  if (scale === 1) {
    const log = Float32Array.from({ length: 256 }, (_, light) => Math.log(light + darkLevel));
    for (let y = 0; y < high; y += 1)
      for (let x = 0; x < wide; x += 1) {
        const from = ((window.y + y) * width + window.x + x) * channels;
        const to = y * wide + x;
        bands[0].at[to] = log[data[from] ?? 0] ?? 0;
        bands[1].at[to] = log[data[from + 1] ?? 0] ?? 0;
        bands[2].at[to] = log[data[from + 2] ?? 0] ?? 0;
      }
    return { scale, left: window.x, top: window.y, red: bands[0], green: bands[1], blue: bands[2] };
  }
  const line = new Float32Array(window.width);
  const rows = taps.length;
  for (let y = 0; y < high; y += 1)
    for (const [band, target] of bands.entries()) {
      line.fill(0);
      for (let tap = 0; tap < rows; tap += 1) {
        const row = Math.min(lastY, Math.max(0, y * scale - before + tap));
        const weight = taps[tap] ?? 0;
        let from = ((window.y + row) * width + window.x) * channels + band;
        for (let x = 0; x <= lastX; x += 1, from += channels)
          line[x] = (line[x] ?? 0) + weight * (data[from] ?? 0);
      }
      for (let x = 0; x < wide; x += 1) {
        let light = 0;
        for (let tap = 0; tap < rows; tap += 1)
          light += (taps[tap] ?? 0) * (line[Math.min(lastX, Math.max(0, x * scale - before + tap))] ?? 0);
        target.at[y * wide + x] = Math.log(light + darkLevel);
      }
    }
  const shift = (scale - 1) / 2;
  return {
    scale,
    left: window.x + shift,
    top: window.y + shift,
    red: bands[0],
    green: bands[1],
    blue: bands[2],
  };
}

/**
 * Mean over a rectangle around every pixel, by running sums; edges repeat.
 *
 * @param reachX - pixels to either side
 * @param reachY - pixels above and below
 * @source none: definition of a moving mean
 */
export function boxMean({ wide, high, at }: Plane, reachX: number, reachY: number = reachX): Plane {
  const rows = new Float32Array(at.length);
  const sizeX = 2 * reachX + 1;
  for (let y = 0; y < high; y += 1) {
    const start = y * wide;
    const end = start + wide - 1;
    let sum = 0;
    for (let x = -reachX; x <= reachX; x += 1) sum += at[Math.min(end, Math.max(start, start + x))] ?? 0;
    for (let x = 0; x < wide; x += 1) {
      rows[start + x] = sum / sizeX;
      sum +=
        (at[Math.min(end, start + x + reachX + 1)] ?? 0) - (at[Math.max(start, start + x - reachX)] ?? 0);
    }
  }
  const out = new Float32Array(at.length);
  const sums = new Float64Array(wide);
  const rowAt = (y: number): number => Math.min(high - 1, Math.max(0, y)) * wide;
  for (let y = -reachY; y <= reachY; y += 1) {
    const row = rowAt(y);
    for (let x = 0; x < wide; x += 1) sums[x] = (sums[x] ?? 0) + (rows[row + x] ?? 0);
  }
  const sizeY = 2 * reachY + 1;
  for (let y = 0; y < high; y += 1) {
    const row = y * wide;
    const enters = rowAt(y + reachY + 1);
    const leaves = rowAt(y - reachY);
    for (let x = 0; x < wide; x += 1) {
      const sum = sums[x] ?? 0;
      out[row + x] = sum / sizeY;
      sums[x] = sum + (rows[enters + x] ?? 0) - (rows[leaves + x] ?? 0);
    }
  }
  return { wide, high, at: out };
}
