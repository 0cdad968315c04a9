import differentialTable from '../../../data/wash/differential.json' with { type: 'json' };
import mixtureTable from '../../../data/wash/mixtures.json' with { type: 'json' };
import type { Rulebook } from './rulebook.ts';
import { countsAs } from './ruleText.ts';

const spanWords = ({ least, most }: { readonly least: number; readonly most: number }, unit: string) =>
  `${least} to ${most} ${unit}`;

/** Single figures that are part of the product: other rows are worked out from them. */
export const figureTexts = ({ tests, stops, spotting, shop }: Rulebook) => [
  ...countsAs('dye test', 'how a reading counts', {
    'a photographed grade counts from a chance of': [String(tests.worstProbability)],
    'the covered 24 h test is asked at grade': [`${tests.covered24hIfGradeAtMost} or lower`],
    'a blot is pressed with': [`${tests.blotPressureKPa} kPa`],
    'the planned bath is tested with': tests.bathAgents,
    'the acid rinse is tested with': tests.acidAgents,
  }),
  ...countsAs('question', 'when a stain has its class', {
    'answers needed': [String(differentialTable.leastAnswers)],
    'always answered': differentialTable.mustAnswer,
  }),
  ...countsAs('stain', 'when a spotter is proven', {
    'staining, at least grade': [spotting.spotterPassesAt],
    'change of the colour, at least grade': [spotting.spotterColourChangePassesAt],
    'a place nobody measured counts as': [`${spotting.unmeasuredCm2} cm²`],
  }),
  ...countsAs('forbidden mixture', 'figures of mixtures', {
    'sulfite with acid is blocked below': [`pH ${mixtureTable.sulfiteBlockedBelowPh}`],
    'and wants air below': [`pH ${mixtureTable.sulfiteVentilateBelowPh}`],
    'peroxide on wool or silk is blocked above': [`pH ${mixtureTable.peroxideAlkaliPh}`],
    'a neutral detergent’s own dilution': [`pH ${spanWords(mixtureTable.neutralDetergentPh, '').trim()}`],
    'a product that holds this serves as nothing else': Object.entries(mixtureTable.onlyAs).map(
      ([chemical, as]) => `${chemical}: ${as}`,
    ),
    'a product that holds this serves only as an agent of its kind': Object.values(mixtureTable.onlyAsKind),
  }),
  ...countsAs('stop condition', 'figures of a stop', {
    'a white cloth stops at': [`${stops.clothHalfGrades} half grade below the bench`],
    'a rescue from running colours brings the bath to': [`pH ${stops.rescueBleedPh.target}`],
    'and never below': [`pH ${stops.rescueBleedPh.least}`],
  }),
  ...countsAs('dose and time', 'what a rug usually weighs and takes', {
    ...Object.fromEntries(
      Object.entries(shop.massKgPerM2).map(([construction, band]) => [
        construction,
        [spanWords(band, 'kg/m²')],
      ]),
    ),
    'drying, where nothing was forecast': [spanWords(shop.dryingH, 'h')],
    'one person lifts, until the workshop says': [`${shop.liftingLimitKg} kg`],
  }),
];
