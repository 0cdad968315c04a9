import { urineStains } from './dyeVerdict.ts';
import type { Finding, FindingCode, PlanFacts } from './planFacts.ts';
import { bookOf, isAcid, isSulfite, massBandOf, proteinFibres, ventilateBelowPh } from './rulebook.ts';
import { ruleLimits, type SourcedLimit } from './sourcedLimit.ts';

type RuleCaseName = readonly [rule: Parameters<typeof ruleLimits>[1], caseName: string];

/** Which rule a finding calls up; colour run, urine and the rest that need more facts stand below. */
const ruleOfFinding: { readonly [Code in FindingCode]?: RuleCaseName } = {
  urine: ['R04', 'urine'],
  'metal thread': ['R12', 'part'],
  beads: ['R12', 'part'],
  'leather parts': ['R12', 'part'],
  'wood parts': ['R12', 'part'],
  'dry rot': ['R13', 'rot'],
  'weak foundation': ['mark weak foundation', 'weak'],
  hole: ['mark open damage', 'body'],
  tear: ['mark open damage', 'body'],
  'open ends': ['R14', 'edge'],
  'cut sides': ['R14', 'edge'],
  'old repair': ['R15', 'repair'],
  glue: ['R15', 'repair'],
  tape: ['R15', 'repair'],
  'iron-on patch': ['R15', 'repair'],
  painted: ['R16', 'paint'],
  inked: ['R16', 'paint'],
  'touched up': ['R16', 'paint'],
  'tip fading': ['R16', 'paint'],
  'tea wash': ['R17', 'finish'],
  'antique wash': ['R17', 'finish'],
  'over-dyed': ['R17', 'finish'],
  'corroded brown': ['R18', 'brown'],
  lined: ['R26', 'layers'],
  'cut and sewn': ['R26', 'layers'],
  'active moth': ['R27', 'insect'],
  'active beetle': ['R27', 'insect'],
  'active mould': ['R28', 'mould'],
  'category 3 water': ['R29', 'water'],
  'old insecticide': ['R30', 'residue'],
  'long thick pile': ['R31', 'pile'],
  'damage during work': ['R37', 'damage'],
};

const describe = ({ code, certainty, at }: Finding): string =>
  [certainty === 'suspected' ? `${code}, suspected` : code, ...(at === undefined ? [] : [at])].join(', ');

function fromFinding(finding: Finding, facts: PlanFacts): readonly SourcedLimit[] {
  if (finding.certainty === 'ruled out') return [];
  const book = bookOf(facts);
  const about = describe(finding);
  const assumed = finding.certainty === 'suspected';
  if (finding.code === 'colour run') {
    return ruleLimits(
      book,
      'R03',
      facts.correctiveAimAgreed === true ? 'aim agreed' : 'no aim',
      about,
      assumed,
    );
  }
  const rule = ruleOfFinding[finding.code];
  return rule === undefined ? [] : ruleLimits(book, rule[0], rule[1], about, assumed);
}

/** Dyes that forbid agents or alkali whatever the tests say. */
function dyeKinds(facts: PlanFacts): readonly SourcedLimit[] {
  const book = bookOf(facts);
  const fibres = Object.keys(facts.pile ?? {});
  const protein =
    fibres.length === 0 ||
    fibres.some((fibre) => fibre === 'unknown' || proteinFibres.some((one) => one === fibre));
  return (facts.colours ?? []).flatMap(({ name, dyeClass = 'unknown' }) => {
    const unknown = dyeClass === 'unknown';
    return [
      ...(dyeClass === 'indigo' || unknown ? ruleLimits(book, 'R19', 'indigo', name, unknown) : []),
      ...(dyeClass === 'natural' || dyeClass === 'indigo' || unknown
        ? ruleLimits(book, 'R20', 'natural', name, unknown)
        : []),
      ...(protein && (dyeClass === 'acid' || unknown)
        ? ruleLimits(book, 'R23', 'acid dye', name, unknown)
        : []),
    ];
  });
}

/** Dry mass, or the top of the construction's band where nobody weighed it. */
export function dryMassOf(facts: PlanFacts): { readonly kg: number; readonly weighed: boolean } {
  if (facts.dryMassKg !== undefined) return { kg: facts.dryMassKg, weighed: true };
  const band = massBandOf(facts.construction ?? 'unknown') ?? bookOf(facts).shop.massKgPerM2.unknown;
  return { kg: band.most * facts.areaM2, weighed: false };
}

