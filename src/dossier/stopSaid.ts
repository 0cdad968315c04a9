import type { BrokenBand } from './stopsRaised.ts';

/** A stop as it was called; one of before its figures were kept, or that no band raised, has none. */
export interface SaidStop {
  readonly condition: string;
  readonly broke?: BrokenBand | undefined;
}

const figure = (value: number): string => String(Number(value.toFixed(2)));
const fahrenheit = (celsius: number): number => Math.round(celsius * 1.8 + 32);

/**
 * Why a stop holds: its words, then what was read and the band it left.
 *
 * @param units - what the workshop reads temperatures in
 * @returns e.g. `pH is too far outside its band. pH 7.9; keep 6 to 7.2.`
 * @source none: wording of this project
 */
export function stopSaid({ condition, broke }: SaidStop, units: 'metric' | 'customary'): string {
  if (broke === undefined) return condition;
  const { quantity, read, least, most } = broke;
  if (quantity === 'pH') {
    return `${condition} pH ${figure(read)}; keep ${figure(least)} to ${figure(most)}.`;
  }
  const [shown, unit] =
    units === 'metric' ? [figure, '°C'] : [(value: number) => figure(fahrenheit(value)), '°F'];
  return `${condition} ${shown(read)} ${unit}; keep ${shown(least)} to ${shown(most)} ${unit}.`;
}
