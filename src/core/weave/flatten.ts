import { boxMean, type Level, type Plane } from './picture.ts';

/** The weave's relief with the colour pattern taken out. */
export interface Flattened {
  readonly scale: number;
  readonly left: number;
  readonly top: number;
  /** Relief in spreads of its own colour, gaps dark whatever the colour; near 0 where colours meet. */
  readonly relief: Plane;
  /** Relief with colour left in, along the direction in which colour varies most, evened out locally. */
  readonly shade: Plane;
  /** The level's own red, green and blue [ln light]. */
  readonly bands: readonly [Float32Array, Float32Array, Float32Array];
  /** Which of the picture's colours a pixel belongs to, and how surely (0 … 1). */
  readonly colour: Uint8Array;
  readonly surely: Float32Array;
  readonly colours: number;
  /** Spread of the relief before it was normalised [ln light], weighted over the picture. */
  readonly contrast: number;
}

const colourCount = 7;
const rounds = 7;
/** Distance in ln light at which a pixel no longer counts as its colour's. */
const softness = 0.32;

interface Centres {
  readonly count: number;
  readonly at: Float32Array;
}

const nearest = (
  centres: Centres,
  r: number,
  g: number,
  b: number,
): readonly [index: number, squared: number] => {
  let best = Number.POSITIVE_INFINITY;
  let index = 0;
  for (let one = 0; one < centres.count; one += 1) {
    const dr = r - (centres.at[3 * one] ?? 0);
    const dg = g - (centres.at[3 * one + 1] ?? 0);
    const db = b - (centres.at[3 * one + 2] ?? 0);
    const squared = dr * dr + dg * dg + db * db;
    if (squared < best) {
      best = squared;
      index = one;
    }
  }
  return [index, best];
};

/** k-means on a thinned sample; every next seed is the sample farthest from the ones before (Gonzalez 1985). */
function findColours(red: Float32Array, green: Float32Array, blue: Float32Array): Centres {
  const step = Math.max(1, Math.floor(red.length / 3000)) | 1;
  const sample: number[] = [];
  for (let at = 0; at < red.length; at += step) sample.push(at);
  const centres = { count: 0, at: new Float32Array(3 * colourCount) };
  const distance = new Float64Array(sample.length).fill(Number.POSITIVE_INFINITY);
  let next = sample[sample.length >> 1] ?? 0;
  while (centres.count < colourCount) {
    const place = 3 * centres.count;
    centres.at[place] = red[next] ?? 0;
    centres.at[place + 1] = green[next] ?? 0;
    centres.at[place + 2] = blue[next] ?? 0;
    centres.count += 1;
    let farthest = 0;
    for (const [index, at] of sample.entries()) {
      const dr = (red[at] ?? 0) - (centres.at[place] ?? 0);
      const dg = (green[at] ?? 0) - (centres.at[place + 1] ?? 0);
      const db = (blue[at] ?? 0) - (centres.at[place + 2] ?? 0);
      const nearer = Math.min(distance[index] ?? 0, dr * dr + dg * dg + db * db);
      distance[index] = nearer;
      if (nearer > farthest) {
        farthest = nearer;
        next = at;
      }
    }
    if (farthest < 0.02) break;
  }
  for (let round = 0; round < rounds; round += 1) {
    const sums = new Float64Array(4 * centres.count);
    for (const at of sample) {
      const [index] = nearest(centres, red[at] ?? 0, green[at] ?? 0, blue[at] ?? 0);
      sums[4 * index] = (sums[4 * index] ?? 0) + (red[at] ?? 0);
      sums[4 * index + 1] = (sums[4 * index + 1] ?? 0) + (green[at] ?? 0);
      sums[4 * index + 2] = (sums[4 * index + 2] ?? 0) + (blue[at] ?? 0);
      sums[4 * index + 3] = (sums[4 * index + 3] ?? 0) + 1;
    }
    for (let index = 0; index < centres.count; index += 1) {
      const held = sums[4 * index + 3] ?? 0;
      if (held === 0) continue;
      for (let band = 0; band < 3; band += 1)
        centres.at[3 * index + band] = (sums[4 * index + band] ?? 0) / held;
    }
  }
  return centres;
}

/** Main direction of the fine colour differences (first principal component, by power iteration). */
function mainDirection(
  level: Level,
  softRed: Float32Array,
  softGreen: Float32Array,
  softBlue: Float32Array,
): readonly [number, number, number] {
  let [rr, rg, rb, gg, gb, bb] = [0, 0, 0, 0, 0, 0];
  for (let at = 0; at < softRed.length; at += 7) {
    const r = (level.red.at[at] ?? 0) - (softRed[at] ?? 0);
    const g = (level.green.at[at] ?? 0) - (softGreen[at] ?? 0);
    const b = (level.blue.at[at] ?? 0) - (softBlue[at] ?? 0);
    rr += r * r;
    rg += r * g;
    rb += r * b;
    gg += g * g;
    gb += g * b;
    bb += b * b;
  }
  let [x, y, z] = [0.3, 0.6, 0.1];
  for (let round = 0; round < 12; round += 1) {
    const [nx, ny, nz] = [rr * x + rg * y + rb * z, rg * x + gg * y + gb * z, rb * x + gb * y + bb * z];
    const length = Math.hypot(nx, ny, nz) + 1e-12;
    [x, y, z] = [nx / length, ny / length, nz / length];
  }
  return [x, y, z];
}

