import { describe, expect, test } from 'vitest';
import { bathTest, found, soundRug, tested } from '../../../test/support/soundRug.ts';
import type { Agent, DyeTest, Grade, PlanColour, PlanFacts, Stain } from './planFacts.ts';
import { planWash } from './planWash.ts';

interface Case {
  readonly rug: string;
  readonly facts: PlanFacts;
  /** Method, or the code of the refusal. */
  readonly gives: string;
  /** The rule that binds, and why a master would say so. */
  readonly rule: string;
  readonly because: string;
}

const c = (rug: string, facts: PlanFacts, gives: string, rule: string, because: string): Case => ({
  rug,
  facts,
  gives,
  rule,
  because,
});

const backed = (backing: 'cotton' | 'jute') => ({ warp: 'wool', weft: 'wool', backing }) as const;

/** A second colour, tested like the red. */
const withColour = (
  facts: PlanFacts,
  colour: Pick<PlanColour, 'id' | 'name' | 'kind'>,
  tests: readonly DyeTest[] = tested(),
): PlanFacts => ({
  ...facts,
  colours: [
    ...(facts.colours ?? []),
    { ...colour, dyeClass: 'chrome', besideLightField: false, atUrinePlace: false },
  ],
  dyeTests: [...(facts.dyeTests ?? []), ...tests.map((one) => ({ ...one, colour: colour.id }))],
});

/** The red lies where the mark is, and nobody has said whether it was tested there. */
const marked = (facts: PlanFacts): PlanFacts => ({
  ...facts,
  colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome', besideLightField: false }],
});
const stained = (stain: Stain): PlanFacts => marked({ ...soundRug, stains: [stain] });
const dyed = (dyeClass: 'natural' | 'indigo' | 'unknown'): PlanFacts => ({
  ...soundRug,
  colours: [
    {
      id: 'red',
      name: 'the dye',
      kind: 'field colour',
      dyeClass,
      besideLightField: false,
      atUrinePlace: false,
    },
  ],
});
const planned = (facts: PlanFacts, agents: readonly Agent[], pH?: number): PlanFacts => ({
  ...facts,
  plannedBaths: [{ purpose: 'the bath', agents, ...(pH === undefined ? {} : { pH }) }],
});
const onlyFace = (facts: PlanFacts): PlanFacts => ({
  ...facts,
  dyeTests: tested().filter(({ side }) => side === 'face'),
});
const challenged = (grade: Grade): readonly DyeTest[] => [
  ...tested(),
  bathTest('alkali challenge', grade, { pH: 8.5, agents: ['alkaline detergent'] }),
];
const cottonRug: PlanFacts = {
  ...soundRug,
  pile: { cotton: 1 },
  foundation: { warp: 'cotton', weft: 'cotton' },
};

