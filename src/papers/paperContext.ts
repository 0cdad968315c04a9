import type { BathAcid, MixLine, StepMix } from '../core/wash/index.ts';
import type {
  AirAt,
  ClientStanding,
  DryCriterion,
  RugEntry,
  RugStanding,
  ShelfGap,
  ShelfStanding,
  VisitStanding,
  WorkshopStanding,
} from '../dossier/index.ts';
import type { Problem } from '../units/index.ts';

/** Three sentences of a refusal, as the screen shows them. */
export interface RefusalWords {
  readonly happened: string;
  readonly matters: string;
  readonly now: string;
}

/** Words that papers share with the screens; the shell hands them in from text/. */
export interface PaperWords {
  readonly shelfGap: (gap: ShelfGap) => {
    readonly title: string;
    readonly happened: string;
    readonly now: readonly string[];
  };
  readonly problem: (problem: Problem) => RefusalWords;
  readonly dryAsked: (code: DryCriterion['code']) => string;
  readonly dryFound: (found: DryCriterion['found']) => string;
  /** What to measure out of a product, and for which bath; null where nothing could be worked out. */
  readonly mixLine: (mix: StepMix, line: MixLine) => { readonly amount: string; readonly of: string } | null;
  /** What is assumed of unknown water, and what to measure; null where nothing is. */
  readonly assumedWater: (water: StepMix['water']) => { readonly what: string; readonly now: string } | null;
  /** What brings a neutral bath down into its band with this water. */
  readonly bathAcid: (acid: BathAcid) => { readonly what: string; readonly now: string };
  readonly measuredOut: (least: number, most: number, unit: 'g' | 'mL') => string;
}

/** A rug of a consignment and the visit it came for. */
export interface ConsignedRug {
  readonly rug: RugStanding;
  readonly visit: VisitStanding;
}

/** Everything a paper is made from. The shell gathers it; makers only choose what to say. */
export interface PaperContext extends ConsignedRug {
  /** Instant of issue, and who asked for the paper (id of a person). */
  readonly issuedAt: string;
  readonly by: string;
  /** IANA name of the workshop's time zone: instants are kept in UTC and read by people at home. */
  readonly timeZone: string;
  readonly workshop: WorkshopStanding;
  /** What stands on the shelf and comes out of the tap at the time of issue. */
  readonly shelf?: ShelfStanding;
  /** The client of the visit; null where their data are not for this paper. */
  readonly client: ClientStanding | null;
  /** All rugs that came with this one, this one among them, by dossier number. */
  readonly consignment: readonly ConsignedRug[];
  /** The rug's whole stream, oldest first, withdrawn entries and all. */
  readonly entries: readonly RugEntry[];
  /** Air of its drying room while it dried, oldest first; absent where no room was named or nothing read. */
  readonly roomAir?: readonly AirAt[];
  readonly words: PaperWords;
}
