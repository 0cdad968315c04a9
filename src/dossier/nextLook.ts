import settings from '../../data/drying/room.json' with { type: 'json' };
import type { RugSpread } from '../core/drying/index.ts';
import type { DryingRug } from './dryingRug.ts';
import { hoursBetween } from './wetting.ts';

/** What to measure next on a drying rug, when, and why that. */
export interface NextLook {
  readonly what: 'weigh' | 'pocket' | 'prove';
  readonly why:
    | 'starting-water-unknown'
    | 'pace-unknown'
    | 'narrows-most-near-the-end'
    | 'dry-mass-unknown'
    | 'dry-by-forecast';
  readonly dueAt: string;
}

const later = (instant: string, hours: number): string =>
  new Date(Date.parse(instant) + hours * 3_600_000).toISOString();

/**
 * The look at a rug that tells most now: its water before anything is known of it, then its pace, then the
 * last stretch in the pile, and the proof once the forecast calls it dry.
 *
 * @param rug - as it dries
 * @param spread - its forecast; null while there is none
 * @param now - instant
 * @source none: order of what the model does not know (data/drying/settings.json, belief); intervals are workshop settings
 */
export function nextLook(
  rug: DryingRug,
  spread: Pick<RugSpread, 'interval80'> | null,
  now: string,
): NextLook {
  const end = spread?.interval80[1] ?? null;
  if (end !== null && hoursBetween(rug.hungAt, now) >= end) {
    return { what: 'prove', why: 'dry-by-forecast', dueAt: now };
  }
  const last = rug.looks.at(-1)?.when ?? rug.hungAt;
  const dueAt = later(last, settings.readingEveryHours);
  if (rug.ovenDryFrom === 'mass band') return { what: 'pocket', why: 'dry-mass-unknown', dueAt };
  const weighings = rug.looks.filter(({ massKg }) => massKg !== undefined).length;
  if (weighings === 0) return { what: 'weigh', why: 'starting-water-unknown', dueAt: now };
  if (weighings === 1) return { what: 'weigh', why: 'pace-unknown', dueAt };
  // A weighing before the band begins still moves its end; one in the middle of it comes too late to plan by.
  const begin = spread?.interval80[0] ?? null;
  const beforeBand = begin === null ? dueAt : later(rug.hungAt, Math.max(0, begin - 1));
  return {
    what: 'weigh',
    why: 'narrows-most-near-the-end',
    dueAt: beforeBand > now && beforeBand < dueAt ? beforeBand : dueAt,
  };
}
