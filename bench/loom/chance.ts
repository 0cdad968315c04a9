/** A source of numbers in 0 … 1; every draw of the loom comes from one, so a seed tells the whole picture. */
export type Chance = () => number;

/** Mulberry32 by Tommy Ettinger (public domain): small, seeded, good enough to draw rugs with. */
export function seeded(seed: number): Chance {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = state;
    mixed = Math.imul(mixed ^ (mixed >>> 15), mixed | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

export const between = (chance: Chance, low: number, high: number): number => low + (high - low) * chance();

/** Evenly spread on a logarithmic scale: as many coarse rugs as fine ones. */
export const betweenLog = (chance: Chance, low: number, high: number): number =>
  low * (high / low) ** chance();

export const whole = (chance: Chance, low: number, high: number): number =>
  Math.floor(between(chance, low, high + 1));

export function oneOf<Value>(chance: Chance, values: readonly Value[]): Value {
  const value = values[Math.floor(chance() * values.length)];
  if (value === undefined) throw new Error('nothing to choose from');
  return value;
}

/** Normal deviate, mean 0 and standard deviation 1 (Box and Muller 1958). */
export const normal = (chance: Chance): number =>
  Math.sqrt(-2 * Math.log(1 - chance())) * Math.cos(2 * Math.PI * chance());

/** A smooth random line: values at whole steps, joined by a raised cosine; about −1 … 1. */
export function wandering(chance: Chance, steps: number): (at: number) => number {
  const knots = Float64Array.from({ length: Math.max(2, steps) + 2 }, () => between(chance, -1, 1));
  return (at) => {
    const place = Math.min(Math.max(at, 0), knots.length - 1.001);
    const left = Math.floor(place);
    const ease = (1 - Math.cos(Math.PI * (place - left))) / 2;
    return (knots[left] ?? 0) * (1 - ease) + (knots[left + 1] ?? 0) * ease;
  };
}
