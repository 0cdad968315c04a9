import {
  type Band,
  type Grade,
  grades,
  type PlanStep,
  phBandOf,
  type RunOff,
  rescuePhBand,
  rinsePhBandOf,
  runOffs,
  type StopLimits,
  temperatureBandOf,
  type WashPlan,
} from '../../core/wash/index.ts';
import {
  benchGrade,
  isRescuing,
  type Noted,
  type RugStanding,
  runOffsBefore,
  stepId,
  type VisitStanding,
  wasRescuing,
} from '../../dossier/index.ts';
import { figure } from '../dossier/figures.ts';
import {
  clothVerdict,
  phVerdict,
  rescuePhVerdict,
  runOffVerdict,
  temperatureVerdict,
} from './bathVerdict.ts';
import type { ReadingVerdict } from './ReadingPad.tsx';

/** A stretch of a plot's scale in which a reading is fine, or stops the wash. */
export interface PlotZone {
  readonly tone: 'ok' | 'stop';
  readonly from: number;
  readonly until: number;
}

/** One reading with the limits that held when it was taken. */
export interface PlotReading {
  readonly at: string;
  readonly value: number;
  readonly words: string;
  readonly verdict: ReadingVerdict;
  readonly zones: readonly PlotZone[];
}

/** Readings over time on one scale, each before its own limits, and the limits that hold now. */
export interface BathPlotted {
  readonly name: string;
  readonly readings: readonly PlotReading[];
  readonly domain: readonly [number, number];
  /** Lines of the scale with their words. */
  readonly marks: readonly { readonly value: number; readonly words: string }[];
  readonly ahead: readonly PlotZone[];
  /** The limits in words. */
  readonly limits: string;
}

type Reading = Noted<'BathMeasured'> | Noted<'RinseMeasured'>;

/** Readings of the whole rug, oldest first; a reading at one stain says nothing of the rug. */
export const wholeRugReadings = ({ baths, rinses }: VisitStanding): readonly Reading[] =>
  [...baths, ...rinses.filter(({ mark }) => mark === undefined)].sort((a, b) => (a.when < b.when ? -1 : 1));

const bandZones = ({ least, most }: Band, below: number, above: number): readonly PlotZone[] => [
  { tone: 'stop', from: Number.NEGATIVE_INFINITY, until: below },
  { tone: 'ok', from: least, until: most },
  { tone: 'stop', from: above, until: Number.POSITIVE_INFINITY },
];
const offBand = (band: Band, off: number) => bandZones(band, band.least - off, band.most + off);
/** On its way down a rescue bath is above its band for a while: no stop. */
const rescueZones = bandZones(rescuePhBand, rescuePhBand.least, Number.POSITIVE_INFINITY);

/** From a little below the lower stop to a little above the upper one, or as far as was read. */
const domainOf = (
  readings: readonly PlotReading[],
  { least, most }: Band,
  off: number,
): readonly [number, number] => {
  const values = readings.map(({ value }) => value);
  const room = off * 1.4;
  return [Math.min(...values, least - room), Math.max(...values, most + room)];
};

interface Bath {
  readonly visit: VisitStanding;
  readonly plan: WashPlan;
  /** The step whose readings share a picture; each step has a band of its own. */
  readonly step: PlanStep | undefined;
  readonly limits: StopLimits;
}

const ofStep = ({ visit, step }: Bath): readonly Reading[] =>
  wholeRugReadings(visit).filter(
    (one) => one.step === undefined || step === undefined || one.step === stepId(step),
  );

/** pH against its band, and the rescue's while a colour is rescued; null where nothing was read. */
export function phPlot(bath: Bath): BathPlotted | null {
  const { visit, plan, step, limits } = bath;
  const band = phBandOf(step, plan);
  if (band === null) return null;
  const bandAt = (one: Reading | undefined): Band =>
    (one?.type === 'RinseMeasured' ? rinsePhBandOf(step, plan, one.supplyPh) : null) ?? band;
  const readings = ofStep(bath).flatMap((one): readonly PlotReading[] => {
    const { when, ph } = one;
    if (ph === undefined) return [];
    const rescued = wasRescuing(visit, when);
    const verdict = rescued ? rescuePhVerdict(ph, limits) : phVerdict(ph, bandAt(one), limits);
    const zones = rescued ? rescueZones : offBand(bandAt(one), limits.phOff);
    return [{ at: when, value: ph, words: figure(ph, 2), verdict, zones }];
  });
  if (readings.length === 0) return null;
  const rescuing = isRescuing(visit);
  const planned = bandAt(ofStep(bath).at(-1));
  const held = rescuing ? rescuePhBand : planned;
  const range = `${figure(held.least, 2)} to ${figure(held.most, 2)}`;
  return {
    ...{ name: 'pH', readings, ahead: rescuing ? rescueZones : offBand(planned, limits.phOff) },
    domain: domainOf(readings, held, limits.phOff),
    marks: [held.least, held.most].map((value) => ({ value, words: figure(value, 2) })),
    limits: rescuing
      ? `the rescue keeps ${range}; never below ${figure(held.least, 2)}`
      : `keep ${range}; ${figure(limits.phOff)} outside it is a stop`,
  };
}

