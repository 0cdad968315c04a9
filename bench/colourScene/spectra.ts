import { between, type Chance } from '../loom/chance.ts';

/** Light or reflectance at 400, 410 … 700 nm. */
export type Spectrum = readonly number[];

export const wavelengths: readonly number[] = Array.from({ length: 31 }, (_, index) => 400 + 10 * index);

export const spectrum = (of: (nm: number) => number): Spectrum => wavelengths.map(of);

const bell = (nm: number, middle: number, below: number, above: number): number =>
  Math.exp(-0.5 * ((nm - middle) / (nm < middle ? below : above)) ** 2);

/** Eye of the 2° observer: the fit with lobes of Wyman, Sloan and Shirley, JCGT 2 (2013), from memory of the paper. */
const eye = {
  x: spectrum(
    (nm) =>
      1.056 * bell(nm, 599.8, 37.9, 31) +
      0.362 * bell(nm, 442, 16, 26.7) -
      0.065 * bell(nm, 501.1, 20.4, 26.2),
  ),
  y: spectrum((nm) => 0.821 * bell(nm, 568.8, 46.9, 40.5) + 0.286 * bell(nm, 530.9, 16.3, 31.1)),
  z: spectrum((nm) => 1.217 * bell(nm, 437, 11.8, 36) + 0.681 * bell(nm, 459, 26, 13.8)),
};

/** A lamp or daylight of a colour temperature, by Planck's law; a green or magenta cast bends it. */
export const lampOf = (kelvin: number, cast = 0): Spectrum =>
  spectrum((nm) => {
    const metres = nm * 1e-9;
    const planck = 1 / (metres ** 5 * (Math.exp(0.014388 / (metres * kelvin)) - 1));
    const at560 = 1 / (560e-9 ** 5 * (Math.exp(0.014388 / (560e-9 * kelvin)) - 1));
    return (planck / at560) * (1 + cast * bell(nm, 540, 35, 35));
  });

const daylight = lampOf(6504);

const sumOf = (one: Spectrum, two: Spectrum, three: Spectrum): number =>
  one.reduce((sum, value, at) => sum + value * (two[at] ?? 0) * (three[at] ?? 0), 0);

/** CIELAB of a reflectance under daylight of 6504 K against the perfect white (ISO/CIE 11664-4, written here anew). */
export function labOfReflectance(reflectance: Spectrum): {
  readonly L: number;
  readonly a: number;
  readonly b: number;
} {
  const one = reflectance.map(() => 1);
  const f = (eyeOf: Spectrum): number => {
    const t = sumOf(eyeOf, daylight, reflectance) / sumOf(eyeOf, daylight, one);
    return t > 216 / 24389 ? t ** (1 / 3) : ((24389 / 27) * t + 16) / 116;
  };
  const [x, y, z] = [f(eye.x), f(eye.y), f(eye.z)];
  return { L: 116 * y - 16, a: 500 * (x - y), b: 200 * (y - z) };
}

/** A camera's three filters over its sensor, and the matrix its maker found for daylight. */
export interface Sensor {
  readonly bands: readonly [Spectrum, Spectrum, Spectrum];
  readonly matrix: readonly (readonly number[])[];
}

/** XYZ to linear sRGB (IEC 61966-2-1). */
const screen = [
  [3.2406, -1.5372, -0.4986],
  [-0.9689, 1.8758, 0.0415],
  [0.0557, -0.204, 1.057],
];

/** Smooth reflectances a camera's maker would trim the colours on. */
const trimming = (chance: Chance): readonly Spectrum[] =>
  Array.from({ length: 40 }, () => {
    const [middle, width, depth, level] = [
      ...[between(chance, 400, 700), between(chance, 30, 110)],
      ...[between(chance, -0.9, 0.9), between(chance, 0.2, 0.9)],
    ] as [number, number, number, number];
    return spectrum((nm) =>
      Math.min(0.95, Math.max(0.02, level * (1 + depth * bell(nm, middle, width, width)))),
    );
  });

