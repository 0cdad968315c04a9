import type { PreparedRoom } from './preparedRoom.ts';

/** What no one knows exactly: one value per rug, in the order of the room's rugs. */
export interface Unknowns {
  /** [kg/kg] */
  readonly startRegain: Float64Array;
  /** The room's calibration factor as it meets each rug. */
  readonly g: Float64Array;
  /** Greatest resistance of the dry outer pile [s/m]. */
  readonly resistance: Float64Array;
  readonly criticalRegain: Float64Array;
  /** True oven-dry mass over the one that was reckoned. */
  readonly dryMass: Float64Array;
  /** Water that rugs outside the run truly give over what was reckoned of them. */
  others: number;
  /** True loss through the walls over the reckoned one. */
  walls: number;
}

/** The unknowns as the scenario has them. */
export function knownUnknowns({ rugs, g }: PreparedRoom): Unknowns {
  return {
    startRegain: Float64Array.from(rugs, (rug) => rug.startRegain),
    g: Float64Array.from(rugs, (rug) => g * rug.g),
    resistance: Float64Array.from(rugs, (rug) => rug.resistance),
    criticalRegain: Float64Array.from(rugs, (rug) => rug.criticalRegain),
    dryMass: new Float64Array(rugs.length).fill(1),
    others: 1,
    walls: 1,
  };
}

/** Room for the unknowns of so many rugs. */
export const emptyUnknowns = (rugs: number): Unknowns => ({
  startRegain: new Float64Array(rugs),
  g: new Float64Array(rugs),
  resistance: new Float64Array(rugs),
  criticalRegain: new Float64Array(rugs),
  dryMass: new Float64Array(rugs),
  others: 1,
  walls: 1,
});
