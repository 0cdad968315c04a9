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
  /** Moisture by a meter that was set on fibre, as regain [kg/kg]; the mean of so many points. */
  | { readonly meterRegain: number; readonly points?: number | undefined }
  /** Highest point of a meter less its reading on something known dry, in its own units: it only tells dry from damp. */
  | { readonly meterAboveDry: number }
  | { readonly touch: Touch }
);

/** From this hour on a rug hangs or lies otherwise; faces go before the posture. */
export interface Turning {
  readonly hour: number;
  readonly posture?: Posture | undefined;
  readonly faces?: number | undefined;
}

/** How well the numbers of a rug are known: spreads of their logarithms in place of the usual ones. */
export interface RugSpreads {
  readonly startRegain?: number | undefined;
  readonly resistance?: number | undefined;
  readonly criticalRegain?: number | undefined;
  /** Wide for a rug that nobody weighed before the water. */
  readonly dryMass?: number | undefined;
}

/** A rug can weigh less than its reckoned oven-dry mass only as far as that mass is unsure. */
export const leastMassKg = ({ dryMassKg, spreads }: Pick<DryRug, 'dryMassKg' | 'spreads'>): number =>
  dryMassKg * Math.exp(-3 * (spreads?.dryMass ?? 0));

export interface DryRug {
  readonly id: string;
  readonly areaM2: number;
  /** Oven-dry [kg]. */
  readonly dryMassKg: number;
  readonly fibres: FibreShares;
  /** How it is made, in the workshop's own word: what past rugs of its kind taught is taken by it. */
  readonly construction?: string | undefined;
  /** [kg water per kg oven-dry]; when absent the way of extraction stands for it, and without that saturation. */
  readonly startRegain?: number | undefined;
  readonly extraction?: Extraction | undefined;
  /** Faces that give off water; goes before the posture. Without both, one face: the worst case. */
  readonly faces?: number | undefined;
  readonly posture?: Posture | undefined;
  /** In rising hours. */
  readonly turnings?: readonly Turning[] | undefined;
  readonly targetRegain?: number | undefined;
  readonly criticalRegain?: number | undefined;
  /** Greatest resistance of the dry outer pile [s/m]. */
  readonly resistance?: number | undefined;
  /** What this rug dries against what is reckoned of it, besides the room's factor; 1 until learnt. */
  readonly g?: number | undefined;
  readonly spreads?: RugSpreads | undefined;
  readonly hungAtHour?: number | undefined;
  readonly takenAtHour?: number | undefined;
  /** First wetting; may lie before hour 0. When absent, the hour of hanging. */
  readonly wettedAtHour?: number | undefined;
  readonly readings?: readonly DryReading[] | undefined;
}

/** A stretch of running: from this hour, until that or to the end. */
export interface Running {
  readonly fromHour: number;
  readonly untilHour?: number | undefined;
}

export interface Dehumidifier {
  readonly litresPerDay: number;
  readonly ratedC?: number | undefined;
  readonly ratedRh?: number | undefined;
  /** A refrigerant machine when absent: it is the weaker in cool or dry air. */
  readonly type?: 'refrigerant' | 'desiccant' | undefined;
  /** Electrical [kW]; when absent, the usual for its litres and type. */
  readonly kw?: number | undefined;
  /** The whole time when absent. */
  readonly runs?: readonly Running[] | undefined;
}

export interface Fan {
  /** Along the faces while it runs [m/s]; the greatest of room and running fans holds. */
  readonly airSpeed: number;
  readonly kw?: number | undefined;
  readonly runs?: readonly Running[] | undefined;
}

export interface Heater {
  readonly kw: number;
  /** It throttles as the room comes near this [°C]; without it, it always runs full. */
  readonly untilC?: number | undefined;
  readonly runs?: readonly Running[] | undefined;
}

/** A window or vent held open, in place of the room's usual air changes. */
export interface Opening extends Running {
  readonly airChangesPerHour: number;
}

/** One row of a logger or of a timer: where every row has a humidity, the room's air is as measured. */
export interface AirRow {
  readonly hour: number;
  readonly airC: number;
  readonly rh?: number | undefined;
}

/** Air that was measured, temperature and humidity both. */
export interface MeasuredAirRow extends AirRow {
  readonly rh: number;
}

export interface DryRoom {
  readonly volumeM3: number;
  /** Held at this. Without it and without `air`, the temperature follows from the room's heat. */
  readonly airC?: number | undefined;
  readonly startRh?: number | undefined;
  /** Along the faces [m/s]. */
  readonly airSpeed: number;
  readonly airChangesPerHour: number;
  readonly openings?: readonly Opening[] | undefined;
  /** What the room's past rugs showed of its drying against the reckoned one; 1 until learnt. */
  readonly g?: number | undefined;
  /** Spread of the logarithm of `g`; the usual one until learnt. */
  readonly gSpread?: number | undefined;
  /** Scheduled or measured air in place of `airC`; straight between the rows, held after the last. */
  readonly air?: readonly AirRow[] | undefined;
  /** Air as read in the room so far; it holds until its last row, and what comes after goes on from there. */
  readonly measured?: readonly MeasuredAirRow[] | undefined;
  /** Where the temperature follows from the heat: at hour 0 [°C]. */
  readonly startC?: number | undefined;
  /** Loss through walls, floor and roof [W/K]; by the room's volume when absent. */
  readonly wallsWPerK?: number | undefined;
}

export interface DryScenario {
  readonly hours: number;
  readonly uncertainty?: boolean | undefined;
  /** Joint draws of the unknowns; 200 when absent. */
  readonly draws?: number | undefined;
  readonly seed?: number | undefined;
  readonly room: DryRoom;
  /** Outside air; with `series`, straight between its rows and held outside them. */
  readonly outside: {
    readonly airC: number;
    readonly rh: number;
    readonly series?: readonly MeasuredAirRow[] | undefined;
  };
  readonly dehumidifiers: readonly Dehumidifier[];
  readonly fans?: readonly Fan[] | undefined;
  readonly heaters?: readonly Heater[] | undefined;
  readonly rugs: readonly DryRug[];
}
