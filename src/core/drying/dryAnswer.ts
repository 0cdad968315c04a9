import type { AirState } from '../air/index.ts';
import type { WetClock } from '../mould/index.ts';
import type { Fibre } from '../wash/index.ts';
import type { NextReading } from './nextReading.ts';
import type { RoomHour } from './roomHours.ts';
import type { JudgedReading } from './rugBelief.ts';
import type { RugEvidence } from './rugEvidence.ts';
import type { ReadingKind } from './scenarioProblem.ts';
import type { RugHour } from './surfaceCourse.ts';

/** Bounds of the hours to the target; null: beyond the hours looked at. */
export type Bounds = readonly [number | null, number | null];

/** Regain at an hour, with the bounds that hold 80 and 95 % of the draws. */
export interface RegainBand {
  readonly hour: number;
  readonly median: number;
  readonly interval80: readonly [number, number];
  readonly interval95: readonly [number, number];
}

/** A rug's unknowns as they are believed. */
export interface LikelyRug {
  readonly startRegain: number;
  /** The room's factor as it meets this rug. */
  readonly g: number;
  readonly resistance: number;
  readonly criticalRegain: number;
  readonly dryMassKg: number;
}

/** What uncertainty adds to a rug's answer. */
export interface RugSpread {
  /** From hanging [h]. */
  readonly interval80: Bounds;
  readonly interval95: Bounds;
  /** Share of the draws that reach the target in the hours looked at. */
  readonly chanceDry: number;
  /** Share of the draws that stay wet for longer than the red clock. */
  readonly chanceRed: number;
  readonly bands: readonly RegainBand[];
  readonly readings: readonly JudgedReading[];
  readonly contradicted: boolean;
  /** The means of what is believed after the readings. */
  readonly likely: LikelyRug;
  /** What the readings alone say; null where there are none. */
  readonly evidence: RugEvidence | null;
  /** Readings that would narrow the forecast, the most telling first. */
  readonly next: readonly NextReading[];
}

export interface RugAnswer {
  readonly id: string;
  /** From hanging [h]; the median where the unknowns were drawn; null: not in the hours looked at. */
  readonly hoursToTarget: number | null;
  /** The same moment on the scenario's clock. */
  readonly targetAtHour: number | null;
  readonly targetRegain: number;
  readonly endRegain: number;
  readonly endSurfaceRh: number;
  readonly mouldIndex: number;
  /** From first wetting to the target [h]. */
  readonly hoursWet: number | null;
  readonly wetClock: WetClock;
  /** What an unknown fibre of it was taken for; null: every fibre is named. */
  readonly unknownFibreAs: Fibre | null;
  readonly course: readonly RugHour[];
  readonly spread?: RugSpread;
}

/** What has to be said before it happens. */
export type DryAlarm =
  | { readonly code: 'wet-past-amber'; readonly rug: string }
  /** How likely, where the unknowns were drawn; one course alone knows no chance. */
  | { readonly code: 'wet-past-red'; readonly rug: string; readonly chance: number | null }
  | { readonly code: 'not-dry-in-time'; readonly rug: string; readonly endRegain: number }
  | {
      readonly code: 'target-out-of-reach';
      readonly rug: string;
      readonly atRest: number;
      readonly target: number;
    }
  /** Neighbours or the room gave it water back after it had reached its target. */
  | { readonly code: 'damp-again'; readonly rug: string; readonly hour: number; readonly regain: number }
  | { readonly code: 'mould-may-begin'; readonly rug: string; readonly mouldIndex: number }
  | {
      readonly code: 'reading-stands-alone';
      readonly rug: string;
      readonly hour: number;
      readonly kind: ReadingKind;
      readonly spreads: number;
    }
  | { readonly code: 'readings-contradict-model'; readonly rug: string }
  | { readonly code: 'room-saturates'; readonly peakRh: number }
  | { readonly code: 'room-too-hot'; readonly peakC: number }
  | { readonly code: 'too-warm-for-fibre'; readonly rug: string; readonly airC: number };

/** What the air of the room at the start and the air outside hold; null where an air is too dry to say. */
export interface AirCompared {
  readonly room: AirState | null;
  readonly outside: AirState | null;
  /** Whether exchanging them dries the room: by humidity ratio, never by relative humidity. */
  readonly exchangeDries: boolean;
}

export interface DryAnswer {
  readonly air: AirCompared;
  readonly rugs: readonly RugAnswer[];
  /** The room hour by hour, along the likely course. */
  readonly hourly: readonly RoomHour[];
  readonly endRh: number;
  readonly peakRh: number;
  readonly endC: number;
  readonly peakC: number;
  /** Water found less water there should be, as a share of the load. */
  readonly waterBalanceError: number;
  readonly water: {
    readonly loadKg: number;
    readonly removedKg: number;
    /** Negative where the outside air brings water in. */
    readonly byAirExchangeKg: number;
    readonly byCondensationKg: number;
    /** While the air was measured: how much went is known, not which way. */
    readonly whileMeasuredKg: number;
    readonly byMachineKg: readonly number[];
  };
  /** The room's factor as it is believed; only where the unknowns were drawn. */
  readonly g?: { readonly likely: number; readonly least: number; readonly most: number };
  readonly alarms: readonly DryAlarm[];
}