/** Expectations of a careful workshop; common practice, no published source, where none is named. */
const cases: readonly Case[] = [
  c('sound wool', soundRug, 'full immersion', 'fibre wool', 'nothing forbids a bath'),
  c(
    'nobody tested',
    { ...soundRug, dyeTests: [] },
    'dry only',
    'dye unknown',
    'every untested colour counts as unstable',
  ),
  c(
    'tests two months old',
    { ...soundRug, dyeTests: tested().map((one) => ({ ...one, ageDays: 60 })) },
    'dry only',
    'dye unknown',
    'a test covers thirty days',
  ),
  c(
    'bath not tested, only water',
    { ...soundRug, dyeTests: tested().filter(({ liquid }) => liquid !== 'planned bath') },
    'dry only',
    'dye unknown',
    'water says nothing about detergent',
  ),
  c(
    'reading unclear',
    {
      ...soundRug,
      dyeTests: tested().map((one) =>
        one.liquid === 'planned bath' ? { ...one, outcome: 'unclear' as const } : one,
      ),
    },
    'dry only',
    'dye unknown',
    'unclear is not passed',
  ),
  c(
    'grade 4 in the bath',
    { ...soundRug, dyeTests: tested('4') },
    'full immersion',
    'dye watch',
    'cool, slightly acid, short',
  ),
  c(
    'grade 3-4 in the bath',
    { ...soundRug, dyeTests: tested('3-4') },
    'flow wash',
    'dye controlled',
    'no soak, acid first, test again',
  ),
  c(
    'grade 3 beside dark colours',
    { ...soundRug, dyeTests: tested('3') },
    'flow wash',
    'dye controlled',
    'a run would not show',
  ),
  c(
    'grade 3 beside ivory',
    {
      ...soundRug,
      dyeTests: tested('3'),
      colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome', besideLightField: true }],
    },
    'low moisture',
    'dye do not immerse',
    'a run would show for good',
  ),
  c(
    'grade 2 in the bath',
    { ...soundRug, dyeTests: tested('2') },
    'low moisture',
    'R01',
    'CCI Notes 13/14: dye migration cannot be undone',
  ),
  c(
    'grade 2 long ago',
    { ...soundRug, dyeTests: tested('2').map((one) => ({ ...one, ageDays: 400 })) },
    'low moisture',
    'dye do not immerse',
    'a bad grade does not age',
  ),
  c(
    'loose dry colour',
    { ...soundRug, dyeTests: tested('5', { 'dry crock': '3' }) },
    'full immersion',
    'R02',
    'no wet brushing, disclose',
  ),
  c(
    'holds the bath, runs overnight',
    { ...soundRug, dyeTests: tested('5', { 'covered 24 h': '3' }) },
    'low moisture',
    'dye slow bleeder too slow',
    'twenty hours to dry are too long',
  ),
  c(
    'runs overnight, dries in ten hours',
    { ...soundRug, expectedDryingHours: 10, dyeTests: tested('5', { 'covered 24 h': '3' }) },
    'full immersion',
    'dye slow bleeder',
    'dry before it runs',
  ),
  c(
    'photograph says one in ten it is a 3',
    {
      ...soundRug,
      dyeTests: tested().map((one) =>
        one.liquid === 'planned bath' ? { ...one, gradeProbabilities: { '3': 0.1, '4-5': 0.9 } } : one,
      ),
    },
    'flow wash',
    'dye controlled',
    'the worst grade above 5 % rules',
  ),
  c(
    'no colour named',
    { ...soundRug, colours: [], dyeTests: [] },
    'dry only',
    'R40',
    'every dye counts as loose',
  ),
  c(
    'viscose pile',
    { ...soundRug, pile: { viscose: 1 } },
    'low moisture',
    'R05',
    'half its strength is gone when wet',
  ),
  c(
    'wool with a little viscose',
    { ...soundRug, pile: { wool: 0.8, viscose: 0.2 } },
    'low moisture',
    'R05',
    'the weak fibre decides',
  ),
  c('silk pile', { ...soundRug, pile: { silk: 1 } }, 'full immersion', 'R06', 'neutral, cool, by hand, flat'),
  c(
    'silk foundation',
    { ...soundRug, foundation: { warp: 'silk', weft: 'silk' } },
    'full immersion',
    'R06',
    'the foundation carries the wet weight',
  ),
  c('jute pile', { ...soundRug, pile: { jute: 1 } }, 'dry only', 'R07', 'browns and rots'),
  c(
    'jute weft',
    { ...soundRug, foundation: { warp: 'cotton', weft: 'jute' } },
    'low moisture',
    'R07',
    'damp it only',
  ),
  c('seagrass', { ...soundRug, pile: { seagrass: 1 } }, 'dry only', 'R07', 'browns and rots'),
  c('unknown pile', { ...soundRug, pile: { unknown: 1 } }, 'dry only', 'R40', 'it could be jute'),
  c(
    'tufted, sound latex, cotton behind it',
    { ...soundRug, construction: 'tufted', latex: 'sound', foundation: backed('cotton') },
    'full immersion',
    'R10',
    'flat, no spin, consent',
  ),
  c(
    'tufted, failing latex',
    { ...soundRug, construction: 'tufted', latex: 'failing', foundation: backed('cotton') },
    'low moisture',
    'R09',
    'it would come apart',
  ),
  c(
    'tufted, nobody looked',
    { ...soundRug, construction: 'tufted', foundation: backed('cotton') },
    'low moisture',
    'R09',
    'unknown counts as failing',
  ),
  c('felt', { ...soundRug, construction: 'felt', foundation: {} }, 'low moisture', 'R11', 'shrinks'),
  c(
    'flatweave',
    { ...soundRug, construction: 'flatweave' },
    'full immersion',
    'R25',
    'block to size, dry flat',
  ),
  c(
    'unknown construction',
    { ...soundRug, construction: 'unknown' },
    'low moisture',
    'R40',
    'it could be tufted with failing latex',
  ),
  c('metal thread', found('metal thread'), 'dry only', 'R12', 'CCI Notes 13/14: composite objects'),
  c('beads', found('beads'), 'dry only', 'R12', 'CCI Notes 13/14: composite objects'),
  c('dry rot', found('dry rot'), 'panel wash', 'R13', 'supported, a panel at a time'),
  c('hole in the field', found('hole'), 'full immersion', 'mark open damage', 'held first'),
  c('open end', found('open ends'), 'full immersion', 'R14', 'secured before water'),
  c(
    'old repair, its yarn named and tested',
    withColour(found('old repair'), { id: 'yarn', name: 'repair yarn', kind: 'repair yarn' }),
    'full immersion',
    'R15',
    'AIC V.B: test the yarn',
  ),
  c(
    'old repair, its yarn not named',
    found('old repair'),
    'dry only',
    'R15',
    'AIC V.B: an untested yarn may run',
  ),
  c('painted tips', { ...found('painted'), dyeTests: tested() }, 'full immersion', 'R16', 'disclosed'),
  c('corroded brown', found('corroded brown'), 'full immersion', 'R18', 'least agitation, no chelator'),
  c('lined', found('lined'), 'dry only', 'R26', 'CCI Notes 13/14: layers shrink apart'),
  c('colours ran before', found('colour run'), 'dry only', 'R03', 'agree an aim first'),
  c(
    'colours ran, aim agreed',
    { ...found('colour run'), correctiveAimAgreed: true },
    'flow wash',
    'R03',
    'correction without soaking',
  ),
  c('living moth', found('active moth'), 'wash-blocked', 'R27', 'CCI Notes 3/3: quarantine'),
  c('mould at work', found('active mould'), 'wash-blocked', 'R28', 'CCI Notes 13/15: quarantine'),
  c('old insecticide', found('old insecticide'), 'dry only', 'R30', 'laboratory first'),
  c('sewage', found('category 3 water'), 'full immersion', 'R29', 'IICRC S500: a line of its own'),
  c(
    'heritage, no conservator',
    { ...soundRug, route: 'heritage piece' },
    'dry only',
    'R33',
    'a second judgement before water',
  ),
  c(
    'heritage, conservator signed',
    { ...soundRug, route: 'heritage piece', signOffs: ['conservator'] },
    'full immersion',
    'R33',
    'signed',
  ),
  c(
    'client refuses tests and signs',
    { ...soundRug, clientRefusals: [{ what: 'dye test', signed: true }] },
    'dry only',
    'R34',
    'no water without tests',
  ),
  c(
    'client refuses disclosure',
    { ...soundRug, clientRefusals: [{ what: 'disclosure', signed: false }] },
    'wash-blocked',
    'R34',
    'no consent',
  ),
  c(
    'washed in spring, dusty',
    { ...soundRug, monthsSinceWash: 6, soiling: 'dust only' },
    'dry only',
    'R35',
    'needless wetting',
  ),
  c('dryer down', { ...soundRug, equipmentDown: ['dryer'] }, 'dry only', 'R36', 'could not be finished'),
  c(
    'sixty hours to dry',
    { ...soundRug, expectedDryingHours: 60 },
    'dry only',
    'R38',
    'US EPA: dry within 48 hours',
  ),
  c(
    'sixty hours, owner overrides',
    { ...soundRug, expectedDryingHours: 60, overrides: [{ rule: 'R38', reason: 'two fans more' }] },
    'full immersion',
    'fibre wool',
    'the owner answers for it',
  ),
  c(
    'promised tomorrow',
    { ...soundRug, promiseHours: 24 },
    'wash-promise-too-early',
    'R39',
    'twenty hours and a day of watching',
  ),
  c(
    'condition not recorded',
    { ...soundRug, findings: undefined as never },
    'dry only',
    'R40',
    'the worst is assumed',
  ),
  c(
    'indigo with a reducer',
    {
      ...soundRug,
      colours: [
        { id: 'red', name: 'blue', kind: 'field colour', dyeClass: 'indigo', besideLightField: false },
      ],
      plannedBaths: [{ purpose: 'brighten', agents: ['dithionite'], pH: 6 }],
    },
    'wash-agent-forbidden',
    'R19',
    'indigo dissolves',
  ),
  c(
    'protease on wool',
    { ...soundRug, plannedBaths: [{ purpose: 'pre-spray', agents: ['protease'], pH: 7 }] },
    'wash-agent-forbidden',
    'R21',
    'it digests the pile',
  ),
  c(
    'chlorine on wool',
    { ...soundRug, plannedBaths: [{ purpose: 'whiten', agents: ['hypochlorite'], pH: 9 }] },
    'wash-agent-forbidden',
    'R22',
    'ISO 1833-4 dissolves wool this way',
  ),
  c(
    'acid and bisulfite at pH 3',
    { ...soundRug, plannedBaths: [{ purpose: 'strip', agents: ['citric acid', 'metabisulfite'], pH: 3 }] },
    'wash-mixture-forbidden',
    'R24',
    'sulfur dioxide',
  ),
  c(
    'bisulfite, pH not known',
    { ...soundRug, plannedBaths: [{ purpose: 'strip', agents: ['citric acid', 'metabisulfite'] }] },
    'wash-mixture-forbidden',
    'R24',
    'unknown counts as worst',
  ),
  c(
    'peroxide and ammonia on acid dye',
    {
      ...soundRug,
      colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'acid', besideLightField: false }],
      plannedBaths: [{ purpose: 'brighten', agents: ['hydrogen peroxide', 'ammonia'], pH: 8 }],
    },
    'wash-mixture-forbidden',
    'R23',
    'the dye is stripped',
  ),
  c(
    'cotton foundation, thirty hours to dry',
    { ...soundRug, foundation: { warp: 'cotton', weft: 'cotton' }, expectedDryingHours: 30 },
    'full immersion',
    'R08',
    'the pile tips turn brown',
  ),
  c(
    'linen pile',
    { ...soundRug, pile: { linen: 1 } },
    'full immersion',
    'fibre linen',
    'gentle, three quarters of an hour',
  ),
  c('camel pile', { ...soundRug, pile: { camel: 1 } }, 'full immersion', 'fibre camel', 'like wool'),
  c(
    'nylon, woven by machine',
    { ...soundRug, construction: 'machine woven', pile: { nylon: 1 } },
    'full immersion',
    'fibre nylon',
    'bears washing well',
  ),
  c(
    'wool and silk',
    { ...soundRug, pile: { wool: 0.5, silk: 0.5 } },
    'full immersion',
    'R06',
    'the silk decides',
  ),
  c(
    'a tenth of jute in the pile',
    { ...soundRug, pile: { wool: 0.9, jute: 0.1 } },
    'dry only',
    'R07',
    'it browns',
  ),
  c(
    'viscose warp',
    { ...soundRug, foundation: { warp: 'viscose', weft: 'wool' } },
    'full immersion',
    'fibre viscose',
    'a quarter of an hour at most',
  ),
  c(
    'hooked through jute',
    { ...soundRug, construction: 'hooked', foundation: backed('jute') },
    'low moisture',
    'R07',
    'the ground rots',
  ),
  c(
    'tufted, nobody knows what is behind it',
    { ...soundRug, construction: 'tufted', latex: 'sound' },
    'low moisture',
    'R40',
    'it may be jute',
  ),
  c(
    'flatweave tested on its face only',
    onlyFace({ ...soundRug, construction: 'flatweave' }),
    'dry only',
    'dye unknown',
    'both faces are faces',
  ),
  c(
    'knotted rug tested on its face only',
    onlyFace(soundRug),
    'full immersion',
    'fibre wool',
    'one side suffices',
  ),
  c(
    'painted tips tested on the face only',
    onlyFace(found('painted')),
    'dry only',
    'dye unknown',
    'the back is another colour',
  ),
  c('touched up, the place not named', found('touched up'), 'dry only', 'R16', 'ink may run'),
  c(
    'touched up, the place named and tested',
    withColour(found('touched up'), { id: 'ink', name: 'ink', kind: 'touch-up' }),
    'full immersion',
    'R16',
    'disclosed',
  ),
  c(
    'dry crock 4',
    { ...soundRug, dyeTests: tested('5', { 'dry crock': '4' }) },
    'full immersion',
    'R02',
    'below 4-5 is loose',
  ),
  c(
    'the acid rinse fades the red',
    {
      ...soundRug,
      dyeTests: tested().map((one) =>
        one.liquid === 'acid rinse' ? { ...one, colourChangeGrade: '3' } : one,
      ),
    },
    'full immersion',
    'dye acid sensitive',
    'weaker acid',
  ),
  c(
    'the acid rinse marks the cloth at 3-4',
    { ...soundRug, dyeTests: tested('5', { 'acid rinse': '3-4' }) },
    'flow wash',
    'dye controlled',
    'the worst liquid that is planned decides',
  ),
  c(
    'holds the bath, runs ten degrees warmer',
    { ...soundRug, dyeTests: tested('5', { margin: '3' }) },
    'full immersion',
    'dye thin margin',
    'the tested values are hard caps',
  ),
  c(
    'cold water alone runs',
    { ...soundRug, dyeTests: [bathTest('cold water', '2')] },
    'low moisture',
    'dye do not immerse',
    'nothing stronger is tried',
  ),
  c(
    'two colours, one bleeds a little',
    withColour(soundRug, { id: 'blue', name: 'blue', kind: 'field colour' }, tested('3-4')),
    'flow wash',
    'dye controlled',
    'the weaker colour decides',
  ),
  c(
    'a second colour nobody tested',
    withColour(soundRug, { id: 'blue', name: 'blue', kind: 'field colour' }, []),
    'dry only',
    'dye unknown',
    'each colour by itself',
  ),
  c(
    'a day under cover not tried, twenty hours to dry',
    { ...soundRug, dyeTests: tested().filter(({ liquid }) => liquid !== 'covered 24 h') },
    'dry only',
    'dye unknown',
    'more than twelve hours wet',
  ),
  c(
    'a day under cover not tried, ten hours to dry',
    {
      ...soundRug,
      expectedDryingHours: 10,
      dyeTests: tested().filter(({ liquid }) => liquid !== 'covered 24 h'),
    },
    'full immersion',
    'fibre wool',
    'dry before it matters',
  ),
  c(
    'urine, the place not tested',
    marked(found('urine')),
    'dry only',
    'dye unknown',
    'urine loosens stable dyes',
  ),
  c(
    'urine, the place tested',
    {
      ...marked(found('urine')),
      dyeTests: [...tested(), ...tested().map((one) => ({ ...one, atUrinePlace: true }))],
    },
    'full immersion',
    'R04',
    'flushed first',
  ),
  c(
    'urine suspected, the place not tested',
    { ...marked(soundRug), findings: [{ code: 'urine', certainty: 'suspected' }] },
    'dry only',
    'dye unknown',
    'suspected counts',
  ),
  c('a stain nobody knows', stained({ id: 's' }), 'dry only', 'dye unknown', 'it may be urine'),
  c(
    'a tide line',
    stained({ id: 's', class: 'tide line' }),
    'dry only',
    'dye unknown',
    'dyes stand worse at a water mark',
  ),
  c(
    'a wine stain',
    stained({ id: 's', class: 'tannin' }),
    'full immersion',
    'fibre wool',
    'a stain forbids no bath',
  ),
  c('weak foundation', found('weak foundation'), 'full immersion', 'mark weak foundation', 'it never hangs'),
  c('cut sides', found('cut sides'), 'full immersion', 'R14', 'secured before water'),
  c('iron-on patch', found('iron-on patch'), 'full immersion', 'R15', 'AIC V.B: it will let go'),
  c('leather parts', found('leather parts'), 'dry only', 'R12', 'CCI Notes 13/14: composite objects'),
  c('cut and sewn', found('cut and sewn'), 'dry only', 'R26', 'CCI Notes 13/14: layers shrink apart'),
  c('tea wash', found('tea wash'), 'full immersion', 'R17', 'the tone lightens'),
  c('living beetle', found('active beetle'), 'wash-blocked', 'R27', 'CCI Notes 3/3: quarantine'),
  c(
    'forty millimetres of pile',
    { ...soundRug, pileHeightMm: 40 },
    'full immersion',
    'R31',
    'longer dusting, one rinse more',
  ),
  c(
    'too heavy to lift wet',
    { ...soundRug, areaM2: 8, dryMassKg: 40 },
    'full immersion',
    'R32',
    'HSE INDG143: a team and a flat bed',
  ),
  c(
    'longer than the pole',
    { ...soundRug, lengthM: 6, poleLengthM: 4 },
    'full immersion',
    'R32',
    'it cannot hang',
  ),
  c(
    'worth more than the washer may decide',
    { ...soundRug, valueAboveAuthority: true },
    'full immersion',
    'R33',
    'the owner signs',
  ),
  c(
    'drying time not known',
    { ...soundRug, expectedDryingHours: undefined as never },
    'dry only',
    'R38',
    'US EPA: dry within 48 hours, and nobody says so',
  ),
  c('no power', { ...soundRug, equipmentDown: ['power'] }, 'dry only', 'R36', 'could not be finished'),
  c(
    'client refuses tests and does not sign',
    { ...soundRug, clientRefusals: [{ what: 'dye test', signed: false }] },
    'wash-blocked',
    'R34',
    'no consent',
  ),
  c(
    'alkaline detergent at pH 9.5 on wool',
    planned(soundRug, ['alkaline detergent'], 9.5),
    'wash-bath-ph-outside',
    'fibre wool',
    'alkali harms wool',
  ),
  c(
    'soda at pH 8.3 on natural dyes',
    planned(dyed('natural'), ['sodium carbonate'], 8.3),
    'wash-bath-ph-outside',
    'R20',
    'they shift and are lost',
  ),
  c(
    'ammonia nobody measured on natural dyes',
    planned(dyed('natural'), ['ammonia']),
    'wash-bath-ph-outside',
    'R20',
    'unknown counts as worst',
  ),
  c(
    'alkaline detergent at pH 8, not challenged',
    planned(soundRug, ['alkaline detergent'], 8),
    'dry only',
    'dye unknown',
    'alkali is tried on every colour first',
  ),
  c(
    'alkaline detergent at pH 8, challenge passed',
    planned({ ...soundRug, dyeTests: challenged('5') }, ['alkaline detergent'], 8),
    'full immersion',
    'fibre wool',
    'it was tried',
  ),
  c(
    'alkaline detergent at pH 8, challenge failed',
    planned({ ...soundRug, dyeTests: challenged('3') }, ['alkaline detergent'], 8),
    'wash-bath-ph-outside',
    'dye thin margin',
    'the red runs in alkali',
  ),
  c(
    'vinegar at pH 3 on wool',
    planned(soundRug, ['acetic acid'], 3),
    'wash-bath-ph-outside',
    'fibre wool',
    'below its band',
  ),
  c(
    'acid and bisulfite at pH 4.5',
    planned(soundRug, ['citric acid', 'metabisulfite'], 4.5),
    'full immersion',
    'R24',
    'air it, with a gas warning',
  ),
  c(
    'dithionite on a dye nobody knows',
    planned(dyed('unknown'), ['dithionite'], 6),
    'wash-agent-forbidden',
    'R19',
    'it may be indigo',
  ),
  c(
    'a chelator on corroded brown',
    planned(found('corroded brown'), ['chelator'], 6),
    'wash-agent-forbidden',
    'R18',
    'it takes the iron out of the wool',
  ),
  c(
    'peroxide and a reducer',
    planned(cottonRug, ['hydrogen peroxide', 'dithionite'], 7),
    'wash-mixture-forbidden',
    'mixture',
    'violent heat',
  ),
  c(
    'peroxide and vinegar',
    planned(cottonRug, ['hydrogen peroxide', 'acetic acid'], 6),
    'wash-mixture-forbidden',
    'mixture',
    'peracetic acid',
  ),
  c(
    'chlorine and ammonia on cotton',
    planned(cottonRug, ['hypochlorite', 'ammonia'], 8),
    'wash-mixture-forbidden',
    'mixture',
    'chloramine gas',
  ),
  c(
    'cellulase on cotton',
    planned(cottonRug, ['cellulase'], 6),
    'wash-mixture-forbidden',
    'mixture',
    'it digests the pile',
  ),
  c(
    'percarbonate at pH 10 on wool',
    planned(soundRug, ['percarbonate'], 10),
    'wash-mixture-forbidden',
    'mixture',
    'the fibre is destroyed',
  ),
  c(
    'bifluoride rust remover',
    planned(cottonRug, ['hydrofluoric or bifluoride rust remover'], 6),
    'wash-mixture-forbidden',
    'mixture',
    'never used',
  ),
];

describe('a master’s table', () => {
  test.each(cases.map((one) => [one.rug, one] as const))('%s', (_rug, { facts, gives, rule }) => {
    const plan = planWash(facts);
    if (!plan.ok) {
      expect(plan.problem.code).toBe(gives);
      expect(JSON.stringify(plan.problem.facts)).toContain(`"${rule}"`);
      return;
    }
    expect(plan.value.method).toBe(gives);
    const binding: readonly string[] = plan.value.limits
      .filter((limit) => limit.binding)
      .map((limit) => limit.rule);
    expect(binding).toContain(rule);
  });
  test('there are at least forty, and each says why', () => {
    expect(cases.length).toBeGreaterThanOrEqual(40);
    for (const { because } of cases) expect(because.length).toBeGreaterThan(3);
  });
});
