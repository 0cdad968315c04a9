import type { RugFactOf, RugStanding } from '../../dossier/index.ts';

type Money = RugFactOf<'PriceQuoted'>['notToExceed'];

/** A number as a person reads it: no more digits than asked, no trailing zeros. */
export const figure = (value: number, digits = 1): string => String(Number(value.toFixed(digits)));

export const moneyWords = ({ amountMinor, currency }: Money): string => {
  const format = new Intl.NumberFormat(undefined, { style: 'currency', currency });
  const digits = format.resolvedOptions().maximumFractionDigits ?? 2;
  return format.format(amountMinor / 10 ** digits);
};

/** Kilograms with what they are in pounds where the workshop thinks in pounds. */
export const massWords = (massKg: number, units: 'metric' | 'customary' = 'metric'): string =>
  units === 'metric'
    ? `${figure(massKg, 2)} kg`
    : `${figure(massKg, 2)} kg (${figure(massKg / 0.45359237)} lb)`;

export const temperatureWords = (celsius: number, units: 'metric' | 'customary' = 'metric'): string =>
  units === 'metric' ? `${figure(celsius)} °C` : `${figure(celsius)} °C (${figure(celsius * 1.8 + 32)} °F)`;

export const percentWords = (fraction: number): string => `${figure(fraction * 100)} %`;

const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(values.length, 1);

/** Mean length and width [mm] of a measurement. */
export const meanSize = ({ lengthsMm, widthsMm }: RugFactOf<'RugMeasured'>) => ({
  lengthMm: mean(lengthsMm),
  widthMm: mean(widthsMm),
});

export const sizeWords = (
  measured: RugFactOf<'RugMeasured'>,
  units: 'metric' | 'customary' = 'metric',
): string => {
  const { lengthMm, widthMm } = meanSize(measured);
  const metric = `${figure(lengthMm / 10)} × ${figure(widthMm / 10)} cm`;
  if (units === 'metric') return metric;
  return `${metric} (${feet(lengthMm)} × ${feet(widthMm)})`;
};

const feet = (mm: number): string => {
  const inches = Math.round(mm / 25.4);
  return `${Math.floor(inches / 12)}′ ${inches % 12}″`;
};

/** Minutes, as hours from two hours on. */
export const minutesWords = (minutes: number): string =>
  minutes < 120 ? `${figure(minutes)} min` : `${figure(minutes / 60)} h`;

/** A stain a plan's step is for, as the person knows it: number on the picture and what it is. */
export const stainWords = (marks: RugStanding['marks'], stain: string): string => {
  const index = marks.findIndex(({ mark }) => mark === stain);
  const mark = marks[index];
  if (mark === undefined) return stain;
  return `mark ${index + 1}, ${mark.stain === undefined || mark.stain === 'unknown' ? mark.word : mark.stain}`;
};

/** `3 things`, `1 thing`. */
export const counted = (count: number, one: string, many = `${one}s`): string =>
  `${count} ${count === 1 ? one : many}`;

export const lengthWords = (mm: number, units: 'metric' | 'customary'): string =>
  units === 'metric' ? `${figure(mm / 10)} cm` : `${figure(mm / 25.4)} in`;
