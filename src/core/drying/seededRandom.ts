/** A source of even chances: numbers from 0 up to, but not, 1. */
export type Random = () => number;

/**
 * A source of chances that gives the same ones for the same seed, on every machine.
 *
 * @param seed - a whole number
 * @returns even numbers in [0, 1)
 * @source none: a 32-bit counter whose bits are mixed by multiplication (T. Ettinger, mulberry32, public domain)
 */
export function seededRandom(seed: number): Random {
  let counter = seed | 0;
  return () => {
    counter = (counter + 0x6d2b79f5) | 0;
    let mixed = Math.imul(counter ^ (counter >>> 15), counter | 1);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 2 ** 32;
  };
}

/**
 * A normal chance of mean 0 and spread 1.
 *
 * @param random - source of even chances
 * @source box-muller-1958, eq. 1
 */
export const normal = (random: Random): number =>
  Math.sqrt(-2 * Math.log(1 - random())) * Math.cos(2 * Math.PI * random());

/**
 * The value below which a share of the values lies, straight between neighbours. Infinite values sort last.
 *
 * @param sorted - in rising order, at least one
 * @param share - [0 … 1]
 * @source none: linear interpolation of the ordered sample
 */
export function quantileOf(sorted: ArrayLike<number>, share: number): number {
  const place = share * (sorted.length - 1);
  const below = Math.floor(place);
  const [from, to] = [
    sorted[below] ?? Number.NaN,
    sorted[Math.min(sorted.length - 1, below + 1)] ?? Number.NaN,
  ];
  return place === below || from === to ? from : from + (place - below) * (to - from);
}
