import type { RugFactOf } from './facts/index.ts';
import { presentVisit, type RugStanding } from './standing.ts';
import { isWet } from './wetting.ts';

/** From which end of its pole or mesh a rug hangs or lies, and how far. */
export type SpotPosition = NonNullable<RugFactOf<'DryingStarted'>['position']>;

/** Where a wet rug of this visit dries now; null when it does not, or is dry. `room` is null in records from before rooms. */
export interface DryingPlace {
  readonly room: string | null;
  /** Pole or mesh of that room, where it was said. */
  readonly spot: string | null;
  /** Where along it, where somebody measured. */
  readonly position: SpotPosition | null;
}

/**
 * Where a rug dries now.
 *
 * @param standing - the rug's standing
 * @source none: rule of this project
 */
export function dryingPlaceOf(standing: RugStanding): DryingPlace | null {
  const visit = presentVisit(standing);
  if (visit === null || visit.dryingStarted === null || !isWet(visit)) return null;
  const begun = visit.dryingStarted;
  const moved = visit.turnings.findLast(({ room, when }) => room !== undefined && when >= begun.when);
  const said = moved ?? begun;
  return { room: said.room ?? null, spot: said.spot ?? null, position: said.position ?? null };
}
