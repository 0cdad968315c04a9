/** The two ways a piece may come in; the second answers to conservation practice. */
export const routes = ['rug in use', 'heritage piece'] as const;
export type Route = (typeof routes)[number];

export const constructions = [
  'knotted pile',
  'flatweave',
  'tufted',
  'hooked',
  'felt',
  'machine woven',
  'unknown',
] as const;
export type Construction = (typeof constructions)[number];

export const fibres = [
  'wool',
  'camel',
  'goat',
  'mohair',
  'silk',
  'cotton',
  'viscose',
  'other regenerated',
  'linen',
  'hemp',
  'jute',
  'sisal',
  'coir',
  'seagrass',
  'nylon',
  'polyester',
  'polypropylene',
  'acrylic',
  'metal thread',
  'leather',
  'unknown',
] as const;
export type Fibre = (typeof fibres)[number];

/** Shares of a blend by dry mass; they sum to 1. */
export type FibreShares = { readonly [F in Fibre]?: number };

export interface Foundation {
  readonly warp?: Fibre;
  readonly weft?: Fibre;
  /** A secondary backing cloth of a tufted or hooked piece; absent in a piece without one. */
  readonly backing?: Fibre;
}

export const colourKinds = [
  'field colour',
  'repair yarn',
  'fringe',
  'selvedge',
  'lining',
  'touch-up',
] as const;
export type ColourKind = (typeof colourKinds)[number];

export const dyes = [
  'natural',
  'indigo',
  'acid',
  'metal complex',
  'chrome',
  'reactive',
  'direct',
  'vat',
  'disperse',
  'basic',
  'pigment',
  'undyed',
  'unknown',
] as const;
export type Dye = (typeof dyes)[number];

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

export const sides = ['face', 'back'] as const;
export type Side = (typeof sides)[number];

/** Test liquids, weakest first. */
export const testLiquids = [
  'dry crock',
  'damp crock',
  'cold water',
  'planned bath',
  'acid rinse',
  'margin',
  'alkali challenge',
  'covered 24 h',
  'spotter',
] as const;
export type TestLiquid = (typeof testLiquids)[number];

/** Grey-scale grades, worst first. */
export const grades = ['1', '1-2', '2', '2-3', '3', '3-4', '4', '4-5', '5'] as const;
export type Grade = (typeof grades)[number];

export const agents = [
  'water',
  'neutral detergent',
  'alkaline detergent',
  'citric acid',
  'acetic acid',
  'formic acid',
  'ammonia',
  'sodium carbonate',
  'sodium bicarbonate',
  'hydrogen peroxide',
  'percarbonate',
  'perborate',
  'hypochlorite',
  'metabisulfite',
  'dithionite',
  'chelator',
  'protease',
  'amylase',
  'lipase',
  'cellulase',
  'alcohol',
  'acetone',
  'flammable solvent',
  'dry solvent',
  'dye stabiliser',
  'disinfectant',
  'hydrofluoric or bifluoride rust remover',
  'salt solution',
] as const;
export type Agent = (typeof agents)[number];

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

export const findingCodes = [
  'colour run',
  'urine',
  'metal thread',
  'beads',
  'leather parts',
  'wood parts',
  'dry rot',
  'weak foundation',
  'hole',
  'tear',
  'open ends',
  'cut sides',
  'old repair',
  'glue',
  'tape',
  'iron-on patch',
  'painted',
  'inked',
  'touched up',
  'tip fading',
  'tea wash',
  'antique wash',
  'over-dyed',
  'corroded brown',
  'lined',
  'cut and sewn',
  'active moth',
  'active beetle',
  'active mould',
  'category 3 water',
  'old insecticide',
  'long thick pile',
  'damage during work',
] as const;
export type FindingCode = (typeof findingCodes)[number];

export const certainties = ['seen', 'suspected', 'ruled out'] as const;
export type Certainty = (typeof certainties)[number];

export interface Finding {
  readonly code: FindingCode;
  /** Absent: seen. Suspected counts as seen and says what ruling it out would allow. */
  readonly certainty?: Certainty;
  /** Where on the rug, in words. */
  readonly at?: string;
}

export const stainClasses = [
  'particulate',
  'oil, wax or gum',
  'protein',
  'tannin',
  'synthetic dye',
  'rust',
  'urine',
  'combination',
  'cellulosic browning',
  'yellowing',
  'mould stain',
  'tide line',
  'unknown',
] as const;
export type StainClass = (typeof stainClasses)[number];

export interface Stain {
  readonly id: string;
  readonly class?: StainClass;
  readonly areaCm2?: number;
  /** Ids of the colours under it; absent: all. */
  readonly colours?: readonly string[];
  readonly at?: string;
}

/** The latex of a tufted piece; failing is powdery, hard or smelling. */
export const latexStates = ['sound', 'failing', 'unknown'] as const;
export type LatexState = (typeof latexStates)[number];

/** Wettest first. */
export const methods = [
  'full immersion',
  'flow wash',
  'panel wash',
  'surface shampoo',
  'low moisture',
  'dry only',
  'refuse and refer',
] as const;
export type Method = (typeof methods)[number];

export const equipment = ['extractor', 'dryer', 'power'] as const;
export type Equipment = (typeof equipment)[number];

export const signatories = ['owner', 'conservator'] as const;
export type Signatory = (typeof signatories)[number];

export const ruleIds = [
  'R01',
  'R02',
  'R03',
  'R04',
  'R05',
  'R06',
  'R07',
  'R08',
  'R09',
  'R10',
  'R11',
  'R12',
  'R13',
  'R14',
  'R15',
  'R16',
  'R17',
  'R18',
  'R19',
  'R20',
  'R21',
  'R22',
  'R23',
  'R24',
  'R25',
  'R26',
  'R27',
  'R28',
  'R29',
  'R30',
  'R31',
  'R32',
  'R33',
  'R34',
  'R35',
  'R36',
  'R37',
  'R38',
  'R39',
  'R40',
] as const;
export type RuleNumber = (typeof ruleIds)[number];

export interface ClientRefusal {
  readonly what: 'dye test' | 'disclosure';
  readonly signed: boolean;
}

export interface OwnerOverride {
  readonly rule: RuleNumber;
  readonly reason: string;
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
  readonly stains?: readonly Stain[];
  /** Wet hours until dry [h], entered by hand until a forecast exists. */
  readonly expectedDryingHours?: number;
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
