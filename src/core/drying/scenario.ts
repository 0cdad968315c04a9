import type { FibreShares } from '../wash/index.ts';

/** How a rug lies or hangs; it decides how many of its faces give off water. */
export const postures = ['hung', 'mesh', 'floor'] as const;
export type Posture = (typeof postures)[number];

/** How water was taken out before drying; it stands for the starting water where nobody weighed the rug. */
export const extractions = ['centrifuge', 'squeegee and vacuum', 'drained', 'saturated'] as const;
export type Extraction = (typeof extractions)[number];

export const touches = ['wet', 'damp', 'cool', 'dry'] as const;
export type Touch = (typeof touches)[number];

/** What a person or a device read on a rug, at an hour of the scenario. */
export type DryReading = { readonly hour: number } & (
  | { readonly massKg: number }
  | { readonly pocketRh: number }
  /** Moisture by a meter that was set on fibre, as regain [kg/kg]. */
  | { readonly meterRegain: number }
  | { readonly touch: Touch }
);

export interface DryRug {
  readonly id: string;
  readonly areaM2: number;
  /** Oven-dry [kg]. */
  readonly dryMassKg: number;
  readonly fibres: FibreShares;
  /** [kg water per kg oven-dry]; when absent the way of extraction stands for it, and without that saturation. */
  readonly startRegain?: number | undefined;
  readonly extraction?: Extraction | undefined;
  /** Faces that give off water; goes before the posture. Without both, one face: the worst case. */
  readonly faces?: number | undefined;
  readonly posture?: Posture | undefined;
  readonly targetRegain?: number | undefined;
  readonly criticalRegain?: number | undefined;
  /** Greatest resistance of the dry outer pile [s/m]. */
  readonly resistance?: number | undefined;
  readonly hungAtHour?: number | undefined;
  readonly takenAtHour?: number | undefined;
  /** First wetting; may lie before hour 0. When absent, the hour of hanging. */
  readonly wettedAtHour?: number | undefined;
  readonly readings?: readonly DryReading[] | undefined;
}

export interface Dehumidifier {
  readonly litresPerDay: number;
  readonly ratedC?: number | undefined;
  readonly ratedRh?: number | undefined;
  /** A refrigerant machine when absent: it is the weaker in cool or dry air. */
  readonly type?: 'refrigerant' | 'desiccant' | undefined;
}

/** One row of a logger or of a timer: where every row has a humidity, the room's air is as measured. */
export interface AirRow {
  readonly hour: number;
  readonly airC: number;
  readonly rh?: number | undefined;
}

export interface DryRoom {
  readonly volumeM3: number;
  readonly airC?: number | undefined;
  readonly startRh?: number | undefined;
  /** Along the faces [m/s]. */
  readonly airSpeed: number;
  readonly airChangesPerHour: number;
  /** What the room's past rugs showed of its drying against the reckoned one; 1 until learnt. */
  readonly g?: number | undefined;
  /** Scheduled or measured air in place of `airC`; straight between the rows, held after the last. */
  readonly air?: readonly AirRow[] | undefined;
}

export interface DryScenario {
  readonly hours: number;
  readonly uncertainty?: boolean | undefined;
  /** Joint draws of the unknowns; 200 when absent. */
  readonly draws?: number | undefined;
  readonly seed?: number | undefined;
  readonly room: DryRoom;
  readonly outside: { readonly airC: number; readonly rh: number };
  readonly dehumidifiers: readonly Dehumidifier[];
  readonly rugs: readonly DryRug[];
}
