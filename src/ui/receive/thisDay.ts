import { serverNow } from '../call/index.ts';

/** Today where this device is, such as `2026-11-25`. */
export function thisDay(): string {
  const now = new Date(serverNow());
  const two = (value: number) => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
