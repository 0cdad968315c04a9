import type { Rulebook } from './rulebook.ts';
import type {
  Agent,
  Certainty,
  ColourKind,
  Construction,
  Dye,
  Equipment,
  Fibre,
  FibreShares,
  FindingCode,
  Grade,
  LatexState,
  Route,
  RuleNumber,
  Side,
  Signatory,
  StainClass,
  TestLiquid,
} from './vocabulary.ts';

export * from './vocabulary.ts';

/**
 * Where the hours until dry come from. A forecast gives the hours within which nine in ten such rugs are dry;
 * where it saw no end, the hours it looked at are a lower bound.
 */
export const dryingHoursFrom = [
  'estimated by hand',
  'forecast of the drying room, dry by then in nine of ten',
  'forecast of the drying room, no end in sight by then',
] as const;
export type DryingHoursFrom = (typeof dryingHoursFrom)[number];

export interface Foundation {
  readonly warp?: Fibre;
  readonly weft?: Fibre;
  /** A secondary backing cloth; absent in a piece without one, and not known in a tufted piece. */
  readonly backing?: Fibre;
}

export interface PlanColour {
  readonly id: string;
  readonly name: string;
  readonly kind: ColourKind;
  readonly dyeClass?: Dye;
  /** Whether a light colour touches it, where a run would show; unknown counts as yes. */
  readonly besideLightField?: boolean;
  /** Whether it lies where urine, a water mark or an old run is; unknown counts as yes once one is found. */
  readonly atUrinePlace?: boolean;
}

/** One dye test reading. What was not recorded stays absent and then covers nothing. */
export interface DyeTest {
  /** Id of the colour. */
  readonly colour: string;
  readonly side: Side;
  readonly liquid: TestLiquid;
  /** Absent: the agents the named liquid stands for. Required in effect for a spotter. */
  readonly agents?: readonly Agent[];
  /** Concentrate in the liquid [g/L]; absent: the rulebook's use strength. */
  readonly strengthGPerL?: number;
  readonly pH?: number;
  readonly temperatureC?: number;
  readonly minutes?: number;
  readonly outcome: 'graded' | 'unclear' | 'refused';
  /** Staining of the white cloth, by eye. */
  readonly grade?: Grade;
  /** From a photograph: probability of each grade; the worst above 5 % counts. */
  readonly gradeProbabilities?: { readonly [G in Grade]?: number };
  /** Change of the colour itself; counts for acid rinse and spotters. */
  readonly colourChangeGrade?: Grade;
  readonly atUrinePlace?: boolean;
  /** Done after the acid pre-treatment of a colour that bled a little. */
  readonly afterPretreatment?: boolean;
  /** Age of the reading [days]; absent: too old to clear anything, though a bad grade still counts. */
  readonly ageDays?: number;
}

export interface Finding {
  readonly code: FindingCode;
  /** Absent: seen. Suspected counts as seen and says what ruling it out would allow. */
  readonly certainty?: Certainty;
  /** Where on the rug, in words. */
  readonly at?: string;
}

export interface Stain {
  readonly id: string;
  readonly class?: StainClass;
  readonly areaCm2?: number;
  /** Ids of the colours under it; absent: all. */
  readonly colours?: readonly string[];
  readonly at?: string;
}

export interface ClientRefusal {
  readonly what: 'dye test' | 'disclosure';
  readonly signed: boolean;
}

export interface OwnerOverride {
  readonly rule: RuleNumber;
  readonly reason: string;
  /** What it was granted for; absent: all that the rule is about. */
  readonly about?: readonly string[];
}

/** A liquid somebody means to mix or lay on this rug beyond what the plan itself proposes. */
export interface PlannedBath {
  readonly purpose: string;
  readonly agents: readonly Agent[];
  /** Computed or measured; unknown counts as the most dangerous. */
  readonly pH?: number;
}

/**
 * What is known of a rug when its wash is planned. What is absent or `'unknown'` counts as its most
 * sensitive candidate. Lists that report events (refusals, equipment down, overrides, sign-offs) are
 * the exception: absent means none was reported.
 */
export interface PlanFacts {
  /** The rules it is judged by: the workshop’s rulebook. Absent: the shipped one. */
  readonly rulebook?: Rulebook;
  readonly route: Route;
  readonly construction?: Construction;
  readonly pile?: FibreShares;
  readonly foundation?: Foundation;
  /** Asked of tufted pieces only. */
  readonly latex?: LatexState;
  readonly areaM2: number;
  /** Absent: the top of the construction's mass band. */
  readonly dryMassKg?: number;
  readonly lengthM?: number;
  readonly pileHeightMm?: number;
  /** Absent or empty: colours unknown, no wet step. */
  readonly colours?: readonly PlanColour[];
  readonly dyeTests?: readonly DyeTest[];
  /** Absent: condition not recorded, no wet step. Empty: looked for, nothing found. */
  readonly findings?: readonly Finding[];
  /** False: some findings are noted, but nobody looked the whole rug over; no wet step. Absent: as `findings` says. */
  readonly lookedOver?: boolean;
  readonly stains?: readonly Stain[];
  /** Wet hours until dry [h]. */
  readonly expectedDryingHours?: number;
  /** Where these hours come from; absent: estimated by hand. */
  readonly expectedDryingFrom?: DryingHoursFrom;
  readonly soiling?: 'dust only' | 'soiled';
  readonly monthsSinceWash?: number;
  /** Hours from first wetting to the promised hand-back [h]; absent: nothing promised. */
  readonly promiseHours?: number;
  /** Whether the declared value is above what the washer may decide alone; unknown counts as above. */
  readonly valueAboveAuthority?: boolean;
  /** Wet mass one person may lift here [kg]; absent: the rulebook's setting. */
  readonly liftingLimitKg?: number;
  readonly poleLengthM?: number;
  readonly equipmentDown?: readonly Equipment[];
  readonly clientRefusals?: readonly ClientRefusal[];
  readonly signOffs?: readonly Signatory[];
  /** A corrective aim for colours that have already run, agreed with the client. */
  readonly correctiveAimAgreed?: boolean;
  readonly overrides?: readonly OwnerOverride[];
  readonly plannedBaths?: readonly PlannedBath[];
}
