import type { Tries } from '../ports/accounts.ts';
import type { AccessProblem } from '../text/accessWords.ts';

/** NIST SP 800-63B asks for 8 at least; a shared machine in a busy room deserves a little more. */
const leastCharacters = 10;
const pinDigits = { least: 4, most: 8 };

export function passphraseProblem(passphrase: string): AccessProblem | null {
  const length = [...passphrase].length;
  return length < leastCharacters
    ? { code: 'passphrase-too-short', facts: { length, least: leastCharacters } }
    : null;
}

/** A PIN of digits that are neither all the same nor count up or down by one. */
export function pinProblem(pin: string): AccessProblem | null {
  const digits = [...pin].map(Number);
  const steps = new Set(digits.slice(1).map((digit, index) => digit - (digits[index] ?? 0)));
  const [only] = steps;
  const isRun = steps.size === 1 && only !== undefined && Math.abs(only) <= 1;
  const fits = /^\d+$/.test(pin) && digits.length >= pinDigits.least && digits.length <= pinDigits.most;
  return fits && !isRun ? null : { code: 'pin-too-simple', facts: pinDigits };
}

const freeTries = 5;
const longestMinutes = 60;

/** When tries are taken again: five are free, then 1, 2, 4 … up to 60 minutes after the last one. */
export function opensAt({ count, lastAt }: Tries): string | null {
  if (count < freeTries) return null;
  const minutes = Math.min(2 ** Math.min(count - freeTries, 10), longestMinutes);
  return new Date(Date.parse(lastAt) + minutes * 60_000).toISOString();
}

/** The refusal while tries are not taken. */
export const lockedUntil = (at: string, now: string): AccessProblem => ({
  code: 'sign-in-locked',
  facts: { opensAt: at, minutes: Math.max(1, Math.ceil((Date.parse(at) - Date.parse(now)) / 60_000)) },
});
