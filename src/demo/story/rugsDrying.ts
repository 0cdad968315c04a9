import type { Extraction } from '../../core/drying/index.ts';
import type { RugFact, SpotPosition } from '../../dossier/index.ts';
import type { RugDesign } from '../paint/rugDesign.ts';
import type { DemoRug } from './demoRug.ts';
import { demoRoom } from './dryingRoom.ts';
import { type Moment, moment } from './moment.ts';
import type { DemoClient } from './people.ts';
import {
  coloursNamed,
  consented,
  drying,
  identified,
  lookedOver,
  measured,
  planOnRecord,
  quoted,
  tests,
  weighed,
} from './telling.ts';
import { washedThrough } from './washedThrough.ts';

export interface Hung {
  readonly title: string;
  readonly tag: string;
  readonly client: DemoClient;
  readonly sizeMm: readonly [length: number, width: number];
  readonly massKg: number;
  /** Weft as the warp; a cotton foundation holds less water at rest. */
  readonly foundation: 'wool' | 'cotton';
  readonly hungHoursAgo: number;
  readonly posture: 'hung' | 'flat on mesh' | 'flat on floor';
  readonly spot: string | null;
  /** Where along it; absent: nobody measured. */
  readonly position?: SpotPosition;
  readonly spotWords: string;
  readonly extraction: Extraction;
  readonly colours: Pick<RugDesign, 'ground' | 'border' | 'accent' | 'field' | 'seed'>;
  readonly looks: readonly Moment[];
}

const field = { colour: 'field', name: 'field', looks: '#7d2f24', dyeClass: 'acid' } as const;
const border = { colour: 'border', name: 'border', looks: '#22345c', dyeClass: 'acid' } as const;

/** A rug that went the whole way to the drying room. */
export const hung = (rug: Hung): DemoRug => {
  const [lengthMm, widthMm] = rug.sizeMm;
  const since = rug.hungHoursAgo;
  const put: RugFact = {
    ...{ type: 'DryingStarted', posture: rug.posture, place: `Drying room, ${rug.spotWords}` },
    ...{ room: demoRoom, extraction: rug.extraction, heated: false },
    ...(rug.spot === null ? {} : { spot: rug.spot }),
    ...(rug.position === undefined ? {} : { position: rug.position }),
  };
  return {
    ...{ title: rug.title, tag: rug.tag, client: rug.client, consignment: `${rug.client}-winter` },
    receivedHoursAgo: since + 110,
    received: { reason: 'Winter wash.', declaredValue: { amountMinor: 120_000, currency: 'EUR' } },
    promisedInDays: 4,
    design: {
      ...{ widthMm, lengthMm, second: '#31523a', dark: '#1d1712', fringe: '#e6dcc4' },
      ...{ borders: 2, abrash: 0.5, gaugeMm: 9, troubles: [], ...rug.colours },
    },
    story: [
      moment(since + 109, 'ines', measured(lengthMm, widthMm), weighed(rug.massKg), lookedOver),
      moment(
        since + 90,
        'tobin',
        identified(
          'knotted pile',
          { wool: 1 },
          rug.foundation,
          rug.foundation,
          'workshop carpet',
          [1970, 1990],
        ),
        coloursNamed({ ...field, looks: rug.colours.ground }, { ...border, looks: rug.colours.border }),
      ),
      moment(since + 80, 'mirela', drying(20), ...tests({ field: '5', border: '5' })),
      moment(since + 60, 'mirela', planOnRecord, quoted(16_000, 22_000)),
      moment(since + 40, 'ines', consented(22_000, 'Please do.')),
      moment(since + 1.4, 'tobin', ...washedThrough),
      moment(since, 'tobin', put),
      ...rug.looks,
    ],
  };
};

export const weighedWet = (hoursAgo: number, massKg: number, airRh: number): Moment =>
  moment(hoursAgo, 'tobin', { type: 'DryingReading', massKg, airRh, airC: 28.5, photos: [] });
const turned = (hoursAgo: number, posture: Hung['posture']): Moment =>
  moment(hoursAgo, 'tobin', { type: 'RugTurned', posture });
