import {
  type ClientFact,
  planFingerprint,
  type RugFact,
  stepId,
  type WorkshopFact,
} from '../../src/dossier/index.ts';
import { inventedPlan } from './inventedPlan.ts';

/** An invented rug on its way through an invented workshop, as facts with the hour they happened in. */
export type Told<Fact> = readonly [hour: number, fact: Fact];

const start = Date.parse('2026-11-23T08:00:00.000Z');
export const atHour = (hour: number): string => new Date(start + hour * 3_600_000).toISOString();
export const photoName = (number: number): string => number.toString(16).padStart(2, '0').repeat(32);
export const workshopTold: readonly Told<WorkshopFact>[] = [
  [0, { type: 'PersonAdded', person: 'mirela', name: 'Mirela Oprea', roles: ['owner'] }],
  [
    0,
    {
      type: 'SettingsChanged',
      settings: { name: 'Larkfield Rug Workshop', lines: ['14 Mill Lane, Larkfield', 'larkfield.example'] },
    },
  ],
];

export const clientTold: readonly Told<ClientFact>[] = [
  [0, { type: 'ClientAdded', name: 'علی رضایی', phone: '01 555 0188', address: '3 Orchard Row\nLarkfield' }],
  [
    1,
    {
      type: 'SignatureTaken',
      signature: 'sig-receipt',
      name: 'علی رضایی',
      statement: 'I have handed over the rug listed here.',
      strokes: [
        Array.from({ length: 40 }, (_, at): [number, number] => [at / 40, 0.5 + 0.35 * Math.sin(at / 3)]),
      ],
    },
  ],
  [
    70,
    {
      type: 'SignatureTaken',
      signature: 'sig-return',
      name: 'علی رضایی',
      statement: 'I have received it.',
      strokes: [],
    },
  ],
];

/** Received, looked over, identified and tested; nothing agreed yet. */
export const intakeTold: readonly Told<RugFact>[] = [
  [0, { type: 'DossierOpened', number: 217, title: 'Runner with three medallions' }],
  [
    0.1,
    {
      type: 'RugReceived',
      visit: 'visit-1',
      consignment: 'C-0088',
      client: 'client-1',
      tag: '41',
      scope: ['wash', 'stain removal'],
      route: 'rug in use',
      reason: 'Wine was spilt on it at a wedding; it smells of the cellar it lay in.',
      authority: 'owner',
      declaredValue: { amountMinor: 180_000, currency: 'EUR' },
      soiling: 'soiled',
      promisedFor: '2026-12-04',
      place: 'shelf B2',
      signature: 'sig-receipt',
    },
  ],
  [
    0.2,
    {
      type: 'RugMeasured',
      occasion: 'intake',
      shape: 'runner',
      lengthsMm: [3000, 3010, 3020],
      widthsMm: [970, 980, 990],
      fringeStartMm: 60,
      fringeEndMm: 20,
      pileHeightMm: 9,
      uncertaintyMm: 5,
    },
  ],
  [0.3, { type: 'RugWeighed', massKg: 9.6, airRh: 0.48, airC: 19, restedADay: true, occasion: 'intake' }],
  [
    0.4,
    {
      type: 'PhotographTaken',
      photo: photoName(1),
      widthPx: 1600,
      heightPx: 2400,
      shows: 'face',
      occasion: 'intake',
      light: 'north window',
    },
  ],
  [
    0.4,
    {
      type: 'PhotographTaken',
      photo: photoName(2),
      widthPx: 1600,
      heightPx: 2400,
      shows: 'back',
      occasion: 'intake',
      light: 'north window',
    },
  ],
  [
    0.5,
    {
      type: 'ConditionSurveyed',
      occasion: 'intake',
      sides: 'face and back',
      light: 'north window, overcast',
      limits: 'The lining of the lower end was not lifted.',
    },
  ],
  [
    0.6,
    {
      type: 'MarkRecorded',
      mark: 'm-wine',
      word: 'stain',
      side: 'face',
      shape: 'polygon',
      pointsMm: [
        { xMm: 300, yMm: 900 },
        { xMm: 420, yMm: 900 },
        { xMm: 430, yMm: 1020 },
        { xMm: 310, yMm: 1010 },
      ],
      drawn: {
        photo: photoName(1),
        points: [
          { x: 0.3, y: 0.6 },
          { x: 0.45, y: 0.6 },
          { x: 0.45, y: 0.66 },
          { x: 0.3, y: 0.66 },
        ],
      },
      grade: 1,
      areaCm2: 74,
      activity: 'stable',
      stain: 'tannin',
      cause: 'wine, the client says',
      causeConfidence: 'probable',
      photos: [],
      clientInitials: 'AR',
    },
  ],
  [
    0.7,
    {
      type: 'MarkRecorded',
      mark: 'm-end',
      word: 'end unravelling',
      side: 'both',
      shape: 'line',
      pointsMm: [
        { xMm: 20, yMm: 5 },
        { xMm: 400, yMm: 5 },
      ],
      grade: 3,
      lengthCm: 38,
      activity: 'slow',
      photos: [],
      note: 'Held with a running stitch by somebody.',
    },
  ],
  [
    1.2,
    {
      type: 'RugIdentified',
      claims: [
        { about: 'construction', construction: 'knotted pile', evidence: 'seen', confidence: 'certain' },
        { about: 'pile', fibres: { wool: 1 }, evidence: 'burn test', confidence: 'certain' },
        { about: 'warp', fibre: 'cotton', evidence: 'burn test', confidence: 'certain' },
        { about: 'weft', fibre: 'wool', evidence: 'microscope', confidence: 'probable' },
        { about: 'period', fromYear: 1920, untilYear: 1950, evidence: 'comparison', confidence: 'possible' },
        {
          about: 'inscriptions and markings',
          words: 'عمل محمد ۱۳۲۴, woven into the start end',
          evidence: 'seen',
          confidence: 'certain',
        },
      ],
    },
  ],
  [
    1.3,
    {
      type: 'ColoursNamed',
      colours: [
        {
          colour: 'red',
          name: 'Red, field',
          kind: 'field colour',
          dyeClass: 'unknown',
          besideLightField: false,
        },
        {
          colour: 'blue',
          name: 'Dark blue',
          kind: 'field colour',
          dyeClass: 'indigo',
          besideLightField: false,
        },
      ],
    },
  ],
  ...(['face', 'back'] as const).flatMap((side) =>
    (['red', 'blue'] as const).flatMap((colour) =>
      (['dry crock', 'damp crock', 'cold water', 'planned bath', 'acid rinse', 'margin'] as const).map(
        (liquid): Told<RugFact> => [
          2,
          {
            type: 'DyeTested',
            colour,
            side,
            liquid,
            ...(liquid === 'dry crock'
              ? {}
              : {
                  temperatureC: liquid === 'margin' ? 38 : liquid === 'cold water' ? 20 : 28,
                  minutes: liquid === 'margin' ? 30 : 20,
                }),
            ...(liquid === 'planned bath' || liquid === 'margin' ? { ph: 6.8, strengthGPerL: 8 } : {}),
            ...(liquid === 'acid rinse' ? { ph: 4.5 } : {}),
            reading: {
              kind: 'graded',
              by: 'eye',
              staining: '5',
              control: '5',
              ...(liquid === 'acid rinse' ? { colourChange: '5' as const } : {}),
            },
            photos: [],
          },
        ],
      ),
    ),
  ),
  [
    2.5,
    {
      type: 'KnotsCounted',
      counted: 'by hand',
      nodesPerKnot: 2,
      places: [{ place: 'centre', weftwise: { count: 62, overMm: 70 }, warpwise: { count: 30, overMm: 70 } }],
    },
  ],
  [3, { type: 'DryingExpected', hours: 20 }],
];

