import { stepId } from '../../dossier/index.ts';
import { type DemoRug, marked } from './demoRug.ts';
import { moment, type Told } from './moment.ts';
import {
  acts,
  actsUntil,
  blot,
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

/** The step of the agreed plan that is under way. */
const underWay = (standing: Parameters<Told>[0]['standing']): string | undefined =>
  standing.visits.at(-1)?.steps.find(({ started, done }) => started !== null && done === null)?.step;

/** A reading of the bath at hand; one off its band raises its stop by itself. */
const bath =
  (ph: number, temperatureC: number, whiteClothGrade: '5' | '4' | '3', clothOn: string): Told =>
  ({ standing }) => {
    const step = underWay(standing);
    return step === undefined
      ? null
      : {
          type: 'BathMeasured',
          step,
          ph,
          temperatureC,
          whiteClothGrade,
          clothOn,
          runOff: 'soil',
          photos: [],
        };
  };

/** A reading of the rinse at hand, in hard water. */
const rinse =
  (conductivityUsPerCm: number, ph: number, foam: 'none' | 'some'): Told =>
  ({ standing }) => {
    const step = underWay(standing);
    return step === undefined
      ? null
      : {
          ...{ type: 'RinseMeasured', step, ph, conductivityUsPerCm, foam },
          ...{ supplyConductivityUsPerCm: 640, supplyPh: 7.2, temperatureC: 18 },
          ...{ whiteClothGrade: '5', clothOn: 'ivory', runOff: 'clear' },
        };
  };

/** Clears the stop that is open, as whoever followed the card would. */
const cleared: Told = ({ standing }) => {
  const open = standing.visits.at(-1)?.stops.find(({ cleared: how }) => how === null);
  return open === undefined
    ? null
    : {
        type: 'StopCleared',
        stop: open.called.stop,
        how: 'The card was followed; the next readings are fine.',
      };
};

/** The urine flow at its place: the picture it was found on, then the salts of what is taken up. */
const flow =
  (step: 'map' | 'flush', conductivityUsPerCm?: number): Told =>
  ({ standing }) => {
    const photo = standing.photographs[0]?.photo;
    const common = { type: 'FlowLogged', flow: 'urine', step, mark: 'm2' } as const;
    if (conductivityUsPerCm === undefined) return { ...common, photos: photo === undefined ? [] : [photo] };
    return { ...common, photos: [], conductivityUsPerCm, supplyConductivityUsPerCm: 640 };
  };

const treated: Told = ({ standing }) => {
  const visit = standing.visits.at(-1);
  const running = underWay(standing);
  const steps =
    (visit?.plan?.plan as { readonly steps?: readonly Parameters<typeof stepId>[0][] })?.steps ?? [];
  const step = steps.find((one) => stepId(one) === running) as
    | { readonly stain?: string; readonly agents: readonly ('citric acid' | 'water')[] }
    | undefined;
  const isLogged = visit?.spots.some((spot) => spot.step === running) ?? false;
  if (isLogged || step?.stain === undefined || running === undefined || !step.agents.includes('citric acid'))
    return null;
  return {
    ...{ type: 'SpotTreated', mark: step.stain, step: running, golden: 'tannin', agents: ['citric acid'] },
    ...{ ph: 5.1, temperatureC: 19, minutes: 6, outcome: 'lighter', photos: [] },
  };
};

/** A rug with a cotton foundation, wine, a urine place and one red that has to be controlled. */
export const rugUnderRescue: readonly DemoRug[] = [
  {
    title: 'Hall carpet, red border on ivory',
    tag: '93',
    client: 'iyer',
    consignment: 'iyer-hall',
    receivedHoursAgo: 130,
    received: {
      reason: 'Wine at a birthday, and the old cat.',
      declaredValue: { amountMinor: 210_000, currency: 'EUR' },
      place: 'wash floor, right slope',
    },
    promisedInDays: 6,
    design: {
      seed: 93,
      widthMm: 1500,
      lengthMm: 2200,
      ground: '#efe3c8',
      border: '#8f2f22',
      accent: '#27457a',
      second: '#31523a',
      dark: '#231c15',
      fringe: '#e6dcc4',
      field: 'boteh',
      borders: 2,
      abrash: 0.3,
      gaugeMm: 9,
      troubles: [
        { kind: 'wine', x: 0.6, y: 0.35, sizeMm: 180 },
        { kind: 'urine', x: 0.35, y: 0.7, sizeMm: 240 },
      ],
    },
    story: [
      moment(
        129,
        'ines',
        measured(2200, 1500),
        weighed(11.6),
        lookedOver,
        marked('m1', 'stain', { xMm: 900, yMm: 770, sizeMm: 180 }, 1, {
          stain: 'tannin',
          cause: 'wine',
          causeConfidence: 'certain',
          colours: ['ivory'],
        }),
        marked('m2', 'urine', { xMm: 525, yMm: 1540, sizeMm: 240 }, 1, { colours: ['ivory'] }),
      ),
      moment(
        110,
        'tobin',
        identified('knotted pile', { wool: 1 }, 'cotton', 'cotton', 'town work', [1970, 1985]),
        {
          type: 'ColoursNamed',
          colours: [
            {
              ...{
                colour: 'red',
                name: 'red, border',
                kind: 'field colour',
                dyeClass: 'acid',
                looks: '#8f2f22',
              },
              ...{ besideLightField: false, atUrinePlace: false },
            },
            {
              ...{ colour: 'ivory', name: 'ivory, field', kind: 'field colour', dyeClass: 'undyed' },
              ...{ looks: '#efe3c8', besideLightField: false, atUrinePlace: true },
            },
          ],
        },
      ),
      moment(
        108,
        'mirela',
        drying(20),
        ...tests({ red: '3-4', ivory: '5' }),
        blot('ivory', 'spotter', '5', {
          ...{ ph: 5, temperatureC: 20, minutes: 10, colourChange: '5' },
          agents: ['citric acid'],
        }),
      ),
      moment(90, 'mirela', planOnRecord, quoted(26_000, 34_000)),
      moment(60, 'ines', consented(34_000, 'Do what you can; we know the red may move.')),
      moment(
        0.6,
        'tobin',
        ...actsUntil('urine pre-flush'),
        flow('map'),
        flow('flush', 1900),
        flow('flush', 655),
        flow('flush', 648),
        ...actsUntil('wash').flatMap((act) => [treated, act]),
        bath(6.4, 24, '4', 'red'),
        bath(6.5, 24, '3', 'red'),
        bath(4.3, 17, '4', 'red'),
        cleared,
        ...actsUntil('rinse'),
        rinse(1180, 6.8, 'some'),
        rinse(652, 7.1, 'none'),
        rinse(648, 7.2, 'none'),
        { type: 'FlowBegun', flow: 'tide-line', mark: 'm2', why: 'It came up under work' },
        ...acts(1),
      ),
    ],
  },
];
