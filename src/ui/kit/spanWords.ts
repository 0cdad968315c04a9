const two = (value: number) => String(value).padStart(2, '0');

/** Seconds as `08:42`, or `1:08:42` from an hour on; negative when it has passed. */
export function spanWords(seconds: number): string {
  const whole = Math.floor(Math.abs(seconds));
  const hours = Math.floor(whole / 3600);
  const rest = `${two(Math.floor((whole % 3600) / 60))}:${two(whole % 60)}`;
  return `${seconds < 0 && whole > 0 ? '−' : ''}${hours > 0 ? `${hours}:` : ''}${rest}`;
}

/** How long ago or ahead, roughly: `12 min`, `5 h`, `3 days`. */
export function roughly(seconds: number): string {
  const whole = Math.abs(seconds);
  if (whole < 90) return '1 min';
  if (whole < 90 * 60) return `${Math.round(whole / 60)} min`;
  if (whole < 48 * 3600) return `${Math.floor(whole / 3600)} h`;
  return `${Math.floor(whole / 86_400)} days`;
}
