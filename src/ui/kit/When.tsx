import { serverNow } from '../call/serverClock.ts';

const clock = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const dayNear = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short' });
const dayFar = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const whole = new Intl.DateTimeFormat('en-GB', { dateStyle: 'full', timeStyle: 'short' });

/** An instant in words: the hour if it is today, the day with the hour otherwise. */
export function instantWords(at: string, now: number = serverNow()): string {
  const date = new Date(at);
  const today = new Date(now);
  if (Number.isNaN(date.getTime())) return at;
  if (date.toDateString() === today.toDateString()) return clock.format(date);
  const isThisYear = date.getFullYear() === today.getFullYear();
  return `${(isThisYear ? dayNear : dayFar).format(date)}, ${clock.format(date)}`;
}

/** A day such as `2026-11-25`, in words. */
export function dayWords(day: string): string {
  const [year = 0, month = 1, date = 1] = day.split('-').map(Number);
  return dayFar.format(new Date(year, month - 1, date));
}

/** An instant, with the full date on touch or hover; `day` leaves the hour out. */
export function When({ at, day = false }: { readonly at: string; readonly day?: boolean }) {
  return (
    <time dateTime={at} title={whole.format(new Date(at))}>
      {day ? dayFar.format(new Date(at)) : instantWords(at)}
    </time>
  );
}
