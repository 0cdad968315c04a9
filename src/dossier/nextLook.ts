import settings from '../../data/drying/room.json' with { type: 'json' };
import type { RugSpread } from '../core/drying/index.ts';
import type { DryingRug } from './dryingRug.ts';
import { hoursBetween } from './wetting.ts';

/** When to look at a drying rug again, or that it is time to prove it dry; which reading tells most, the forecast says. */
export interface NextLook {
  readonly what: 'look' | 'prove';
  readonly dueAt: string;
}

const later = (instant: string, hours: number): string =>
  new Date(Date.parse(instant) + hours * 3_600_000).toISOString();

/**
 * The look at a rug that is due next: at once while nobody has read it, then as often as the workshop reads,
 * and the proof once the forecast calls it dry.
 *
 * @param rug - as it dries
 * @param spread - its forecast; null while there is none
 * @param now - instant
 * @source workshop-setting (data/drying/room.json, readingEveryHours)
 */
export function nextLook(
  rug: DryingRug,
  spread: Pick<RugSpread, 'interval80'> | null,
  now: string,
): NextLook {
  const end = spread?.interval80[1] ?? null;
  if (end !== null && hoursBetween(rug.hungAt, now) >= end) return { what: 'prove', dueAt: now };
  const last = rug.looks.at(-1)?.when;
  return { what: 'look', dueAt: last === undefined ? now : later(last, settings.readingEveryHours) };
}
