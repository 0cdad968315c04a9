import { instantOf } from './roomView.ts';

/** A midnight of the reader's own clock within the hours drawn. */
export interface DayTick {
  readonly hour: number;
  readonly day: string;
}

const perDay = 86_400_000;

/**
 * The midnights between two hours of a forecast, each with the day that begins there.
 *
 * @param zero - instant of hour 0
 * @param from - first hour drawn
 * @param until - last hour drawn
 */
export function dayTicks(zero: string, from: number, until: number): readonly DayTick[] {
  const first = new Date(instantOf(zero, from));
  first.setHours(24, 0, 0, 0);
  const count = Math.max(0, Math.ceil((until - from) / 24));
  return Array.from({ length: count }, (_, day) => {
    const midnight = new Date(first.getTime() + day * perDay);
    // Two nights a year are an hour longer or shorter.
    midnight.setHours(midnight.getHours() >= 12 ? 24 : 0, 0, 0, 0);
    return {
      hour: (midnight.getTime() - Date.parse(zero)) / 3_600_000,
      day: midnight.toLocaleDateString(undefined, { weekday: 'short' }),
    };
  }).filter(({ hour }) => hour < until);
}