/** Least squares of three numbers a row. */
function solve3(rows: readonly (readonly number[])[], right: readonly number[]): readonly number[] {
  const normal = [0, 1, 2].map((i) =>
    [0, 1, 2, 3].map((j) =>
      rows.reduce((sum, row, at) => sum + (row[i] ?? 0) * (j === 3 ? (right[at] ?? 0) : (row[j] ?? 0)), 0),
    ),
  );
  for (let i = 0; i < 3; i += 1)
    for (let k = 0; k < 3; k += 1) {
      const [top, line] = [normal[i] ?? [], normal[k] ?? []];
      if (k === i) continue;
      const times = (line[i] ?? 0) / (top[i] ?? 1);
      for (let j = 0; j < 4; j += 1) line[j] = (line[j] ?? 0) - times * (top[j] ?? 0);
    }
  return normal.map((row, i) => (row[3] ?? 0) / (row[i] ?? 1));
}

/** What a sensor gives for a reflectance under a lamp, white being 1. */
export const sensed = ({ bands }: Sensor, lamp: Spectrum, reflectance: Spectrum): readonly number[] =>
  bands.map((band) => sumOf(band, lamp, reflectance));

/** A phone's camera: filters that are not the eye's, so that its colours are never quite right. */
export function drawSensor(chance: Chance): Sensor {
  const band = (middle: number, width: number): Spectrum => {
    const [at, wide] = [middle + between(chance, -6, 6), width * between(chance, 0.92, 1.08)];
    const leak = between(chance, 0.01, 0.04);
    return spectrum((nm) => bell(nm, at, wide, wide) + leak);
  };
  const bands = [band(598, 34), band(536, 40), band(462, 28)] as const;
  const white = spectrum(() => 1);
  const raw = { bands, matrix: [] };
  const balance = sensed(raw, daylight, white);
  const samples = trimming(chance);
  const rows = samples.map((one) =>
    sensed(raw, daylight, one).map((value, at) => value / (balance[at] ?? 1)),
  );
  const seen = samples.map((one) => {
    const whole = sumOf(eye.y, daylight, white);
    const xyz = [eye.x, eye.y, eye.z].map((of) => sumOf(of, daylight, one) / whole);
    return screen.map((line) => line.reduce((sum, value, at) => sum + value * (xyz[at] ?? 0), 0));
  });
  const matrix = [0, 1, 2].map((channel) => {
    const found = solve3(
      rows,
      seen.map((value) => value[channel] ?? 0),
    );
    // A maker keeps white white.
    const sum = found.reduce((total, value) => total + value, 0);
    return found.map((value) => value / sum);
  });
  return { bands, matrix };
}

/** Cloth that took up dye, by the Kubelka–Munk ratio: absorption over scattering adds up (textile practice). */
export const dyed = (cloth: Spectrum, dye: Spectrum, amount: number): Spectrum =>
  cloth.map((reflectance, at) => {
    const ratio = (1 - reflectance) ** 2 / (2 * reflectance) + amount * (dye[at] ?? 0);
    return 1 + ratio - Math.sqrt(ratio ** 2 + 2 * ratio);
  });

/** Absorption of dyes that bleed from rugs, in shape only; chosen by eye. */
export const dyes = {
  red: spectrum((nm) => bell(nm, 515, 38, 30) + 0.25 * bell(nm, 420, 30, 40)),
  pink: spectrum((nm) => bell(nm, 540, 28, 22)),
  orange: spectrum((nm) => bell(nm, 470, 50, 28)),
  yellow: spectrum((nm) => bell(nm, 425, 40, 32)),
  blue: spectrum((nm) => bell(nm, 610, 60, 45) + 0.1),
  green: spectrum((nm) => bell(nm, 640, 45, 45) + 0.8 * bell(nm, 430, 30, 30)),
  brown: spectrum((nm) => 0.25 + bell(nm, 400, 60, 90)),
  violet: spectrum((nm) => bell(nm, 565, 45, 40)),
} as const satisfies Readonly<Record<string, Spectrum>>;

export type DyeName = keyof typeof dyes;

/** White of paper or cotton, warm (positive) or cold. */
export const whiteOf = (level: number, warmth: number): Spectrum =>
  spectrum((nm) => level * (1 + warmth * ((nm - 560) / 150)) * (nm < 430 ? 1 - 0.002 * (430 - nm) : 1));
