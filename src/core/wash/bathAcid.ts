import type { Band, Bounds } from './limit.ts';
import { agentsAllowed } from './mixtures.ts';
import { isFit, type MixingPlace } from './productFor.ts';
import { isDosedToPh, type Mixed, type MixLine, type StepMix, stepMix } from './stepMix.ts';

/** What brings the water of a neutral bath down into the band of the rug. */
export interface BathAcid {
  /** As read at the supply; null where nobody knows. */
  readonly waterPh: number | null;
  readonly band: Band;
  readonly mix: StepMix;
  readonly line: MixLine;
}

/** Weak acids that leave a bath easily steered, in the order they are looked for on the shelf. */
const acids = ['citric acid', 'acetic acid'] as const;

/**
 * The acid a bath of neutral detergent takes with this water: the detergent does not move hard water, which then
 * stands above what the rug bears.
 *
 * @param step - of a plan
 * @param place - shelf, supply water and day
 * @param bounds - the rug's limits, for acids it does not bear
 * @returns null where the water already lies within the band, another agent sets the pH, no bath is mixed, or the
 * rug bears no acid
 * @source crc-handbook constants through stepMix
 */
export function bathAcid(
  step: Mixed,
  place: MixingPlace,
  bounds: Pick<Bounds, 'forbiddenAgents'>,
): BathAcid | null {
  const { targetPh: band, agents } = step;
  if (band === undefined || !agents.includes('neutral detergent') || agents.some(isDosedToPh)) return null;
  const isThere = (acid: (typeof acids)[number]) =>
    place.shelf.some(
      ({ serves, removed, lots }) =>
        serves.includes(acid) &&
        removed === null &&
        lots.some((lot) => lot.amount > 0 && isFit(place.today)(lot)),
    );
  const borne = acids.filter((acid) => agentsAllowed([acid], bounds));
  const acid = borne.find(isThere) ?? borne[0];
  if (acid === undefined) return null;
  const mix = stepMix({ ...step, agents: [acid] }, place);
  const [line] = mix.lines;
  const { asks } = mix.water;
  // A reading too old to dose by is too old to call the water mild.
  const waterPh = asks === 'old' ? null : (place.water?.pH ?? null);
  const isMild = waterPh !== null && waterPh <= band.most;
  return line === undefined || mix.volume !== 'bath' || isMild ? null : { waterPh, band, mix, line };
}
