import type { DemoRug } from './demoRug.ts';
import { moment } from './moment.ts';
import { type Hung, hung, weighedWet } from './rugsDrying.ts';
import { eur, measured, reading } from './telling.ts';

interface Dried extends Omit<Hung, 'looks' | 'extraction' | 'spotWords'> {
  readonly consignment: string;
  /** Weighed on the first day, so many hours after it was hung. */
  readonly weighings: readonly (readonly [afterHours: number, massKg: number])[];
  /** What it weighed in the end, four times an hour apart. */
  readonly endKg: number;
  readonly to: string;
  readonly invoice: string;
}

/** A rug that dried here before those that hang now, was proved dry the day after, and went home. */
const dried = ({ weighings, endKg, to, invoice, consignment, ...rug }: Dried): DemoRug => {
  const since = rug.hungHoursAgo;
  const [lengthMm, widthMm] = rug.sizeMm;
  const proof = [26, 25, 24, 23].map((hours) => since - hours).sort((a, b) => b - a);
  const looks = [
    ...weighings.map(([after, massKg]) => weighedWet(since - after, massKg, 0.35)),
    ...proof.map((hoursAgo, time) =>
      moment(
        hoursAgo,
        'tobin',
        reading(endKg, {
          airRh: 0.35,
          ...(time < 3
            ? {}
            : {
                ...{ pocketRh: 0.5, meter: [{ reading: 6, at: 'middle' }], meterDryReference: 6 },
                ...{ touch: 'dry', smell: 'none', whiteCloth: 'clean' },
              }),
        }),
      ),
    ),
    moment(since - 26.2, 'mirela', { type: 'DryAccepted', standard: 'full' }),
    moment(since - 40, 'tobin', { type: 'FinishingDone', works: ['pile set', 'vacuumed'] }),
    moment(since - 52, 'mirela', measured(lengthMm - 3, widthMm - 2, 'rectangle', 'after work'), {
      ...{ type: 'RugInspected', marks: [], odour: 'none', colour: 'cleaner' },
    }),
    moment(
      since - 60,
      'ines',
      {
        ...{ type: 'InvoiceIssued', number: invoice },
        lines: [{ words: 'Wash, rinse, dry and finish', amount: eur(16_000) }],
      },
      { type: 'PaymentTaken', amount: eur(16_000), means: 'card' },
      {
        ...{ type: 'RugReturned', to, massKg: endKg, airRh: 0.45, photos: [] },
        ...{ identity: { tag: true, size: true, mass: 'agrees', picture: true } },
        signature: 'taken-at-the-counter',
      },
    ),
  ];
  const words = rug.spot === null ? 'floor' : rug.spot;
  const { promisedInDays: _kept, ...told } = hung({
    ...{ ...rug, looks, extraction: 'squeegee and vacuum', spotWords: words },
  });
  return { ...told, consignment };
};

/** Rugs of the week before: what their weighings say of the room, the forecasts of today rest on. */
export const rugsDriedBefore: readonly DemoRug[] = [
  dried({
    ...{ title: 'Madder rug with a stepped border', tag: '81', client: 'pell', consignment: 'pell-autumn' },
    ...{ sizeMm: [1900, 1200], massKg: 6.9, foundation: 'cotton', hungHoursAgo: 190, posture: 'hung' },
    ...{ spot: 'pole-1', endKg: 6.78, to: 'Joan Pell', invoice: '2026-118' },
    colours: { seed: 81, ground: '#8f2f22', border: '#22345c', accent: '#d9b65a', field: 'stripes' },
    weighings: [
      [3, 10.31],
      [5, 8.66],
      [7, 7.29],
    ],
  }),
  dried({
    ...{ title: 'Blue rug with a lattice', tag: '82', client: 'okello', consignment: 'okello-autumn' },
    ...{ sizeMm: [2400, 1500], massKg: 11.8, foundation: 'cotton', hungHoursAgo: 176, posture: 'hung' },
    ...{ spot: 'pole-2', endKg: 11.61, to: 'Joseph Okello', invoice: '2026-119' },
    colours: { seed: 82, ground: '#27457a', border: '#8f2f22', accent: '#e7d7ae', field: 'diamonds' },
    weighings: [
      [3, 19.17],
      [6, 15.28],
      [8, 12.85],
    ],
  }),
  dried({
    ...{
      title: 'Bedside rug with one flower',
      tag: '83',
      client: 'almqvist',
      consignment: 'almqvist-autumn',
    },
    ...{ sizeMm: [1500, 1000], massKg: 4.6, foundation: 'wool', hungHoursAgo: 166, posture: 'flat on mesh' },
    ...{ spot: 'mesh-3', endKg: 4.49, to: 'Berit Almqvist', invoice: '2026-121' },
    colours: { seed: 83, ground: '#d8c9a3', border: '#6b4a2f', accent: '#8f2f22', field: 'plain' },
    weighings: [
      [3, 6.75],
      [5, 5.93],
      [7, 5.2],
    ],
  }),
  dried({
    ...{ title: 'Green rug with two gardens', tag: '84', client: 'dorran', consignment: 'dorran-autumn' },
    ...{ sizeMm: [2100, 1400], massKg: 9.4, foundation: 'cotton', hungHoursAgo: 150, posture: 'hung' },
    ...{ spot: 'pole-3', endKg: 9.24, to: 'Callum Dorran', invoice: '2026-122' },
    colours: { seed: 84, ground: '#31523a', border: '#7d5a1e', accent: '#e6d9bd', field: 'medallion' },
    weighings: [
      [3, 14.42],
      [6, 11.38],
      [8, 9.71],
    ],
  }),
];