function shadeOf(
  level: Level,
  softRed: Float32Array,
  softGreen: Float32Array,
  softBlue: Float32Array,
): Plane {
  const { wide, high } = level.red;
  const [x, y, z] = mainDirection(level, softRed, softGreen, softBlue);
  const shade = { wide, high, at: new Float32Array(wide * high) };
  const square = { wide, high, at: new Float32Array(wide * high) };
  for (let at = 0; at < shade.at.length; at += 1) {
    const lift =
      x * ((level.red.at[at] ?? 0) - (softRed[at] ?? 0)) +
      y * ((level.green.at[at] ?? 0) - (softGreen[at] ?? 0)) +
      z * ((level.blue.at[at] ?? 0) - (softBlue[at] ?? 0));
    shade.at[at] = lift;
    square.at[at] = lift * lift;
  }
  const local = boxMean(square, 8).at;
  for (let at = 0; at < shade.at.length; at += 1) {
    const value = (shade.at[at] ?? 0) / Math.sqrt((local[at] ?? 0) + 1e-4);
    shade.at[at] = Math.max(-3, Math.min(3, value));
  }
  return shade;
}

/**
 * Takes the colour pattern out of a level, so that what repeats is the weave and not the drawing.
 *
 * Pixels are given to the nearest of up to seven colours of the blurred picture; those between two
 * colours fade out. What is left is how much lighter or darker a pixel is than its surroundings, in
 * spreads of its own colour, turned so that the narrow gap between nodes is always the dark part.
 *
 * @source none: this project's; clustering by k-means, relief by a high pass
 */
export function flatten(level: Level): Flattened {
  const { red, green, blue, scale, left, top } = level;
  const { wide, high } = red;
  const count = wide * high;
  const soft = (plane: Plane): Float32Array => boxMean(boxMean(plane, 2), 2).at;
  const [softRed, softGreen, softBlue] = [soft(red), soft(green), soft(blue)];
  const centres = findColours(softRed, softGreen, softBlue);
  const relief = new Float32Array(count);
  const colour = new Uint8Array(count);
  const surely = new Float32Array(count);
  const moments = new Float64Array(4 * centres.count);
  for (let at = 0; at < count; at += 1) {
    const r = softRed[at] ?? 0;
    const g = softGreen[at] ?? 0;
    const b = softBlue[at] ?? 0;
    const [index, squared] = nearest(centres, r, g, b);
    const weight = Math.exp(-squared / (softness * softness));
    const lift =
      0.3 * ((red.at[at] ?? 0) - r) + 0.5 * ((green.at[at] ?? 0) - g) + 0.2 * ((blue.at[at] ?? 0) - b);
    colour[at] = index;
    surely[at] = weight;
    relief[at] = lift;
    const place = 4 * index;
    moments[place] = (moments[place] ?? 0) + weight;
    moments[place + 1] = (moments[place + 1] ?? 0) + weight * lift;
    moments[place + 2] = (moments[place + 2] ?? 0) + weight * lift * lift;
    moments[place + 3] = (moments[place + 3] ?? 0) + weight * lift * lift * lift;
  }
  const means = new Float64Array(centres.count);
  const gains = new Float64Array(centres.count);
  let energy = 0;
  let whole = 0;
  for (let index = 0; index < centres.count; index += 1) {
    const [held = 0, first = 0, second = 0, third = 0] = moments.subarray(4 * index, 4 * index + 4);
    if (held < 30) continue;
    const mean = first / held;
    const variance = second / held - mean * mean;
    const spread = Math.sqrt(Math.max(variance, 1e-8));
    const skewness = (third / held - 3 * mean * variance - mean ** 3) / spread ** 3;
    means[index] = mean;
    gains[index] = Math.tanh(-3 * skewness + 0.15) / Math.max(spread, 0.012);
    energy += held * variance;
    whole += held;
  }
  for (let at = 0; at < count; at += 1) {
    const index = colour[at] ?? 0;
    const value = ((relief[at] ?? 0) - (means[index] ?? 0)) * (gains[index] ?? 0);
    relief[at] = (surely[at] ?? 0) * Math.max(-3.5, Math.min(3.5, value));
  }
  return {
    scale,
    left,
    top,
    shade: shadeOf(level, softRed, softGreen, softBlue),
    relief: { wide, high, at: relief },
    bands: [red.at, green.at, blue.at],
    colour,
    surely,
    colours: centres.count,
    contrast: Math.sqrt(energy / Math.max(whole, 1)),
  };
}