const felt = (hoursAgo: number, touch: 'wet' | 'damp' | 'cool'): Moment =>
  moment(hoursAgo, 'tobin', { type: 'DryingReading', touch, photos: [] });

/** Six more rugs in the drying room, hung in the last fifteen hours. */
export const rugsDrying: readonly DemoRug[] = [
  hung({
    ...{ title: 'Long-pile rug with two suns', tag: '73', client: 'okello', sizeMm: [2900, 2000] },
    ...{ massKg: 34, foundation: 'wool', hungHoursAgo: 12, posture: 'flat on floor', spot: null },
    ...{ spotWords: 'floor by the door', extraction: 'drained' },
    colours: { seed: 73, ground: '#c9b48a', border: '#6b4a2f', accent: '#8f2f22', field: 'plain' },
    looks: [weighedWet(8, 79.2, 0.36), turned(7.9, 'flat on floor'), weighedWet(2.5, 73.9, 0.41)],
  }),
  hung({
    ...{ title: 'Red village rug', tag: '72', client: 'iyer', sizeMm: [2000, 1300], massKg: 8.1 },
    ...{ foundation: 'cotton', hungHoursAgo: 15, posture: 'hung', spot: 'pole-1', spotWords: 'Pole 1' },
    ...{ extraction: 'squeegee and vacuum' },
    position: { from: 'left', mm: 200 },
    colours: { seed: 72, ground: '#8f2f22', border: '#22345c', accent: '#d9b65a', field: 'medallion' },
    looks: [weighedWet(11, 11.92, 0.36), weighedWet(7, 8.71, 0.34), weighedWet(3.6, 8.02, 0.36)],
  }),
  hung({
    ...{ title: 'Hall runner with boteh', tag: '71', client: 'iyer', sizeMm: [3400, 800], massKg: 9 },
    ...{ foundation: 'cotton', hungHoursAgo: 9, posture: 'hung', spot: 'pole-1', spotWords: 'Pole 1' },
    ...{ extraction: 'squeegee and vacuum' },
    position: { from: 'left', mm: 1560 },
    colours: { seed: 71, ground: '#27457a', border: '#8f2f22', accent: '#e7d7ae', field: 'boteh' },
    looks: [weighedWet(5, 12.88, 0.36), turned(4.5, 'hung'), weighedWet(1.2, 10.05, 0.49)],
  }),
  hung({
    ...{ title: 'Small blue prayer rug', tag: '74', client: 'halloway', sizeMm: [1400, 900], massKg: 4.1 },
    ...{ foundation: 'wool', hungHoursAgo: 5, posture: 'hung', spot: 'pole-2', spotWords: 'Pole 2' },
    ...{ extraction: 'squeegee and vacuum' },
    position: { from: 'left', mm: 300 },
    colours: { seed: 74, ground: '#27457a', border: '#7d5a1e', accent: '#e6d9bd', field: 'plain' },
    looks: [weighedWet(2, 6.03, 0.43)],
  }),
  hung({
    ...{ title: 'Cream carpet with lozenges', tag: '75', client: 'dorran', sizeMm: [2400, 1700], massKg: 15 },
    ...{ foundation: 'cotton', hungHoursAgo: 3, posture: 'hung', spot: 'pole-2', spotWords: 'Pole 2' },
    ...{ extraction: 'squeegee and vacuum' },
    position: { from: 'right', mm: 400 },
    colours: { seed: 75, ground: '#d8c9a3', border: '#6b4a2f', accent: '#31523a', field: 'diamonds' },
    looks: [felt(1, 'wet')],
  }),
  hung({
    ...{ title: 'Striped hall rug', tag: '76', client: 'pell', sizeMm: [1900, 1200], massKg: 7.4 },
    ...{ foundation: 'cotton', hungHoursAgo: 1.5, posture: 'hung', spot: 'pole-3', spotWords: 'Pole 3' },
    ...{ extraction: 'squeegee and vacuum' },
    colours: { seed: 76, ground: '#31523a', border: '#8f2f22', accent: '#d9b65a', field: 'stripes' },
    looks: [],
  }),
];
