import type { PreparedRoom, PreparedRug } from './preparedRoom.ts';
import { spreadsOf, type WeightedLeanings } from './rugBelief.ts';

/** What readings alone say of a number, the first guess taken out: its middle, and the spread of its logarithm. */
export interface Evidence {
  readonly likely: number;
  readonly spread: number;
}

/** What the readings of one rug say of its room and its make; null where they say next to nothing. */
export interface RugEvidence {
  readonly g: Evidence | null;
  readonly resistance: Evidence | null;
  readonly criticalRegain: Evidence | null;
}

/** Information, in units of the first guess's, below which readings say nothing worth keeping. */
const leastInformation = 0.1;

/**
 * What readings add to the first guess of a rug.
 *
 * @param belief - after the readings
 * @param rug - prepared
 * @param room - with its first guess of the factor
 * @source none: quotient of two normal beliefs
 */
export function evidenceOf(
  { leanings: all, weights }: WeightedLeanings,
  rug: PreparedRug,
  room: Pick<PreparedRoom, 'g' | 'gSpread'>,
): RugEvidence {
  const spreads = spreadsOf(rug, room.gSpread);
  const of = (at: number, guess: number): Evidence | null => {
    const mean = all.reduce((sum, leaning, k) => sum + (leaning[at] ?? 0) * (weights[k] ?? 0), 0);
    const variance = all.reduce((sum, one, k) => sum + ((one[at] ?? 0) - mean) ** 2 * (weights[k] ?? 0), 0);
    const information = 1 / Math.max(variance, 1e-4) - 1;
    const spread = spreads[at] ?? Number.NaN;
    if (information < leastInformation) return null;
    const middle = mean / Math.max(variance, 1e-4) / information;
    return { likely: guess * Math.exp(spread * middle), spread: spread / Math.sqrt(information) };
  };
  return {
    g: of(0, room.g * rug.g),
    resistance: of(2, rug.resistance),
    criticalRegain: of(3, rug.criticalRegain),
  };
}
