/** How figures are written on papers: instants, days, money, lengths, masses. */

type Units = 'metric' | 'customary';

/**
 * An instant as the workshop's clock showed it.
 *
 * @param instant - `2026-11-25T09:00:00.000Z`
 * @param timeZone - IANA name
 * @returns `25 November 2026, 10:00`
 * @source none: wording of this project
 */
export const momentWords = (instant: string, timeZone: string): string =>
  `${dayOfInstant(instant, timeZone)}, ${clockWords(instant, timeZone)}`;

/** The same, short for the narrow columns of a table: `25 Nov 2026, 10:00`. */
export const shortMoment = (instant: string, timeZone: string): string =>
  `${shortDay(instant, timeZone)}, ${clockWords(instant, timeZone)}`;

/** The day of an instant, short: `25 Nov 2026`. */
export const shortDay = (instant: string, timeZone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, day: 'numeric', month: 'short', year: 'numeric' }).format(
    Date.parse(instant),
  );

/** The day of an instant: `25 November 2026`. */
export const dayOfInstant = (instant: string, timeZone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, day: 'numeric', month: 'long', year: 'numeric' }).format(
    Date.parse(instant),
  );

/** The time of an instant: `10:00`. */
export const clockWords = (instant: string, timeZone: string): string =>
  new Intl.DateTimeFormat('en-GB', { timeZone, hour: '2-digit', minute: '2-digit', hourCycle: 'h23' }).format(
    Date.parse(instant),
  );

/** A calendar day `2026-11-25` in words; a day has no time zone. */
export const dayWords = (day: string): string => dayOfInstant(`${day}T12:00:00.000Z`, 'UTC');

/** Hours between two instants. */
export const hoursBetween = (from: string, until: string): number =>
  (Date.parse(until) - Date.parse(from)) / 3_600_000;

/** The instant so many hours after another. */
export const instantAfter = (from: string, hours: number): string =>
  new Date(Date.parse(from) + hours * 3_600_000).toISOString();

/** A number with at most `digits` decimals, no idle noughts. */
export const figure = (value: number, digits = 1): string => String(Number(value.toFixed(digits)));

/**
 * Money in words of its currency.
 *
 * @param money - minor units (cents) and ISO 4217 code; the number of decimals is the currency's own
 * @returns `€120.00`
 * @source none: wording of this project
 */
export function moneyWords(money: { readonly amountMinor: number; readonly currency: string }): string {
  const format = new Intl.NumberFormat('en-GB', { style: 'currency', currency: money.currency });
  const decimals = format.resolvedOptions().maximumFractionDigits ?? 2;
  return format.format(money.amountMinor / 10 ** decimals);
}

const inchMm = 25.4;

const feetAndInches = (mm: number): string => {
  const halves = Math.round((mm / inchMm) * 2);
  const feet = Math.floor(halves / 24);
  return `${feet} ft ${figure((halves - feet * 24) / 2)} in`;
};

/** A length in centimetres, with feet and inches where the workshop thinks in them. */
export const lengthWords = (mm: number, units: Units): string =>
  units === 'metric' ? `${figure(mm / 10)} cm` : `${figure(mm / 10)} cm (${feetAndInches(mm)})`;

/** A mass in kilograms, with pounds where the workshop thinks in them. 1 lb = 0.45359237 kg. */
export const massWords = (kg: number, units: Units): string =>
  units === 'metric' ? `${figure(kg, 2)} kg` : `${figure(kg, 2)} kg (${figure(kg / 0.45359237)} lb)`;

/** An area in square metres, with square feet where the workshop thinks in them. */
export const areaWords = (m2: number, units: Units): string =>
  units === 'metric' ? `${figure(m2, 2)} m²` : `${figure(m2, 2)} m² (${figure(m2 / 0.09290304)} ft²)`;

export const temperatureWords = (celsius: number): string => `${figure(celsius)} °C`;
export const humidityWords = (fraction: number): string => `${figure(fraction * 100, 0)} % RH`;

/** Several figures with their unit once: `300, 301, 302 cm`. */
export const lengthsWords = (mm: readonly number[]): string =>
  `${mm.map((one) => figure(one / 10)).join(', ')} cm`;

export const mean = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + value, 0) / Math.max(1, values.length);

/** Whether heat was on where a rug was put to dry. */
export const heatWords = (heated: boolean | undefined): string => {
  if (heated === undefined) return 'heat not known, counted as heated';
  return heated ? 'with heat' : 'without heat';
};
