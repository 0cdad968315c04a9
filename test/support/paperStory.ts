import {
  type ClientFact,
  clientStanding,
  type Entry,
  type RugEntry,
  type RugFact,
  standingOf,
  type WorkshopFact,
  workshopStanding,
} from '../../src/dossier/index.ts';
import type { PaperContext } from '../../src/papers/index.ts';
import { dryAskedWords, dryFoundWords } from '../../src/text/dryWords.ts';
import { problemWords } from '../../src/text/problemWords.ts';

/** An invented rug on its way through an invented workshop, as facts with the hour they happened in. */
export type Told<Fact> = readonly [hour: number, fact: Fact];

const start = Date.parse('2026-11-23T08:00:00.000Z');
export const atHour = (hour: number): string => new Date(start + hour * 3_600_000).toISOString();
export const photoName = (number: number): string => number.toString(16).padStart(2, '0').repeat(32);
const seal = (revision: number): string => (0x9f2c0000 + revision).toString(16).padStart(8, '0').repeat(8);

export const entriesOf = <Fact extends { readonly type: string }>(
  stream: string,
  by: string,
  told: readonly Told<Fact>[],
): readonly Entry<Fact>[] =>
  told.map(([hour, fact], at) => ({
    id: `${stream.replace('/', '-')}-${at + 1}`,
    stream,
    revision: at + 1,
    at: atHour(hour),
    by,
    version: 1,
    fact,
    seal: seal(at + 1),
  }));

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
      by: 'hand',
      nodesPerKnot: 2,
      places: [{ place: 'centre', weftwise: { count: 62, overMm: 70 }, warpwise: { count: 30, overMm: 70 } }],
    },
  ],
  [3, { type: 'DryingExpected', hours: 20 }],
];

export interface StoryChanges {
  readonly told?: readonly Told<RugFact>[];
  readonly client?: readonly Told<ClientFact>[] | 'erased' | 'nobody';
  readonly workshop?: readonly Told<WorkshopFact>[];
  readonly hour?: number;
}

/** The context of a paper made from what was told, at an hour after all of it. */
export function paperContextOf({
  told = intakeTold,
  client = clientTold,
  workshop = workshopTold,
  hour,
}: StoryChanges = {}): PaperContext {
  const entries = entriesOf('rug/rug-1', 'mirela', told) as readonly RugEntry[];
  const rug = standingOf(entries);
  const visit = rug.visits.at(-1);
  if (visit === undefined) throw new Error('the story has no visit');
  const last = Math.max(...told.map(([at]) => at));
  return {
    issuedAt: atHour(hour ?? last + 1),
    by: 'mirela',
    timeZone: 'Europe/Vienna',
    workshop: workshopStanding(entriesOf('workshop', 'mirela', workshop)),
    client:
      client === 'erased'
        ? { kind: 'erased' }
        : client === 'nobody'
          ? null
          : clientStanding(entriesOf('client/client-1', 'mirela', client)),
    rug,
    visit,
    consignment: [{ rug, visit }],
    entries,
    words: { problem: problemWords, dryAsked: (code) => dryAskedWords[code], dryFound: dryFoundWords },
  };
}