const fingerprint = planFingerprint(inventedPlan);
const entryId = (number: number): string => `rug-rug-1-${number}`;

/** The plan put to the client, priced and agreed to by word of mouth. */
export const agreedTold: readonly Told<RugFact>[] = [
  [
    4,
    {
      type: 'PlanAgreed',
      rulebook: inventedPlan.rulebook,
      fingerprint,
      method: inventedPlan.method,
      plan: { ...inventedPlan },
    },
  ],
  [
    4.1,
    {
      type: 'PriceQuoted',
      lines: [
        { words: 'Wash, 2.95 m²', amount: { amountMinor: 8850, currency: 'EUR' } },
        { words: 'Stain treatment', amount: { amountMinor: 2500, currency: 'EUR' } },
      ],
      notToExceed: { amountMinor: 13000, currency: 'EUR' },
    },
  ],
  [
    4.5,
    {
      type: 'ConsentGiven',
      plan: fingerprint,
      paper: 'ab'.repeat(32),
      risks: inventedPlan.consents.map((c) => c.text),
      notToExceed: { amountMinor: 13000, currency: 'EUR' },
      agreed: {
        how: 'spoken',
        words: 'Yes, go ahead, I know about the end.',
        spokenAt: atHour(4.4),
        witness: 'Tobin Hale',
      },
    },
  ],
];

