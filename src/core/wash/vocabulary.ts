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