/** Mass with all the water it can hold [kg]. @source common-practice: saturated about 2.4 kg water per kg */
export const wetMassOf = (facts: PlanFacts): number =>
  dryMassOf(facts).kg * (1 + bookOf(facts).shop.saturatedWaterKgPerKg);

function handling(facts: PlanFacts): readonly SourcedLimit[] {
  const book = bookOf(facts);
  const heavy = wetMassOf(facts) > (facts.liftingLimitKg ?? book.shop.liftingLimitKg);
  const long = facts.lengthM !== undefined && facts.lengthM > (facts.poleLengthM ?? book.shop.poleLengthM);
  return [
    ...(heavy ? ruleLimits(book, 'R32', 'weight', 'wet mass', facts.dryMassKg === undefined) : []),
    ...(long ? ruleLimits(book, 'R32', 'length', 'length') : []),
  ];
}

function circumstances(facts: PlanFacts): readonly SourcedLimit[] {
  const { route, signOffs = [], expectedDryingHours, equipmentDown = [], clientRefusals = [] } = facts;
  const book = bookOf(facts);
  // A date nobody knows counts as recent: a rug with only dust in it loses nothing by staying dry.
  const recent = (facts.monthsSinceWash ?? 0) < book.shop.recentWashMonths;
  const slow = expectedDryingHours === undefined || expectedDryingHours > book.shop.mouldHours;
  const heritage = signOffs.includes('conservator') ? 'heritage signed' : 'heritage';
  return [
    ...(facts.valueAboveAuthority === false
      ? []
      : ruleLimits(
          book,
          'R33',
          'value',
          facts.valueAboveAuthority === true ? 'declared value' : 'value not declared',
          facts.valueAboveAuthority === undefined,
        )),
    ...(route === 'heritage piece' ? ruleLimits(book, 'R33', heritage, 'heritage piece') : []),
    ...(clientRefusals.some(({ what, signed }) => what === 'dye test' && signed)
      ? ruleLimits(book, 'R34', 'signed test', 'dye test refused')
      : []),
    ...(clientRefusals.some(({ what, signed }) => what === 'disclosure' || !signed)
      ? ruleLimits(book, 'R34', 'refused', 'client’s refusal')
      : []),
    ...(recent && facts.soiling === 'dust only'
      ? ruleLimits(book, 'R35', 'dust', 'washed within the year')
      : []),
    ...(equipmentDown.length > 0 ? ruleLimits(book, 'R36', 'down', equipmentDown.join(' and ')) : []),
    ...(slow
      ? ruleLimits(
          book,
          'R38',
          'slow',
          expectedDryingHours === undefined
            ? 'drying time not known'
            : `${expectedDryingHours} h, ${facts.expectedDryingFrom ?? 'estimated by hand'}`,
          expectedDryingHours === undefined,
        )
      : []),
  ];
}

/** A bath of acid and sulfite that is not forbidden outright still wants air. */
const plannedGas = (facts: PlanFacts): readonly SourcedLimit[] =>
  (facts.plannedBaths ?? [])
    .filter(
      ({ agents, pH }) =>
        agents.some(isSulfite) && agents.some(isAcid) && pH !== undefined && pH < ventilateBelowPh,
    )
    .flatMap(({ purpose }) => ruleLimits(bookOf(facts), 'R24', 'near', purpose));

/**
 * The limits that findings, dye kinds, weight and circumstances set.
 *
 * @param facts - what is known of the rug; a condition nobody recorded counts as the worst
 * @source data/wash/rules.json, each rule with its own source
 */
export const findingLimits = (facts: PlanFacts, book = bookOf(facts)): readonly SourcedLimit[] => [
  ...(facts.findings === undefined || facts.lookedOver === false
    ? ruleLimits(book, 'R40', 'condition', 'condition not recorded', true)
    : []),
  ...(facts.findings ?? []).flatMap((finding) => fromFinding(finding, facts)),
  ...(facts.pileHeightMm !== undefined && facts.pileHeightMm >= book.shop.longPileMm
    ? ruleLimits(book, 'R31', 'pile', `pile ${facts.pileHeightMm} mm`)
    : []),
  ...urineStains(facts).flatMap((stain) => {
    const known = stain.class === 'urine';
    const about = `${stain.at ?? `stain ${stain.id}`}${known ? '' : ', which may be urine'}`;
    return ruleLimits(book, 'R04', 'urine', about, !known);
  }),
  ...plannedGas(facts),
  ...dyeKinds(facts),
  ...handling(facts),
  ...circumstances(facts),
];