/** Then dusted, washed with a stop and an incident, dried, inspected and handed back. */
export const washedTold: readonly Told<RugFact>[] = [
  [5, { type: 'NoteAdded', note: 'Silk pile? Looks shiny.' }],
  [
    5.1,
    {
      type: 'EntryWithdrawn',
      entry: entryId(intakeTold.length + agreedTold.length + 1),
      reason: 'Burn test says wool.',
    },
  ],
  [5.5, { type: 'RugDusted', pass: 1, soilG: 410, minutes: 12, side: 'back' }],
  [5.7, { type: 'RugDusted', pass: 2, soilG: 60, minutes: 10, side: 'back' }],
  ...inventedPlan.steps.flatMap((s, i): Told<RugFact>[] => [
    [6 + i * 0.3, { type: 'StepStarted', step: stepId(s), wets: s.wet }],
    [
      6.25 + i * 0.3,
      { type: 'StepDone', step: stepId(s), ...(i === 1 ? { lot: 'CA-2231', note: 'Came away well.' } : {}) },
    ],
  ]),
  [
    6.7,
    { type: 'BathMeasured', ph: 6.6, temperatureC: 24, whiteClothGrade: '4-5', runOff: 'soil', photos: [] },
  ],
  [6.9, { type: 'StopCalled', stop: 's1', condition: 'white cloth half a grade below the bench test' }],
  [7, { type: 'StopCleared', stop: 's1', how: 'Rinsed cold, acid to pH 4.5, cloth clean twice.' }],
  [
    7.2,
    {
      type: 'RinseMeasured',
      ph: 5.2,
      conductivityUsPerCm: 420,
      supplyConductivityUsPerCm: 405,
      supplyPh: 7.4,
      temperatureC: 18,
      foam: 'none',
      whiteClothGrade: '5',
      runOff: 'clear',
    },
  ],
  [
    7.3,
    {
      type: 'PhotographTaken',
      photo: photoName(3),
      widthPx: 1600,
      heightPx: 2400,
      shows: 'detail',
      occasion: 'work',
      caption: 'Wine stain after the acid',
    },
  ],
  [
    7.5,
    {
      type: 'IncidentReported',
      what: 'A thread of the selvedge caught on the slope’s edge and pulled 4 cm of side cord loose.',
      cause: 'Rough edge of the slope',
      action: 'Stopped, held flat, secured with cotton.',
      clientTold: true,
      photos: [photoName(3)],
    },
  ],
  [
    7.6,
    {
      type: 'MarkRecorded',
      mark: 'm-cord',
      word: 'missing side cord',
      side: 'both',
      shape: 'line',
      pointsMm: [
        { xMm: 980, yMm: 1400 },
        { xMm: 980, yMm: 1440 },
      ],
      grade: 3,
      lengthCm: 4,
      activity: 'stable',
      photos: [],
      foundDuringWork: true,
    },
  ],
  [8, { type: 'DryingStarted', posture: 'flat on mesh', place: 'drying room, mesh 2' }],
  [12, { type: 'RugTurned', posture: 'face down flat' }],
  ...(
    [
      [9, 18.2],
      [13, 15.1],
      [18, 12.4],
      [24, 10.6],
      [30, 9.72],
      [31.1, 9.7],
      [32.2, 9.69],
      [33.3, 9.68],
      [46, 9.66],
    ] as const
  ).map(
    ([h, kg], i): Told<RugFact> => [
      h,
      {
        type: 'DryingReading',
        massKg: kg,
        airRh: 0.42,
        airC: 27,
        ...(i > 5
          ? {
              pocketRh: 0.7 - (i - 6) * 0.04,
              touch: 'dry',
              smell: 'none',
              whiteCloth: 'clean',
              meter: [
                { reading: 8, at: 'centre' },
                { reading: 9, at: 'fringe' },
              ],
              meterDryReference: 8,
            }
          : { touch: 'damp' }),
        photos: [],
      },
    ],
  ),
  [47, { type: 'DryAccepted', standard: 'full' }],
  [50, { type: 'FinishingDone', works: ['pile set', 'fringe groomed', 'ends secured'] }],
  [
    51,
    {
      type: 'RugMeasured',
      occasion: 'after work',
      shape: 'runner',
      lengthsMm: [2990, 3000, 3010],
      widthsMm: [970, 975, 980],
      uncertaintyMm: 5,
    },
  ],
  [
    51.2,
    {
      type: 'PhotographTaken',
      photo: photoName(4),
      widthPx: 1600,
      heightPx: 2400,
      shows: 'face',
      occasion: 'after work',
      light: 'north window',
    },
  ],
  [
    52,
    {
      type: 'RugInspected',
      marks: [
        { mark: 'm-wine', outcome: 'improved', note: 'A faint ring is left.' },
        { mark: 'm-end', outcome: 'unchanged' },
      ],
      odour: 'none',
      colour: 'cleaner',
    },
  ],
  [
    60,
    {
      type: 'InvoiceIssued',
      number: '2026-104',
      lines: [{ words: 'Wash and stain', amount: { amountMinor: 11350, currency: 'EUR' } }],
    },
  ],
  [69, { type: 'PaymentTaken', amount: { amountMinor: 11350, currency: 'EUR' }, means: 'card' }],
  [
    70,
    {
      type: 'RugReturned',
      to: 'علی رضایی',
      identity: { tag: true, size: true, mass: 'agrees', picture: true },
      massKg: 9.55,
      airRh: 0.47,
      signature: 'sig-return',
      photos: [],
    },
  ],
];

/** The whole visit from the door to the door. */
export const wholeTold: readonly Told<RugFact>[] = [...intakeTold, ...agreedTold, ...washedTold];
