import { between, type Chance, normal } from '../loom/chance.ts';
import { drawSensor, lampOf, type Sensor, type Spectrum, sensed, whiteOf } from './spectra.ts';

/** One photograph's camera and light, as nothing in the reader knows them. */
export interface Phone {
  readonly sensor: Sensor;
  readonly lamp: Spectrum;
  /** Gains the phone took for white, red, green, blue. */
  readonly white: readonly [number, number, number];
  /** Light of the card's paper in the picture before the tone curve. */
  readonly exposure: number;
  /** Strength of the tone curve: 0 is the plain sRGB curve, 1 a strong S. */
  readonly tone: number;
  /** Haze in the lens, added to every pixel [share of white]. */
  readonly flare: number;
  readonly noise: number;
  readonly jpegQuality: number;
}

/** Conditions a workshop can be asked to keep. */
export interface PhoneBounds {
  readonly kelvin: readonly [number, number];
  readonly tone: readonly [number, number];
  readonly noise: readonly [number, number];
}

/** A phone in a room: how well it guesses the white is chance too. */
export function drawPhone(chance: Chance, bounds: PhoneBounds, sensor = drawSensor(chance)): Phone {
  const kelvin = between(chance, ...bounds.kelvin);
  const lamp = lampOf(kelvin, between(chance, -0.05, 0.12));
  const guess = lampOf(kelvin * between(chance, 0.85, 1.15), between(chance, -0.03, 0.08));
  const seen = sensed(sensor, guess, whiteOf(1, 0));
  return {
    ...{ sensor, lamp, exposure: between(chance, 0.4, 0.7) },
    white: [1 / (seen[0] ?? 1), 1 / (seen[1] ?? 1), 1 / (seen[2] ?? 1)],
    tone: between(chance, ...bounds.tone),
    flare: between(chance, 0, 0.02),
    noise: between(chance, ...bounds.noise),
    jpegQuality: Math.round(between(chance, 75, 96)),
  };
}

/** Linear light, red, green, blue, the phone makes of a surface; the mean of `paper` is its exposure. */
export function developed(
  phone: Phone,
  reflectance: Spectrum,
  paper: Spectrum,
): readonly [number, number, number] {
  const matrixed = (of: Spectrum): readonly number[] => {
    const raw = sensed(phone.sensor, phone.lamp, of).map((value, at) => value * (phone.white[at] ?? 1));
    return phone.sensor.matrix.map((row) => row.reduce((sum, value, at) => sum + value * (raw[at] ?? 0), 0));
  };
  const level = phone.exposure / (matrixed(paper).reduce((sum, value) => sum + value, 0) / 3);
  const [r = 0, g = 0, b = 0] = matrixed(reflectance).map((value) => level * value);
  return [r, g, b];
}

/** A phone's curve: sRGB, then an S about middle grey with a shoulder, in display values. */
export function shown(light: number, tone: number): number {
  const v = Math.max(0, light);
  const plain = v <= 0.0031308 ? 12.92 * v : 1.055 * v ** (1 / 2.4) - 0.055;
  if (plain >= 1) return 1;
  const bent = plain * plain * (3 - 2 * plain);
  return (1 - 0.55 * tone) * plain + 0.55 * tone * bent;
}

/** Turns light into bytes with the noise of a small sensor; `light` is red, green, blue for every pixel. */
export function expose(chance: Chance, phone: Phone, light: Float32Array): Uint8Array {
  const table = Float32Array.from({ length: 4097 }, (_, at) => 255 * shown(at / 3000, phone.tone));
  const bytes = new Uint8Array(light.length);
  for (let at = 0; at < light.length; at += 1) {
    const value = (light[at] ?? 0) * (1 - phone.flare) + phone.flare * phone.exposure;
    const grain = phone.noise * Math.sqrt(0.0004 + 0.02 * Math.max(0, value)) * normal(chance);
    const place = Math.min(4095, Math.max(0, 3000 * (value + grain)));
    const left = Math.floor(place);
    const level = (table[left] ?? 0) + (place - left) * ((table[left + 1] ?? 0) - (table[left] ?? 0));
    bytes[at] = Math.min(255, Math.max(0, Math.round(level)));
  }
  return bytes;
}
