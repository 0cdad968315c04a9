/**
 * Repeatable chance: the same seed draws the same rug.
 *
 * @param seed - whole number
 * @returns a function that gives numbers from 0 (included) to 1 (not included)
 * @source none: multiplicative congruential generator with the minimal-standard constants 16807 and 2^31 − 1
 */
export function chance(seed: number): () => number {
  let state = (Math.abs(Math.floor(seed)) % 2147483646) + 1;
  return () => {
    state = (state * 16807) % 2147483647;
    return (state - 1) / 2147483646;
  };
}
