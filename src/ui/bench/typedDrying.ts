import { ovenDryMass } from '../../core/air/index.ts';
import type { DryScenario, Extraction, Posture } from '../../core/drying/index.ts';
import type { Fibre, FibreShares } from '../../core/wash/index.ts';

/** A rug and a room as somebody typed them at the bench; humidities in per cent as hygrometers show them. */
export interface TypedDrying {
  readonly areaM2: number | null;
  readonly massKg: number | null;
  readonly pile: Fibre;
  readonly foundation: Fibre;
  readonly extraction: Extraction;
  readonly posture: Posture;
  readonly together: number | null;
  readonly volumeM3: number | null;
  readonly airC: number | null;
  readonly rhPercent: number | null;
  readonly airSpeed: number | null;
  readonly airChanges: number | null;
  readonly outsideC: number | null;
  readonly outsideRhPercent: number | null;
  readonly machines: number | null;
  readonly litresPerDay: number | null;
  readonly ratedC: number | null;
  readonly ratedRhPercent: number | null;
  readonly machineType: 'refrigerant' | 'desiccant';
}

export const untouchedDrying: TypedDrying = {
  ...{ areaM2: null, massKg: null, pile: 'wool', foundation: 'cotton' },
  ...{ extraction: 'saturated', posture: 'floor', together: 1 },
  ...{ volumeM3: null, airC: null, rhPercent: null, airSpeed: 0.5, airChanges: 0.3 },
  ...{ outsideC: null, outsideRhPercent: null },
  ...{ machines: 0, litresPerDay: null, ratedC: 30, ratedRhPercent: 80, machineType: 'refrigerant' },
};

/** Share of the dry mass that usually is pile. */
const pileShare = 0.75;
export const hoursLookedAt = 72;

const sharesOf = ({ pile, foundation }: TypedDrying): FibreShares =>
  pile === foundation ? { [pile]: 1 } : { [pile]: pileShare, [foundation]: 1 - pileShare };

type Given = { readonly [Field in keyof TypedDrying]: NonNullable<TypedDrying[Field]> };

/** Fields that have no value yet, by name; the rating only where a machine runs. */
export function missingOf(typed: TypedDrying): readonly (keyof TypedDrying)[] {
  const rating: readonly string[] = ['litresPerDay', 'ratedC', 'ratedRhPercent'];
  return (Object.keys(untouchedDrying) as (keyof TypedDrying)[]).filter(
    (field) => typed[field] === null && (typed.machines !== 0 || !rating.includes(field)),
  );
}

const isGiven = (typed: TypedDrying): typed is Given => missingOf(typed).length === 0;

/**
 * The scenario that was typed, or null while something is missing.
 *
 * @param typed - the form
 * @param moreMachines - machines beyond those that are there
 */
export function dryScenarioOf(typed: TypedDrying, moreMachines = 0): DryScenario | null {
  if (!isGiven(typed)) return null;
  const fibres = sharesOf(typed);
  const { likely: dryMassKg } = ovenDryMass(typed.massKg, fibres, null, true);
  const { areaM2, extraction, posture, machineType: type, litresPerDay, ratedC } = typed;
  const machine = { litresPerDay, ratedC, ratedRh: typed.ratedRhPercent / 100, type };
  return {
    hours: hoursLookedAt,
    uncertainty: true,
    room: {
      volumeM3: typed.volumeM3,
      airC: typed.airC,
      startRh: typed.rhPercent / 100,
      airSpeed: typed.airSpeed,
      airChangesPerHour: typed.airChanges,
    },
    outside: { airC: typed.outsideC, rh: typed.outsideRhPercent / 100 },
    dehumidifiers: Array.from({ length: typed.machines + moreMachines }, () => machine),
    rugs: Array.from({ length: typed.together }, (_, i) => ({
      ...{ id: i === 0 ? 'This rug' : `Rug ${i + 1}`, areaM2, dryMassKg, fibres, extraction, posture },
    })),
  };
}