/** Warmth against its band; null where nothing was read. `words` gives a temperature in the workshop's units. */
export function warmthPlot(bath: Bath, words: (celsius: number) => string): BathPlotted | null {
  const { limits } = bath;
  const band = temperatureBandOf(bath.step, bath.plan);
  const zones = offBand(band, limits.temperatureOffC);
  const readings = ofStep(bath).flatMap(({ when, temperatureC }): readonly PlotReading[] =>
    temperatureC === undefined
      ? []
      : [
          {
            ...{ at: when, value: temperatureC, words: words(temperatureC), zones },
            verdict: temperatureVerdict(temperatureC, band, limits),
          },
        ],
  );
  if (readings.length === 0) return null;
  return {
    ...{ name: 'Warmth', readings, ahead: zones },
    domain: domainOf(readings, band, limits.temperatureOffC),
    marks: [band.least, band.most].map((value) => ({ value, words: words(value) })),
    limits: `keep ${words(band.least)} to ${words(band.most)}; ${limits.temperatureOffC} °C outside it is a stop`,
  };
}

/** From which rank of the scale a cloth is fine, and below which it stops the wash. */
const clothZones = (bench: Grade): readonly PlotZone[] => {
  const edge = grades.indexOf(bench) - 0.5;
  return [
    { tone: 'stop', from: Number.NEGATIVE_INFINITY, until: edge },
    { tone: 'ok', from: edge, until: Number.POSITIVE_INFINITY },
  ];
};

/** White cloth over the whole wash, each against the bench grade of the colour pressed; null where none was. */
export function clothPlot(standing: RugStanding, visit: VisitStanding): BathPlotted | null {
  const readings = wholeRugReadings(visit).flatMap(
    ({ when, whiteClothGrade, clothOn }): readonly PlotReading[] => {
      if (whiteClothGrade === undefined) return [];
      const bench = benchGrade(standing, clothOn);
      const name = standing.colours.find(({ colour }) => colour === clothOn)?.name ?? 'colour not said';
      return [
        {
          ...{ at: when, value: grades.indexOf(whiteClothGrade), words: `${whiteClothGrade}, ${name}` },
          verdict: clothVerdict(whiteClothGrade, bench, clothOn !== undefined),
          zones: clothZones(bench),
        },
      ];
    },
  );
  const last = readings.at(-1);
  if (last === undefined) return null;
  return {
    ...{ name: 'White cloth', readings, ahead: last.zones, domain: [-0.5, grades.length - 0.5] },
    marks: grades.flatMap((grade, value) => (grade.includes('-') ? [] : [{ value, words: grade }])),
    limits: 'half a grade below the colour’s bench test is a stop',
  };
}

const timesWords = (times: number): string =>
  times === 1 ? 'once' : times === 2 ? 'twice' : `${times} times`;

/** Run-off over the whole wash: any colour is looked at again, colour that rises too often in minutes stops it. */
export function runOffPlot(visit: VisitStanding, stopLimits: StopLimits): BathPlotted | null {
  const zones: readonly PlotZone[] = [
    { tone: 'ok', from: -0.5, until: runOffs.indexOf('faint colour') - 0.5 },
    { tone: 'stop', from: runOffs.indexOf('strong colour') - 0.5, until: runOffs.length - 0.5 },
  ];
  const readings = wholeRugReadings(visit).flatMap(({ when, runOff }): readonly PlotReading[] => {
    if (runOff === undefined) return [];
    const isBefore = (one: Reading) => one.when < when;
    const known = { ...visit, baths: visit.baths.filter(isBefore), rinses: visit.rinses.filter(isBefore) };
    const before = runOffsBefore(known, when);
    const verdict = runOffVerdict(runOff as RunOff, before, stopLimits);
    return [{ at: when, value: runOffs.indexOf(runOff), words: runOff, verdict, zones }];
  });
  if (readings.length === 0) return null;
  return {
    ...{ name: 'Run-off', readings, ahead: zones, domain: [-0.5, runOffs.length - 0.5] },
    marks: runOffs.map((words, value) => ({ value, words: words.replace(' colour', '') })),
    limits: `strong colour, or more colour ${timesWords(stopLimits.runOffRises)} in ${stopLimits.runOffWithinMinutes} minutes, is a stop`,
  };
}
