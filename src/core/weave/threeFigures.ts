/**
 * Numbers of a text with at most three figures each: a count of knots is never known better.
 *
 * @param text - such as `31.87 x 36.214`
 * @returns `31.9 x 36.2`; large numbers are rounded to their third figure
 * @source none: rule of this project
 */
export const toThreeFigures = (text: string): string =>
  text.replace(/\d+(\.\d+)?/g, (number) => threeFigures(Number(number)));

/**
 * A number with at most three figures; from ten thousand on its thousands stand apart.
 *
 * @source none: rule of this project
 */
export const threeFigures = (value: number): string => {
  const written = String(Number(value.toPrecision(3)));
  return value < 10_000 ? written : written.replace(/\B(?=(\d{3})+$)/g, '\u00a0');
};
