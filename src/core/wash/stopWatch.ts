import stopTable from '../../../data/wash/stopConditions.json' with { type: 'json' };
import type { Band } from './limit.ts';
import { type Grade, grades } from './planFacts.ts';
import type { Rulebook } from './rulebook.ts';

/** How far readings may go before they stop the wash, by the workshop's rulebook. */
export type StopLimits = Rulebook['stops'];

export const stopIds = [
  'cloth grade',
  'run-off colour',
  'pH off band',
  'temperature off',
  'new tear',
  'length change',
  'wet minutes used',
  'wet hours',
  'machine down',
  'spot harm',
  'wrong agent',
] as const;
export type StopId = (typeof stopIds)[number];

export const runOffs = ['clear', 'soil', 'faint colour', 'strong colour'] as const;
export type RunOff = (typeof runOffs)[number];

/** How a value stands to its limit: fine, to be brought back, or reason to stop. */
export type Watch = 'ok' | 'caution' | 'stop';

/** Half a pH is exactly on the edge where 7.5 − 7.0 is computed: a hair of slack keeps it a stop. */
const hair = 1e-9;

/** How far a value lies outside a band, with its sign; 0 within. */
export const outsideBand = (value: number, { least, most }: Band): number =>
  value < least ? value - least : value > most ? value - most : 0;

const bandWatch = (value: number, band: Band, stopAt: number): Watch => {
  const off = Math.abs(outsideBand(value, band));
  return off === 0 ? 'ok' : off >= stopAt - hair ? 'stop' : 'caution';
};

/**
 * How a bath's pH stands to its band; as delivered, half a unit outside it is a stop.
 *
 * @source workshop-setting (data/wash/stopConditions.json)
 */
export const phWatch = (ph: number, band: Band, { phOff }: StopLimits): Watch => bandWatch(ph, band, phOff);

/**
 * How a bath's temperature [°C] stands to its band; as delivered, five degrees outside it are a stop.
 *
 * @source workshop-setting (data/wash/stopConditions.json)
 */
export const temperatureWatch = (temperatureC: number, band: Band, { temperatureOffC }: StopLimits): Watch =>
  bandWatch(temperatureC, band, temperatureOffC);

/** While a colour is being rescued its own band stands in for the plan's. */
export const rescuePhBand: Band = {
  least: stopTable.rescueBleedPh.least,
  most: stopTable.rescueBleedPh.target,
};

/**
 * How the pH stands during a rescue: the lower end is no aim but a wall, below it the acid itself does harm.
 *
 * @source common-practice, rescue card of a running colour (data/wash/stopConditions.json)
 */
export const rescuePhWatch = (ph: number, limits: StopLimits): Watch =>
  ph < rescuePhBand.least ? 'stop' : phWatch(ph, rescuePhBand, limits);

/**
 * How a white cloth stands to the bench: half a grade worse than the colour did there is a stop.
 *
 * @param bench - the bench grade of the colour that was pressed; where nobody says which, the best of all
 * @source workshop-setting (data/wash/stopConditions.json)
 */
export const clothWatch = (cloth: Grade, bench: Grade): Watch =>
  grades.indexOf(bench) - grades.indexOf(cloth) >= stopTable.clothHalfGrades ? 'stop' : 'ok';

const runOffRank: { readonly [R in RunOff]: number } = {
  clear: 0,
  soil: 0,
  'faint colour': 1,
  'strong colour': 2,
};

/** A run-off seen, and how long ago [min]. */
export interface RunOffSeen {
  readonly runOff: RunOff;
  readonly minutesAgo: number;
}

/**
 * How a run-off stands: one that gets more coloured too often within a few minutes (twice in five), or is strongly coloured, is a
 * stop; any colour is to be looked at again.
 *
 * @param runOff - what runs off now
 * @param earlier - what ran off before, oldest first
 * @source workshop-setting (data/wash/stopConditions.json)
 */
export function runOffWatch(
  runOff: RunOff,
  earlier: readonly RunOffSeen[],
  { runOffRises, runOffWithinMinutes }: StopLimits,
): Watch {
  const recent = earlier.filter(({ minutesAgo }) => minutesAgo <= runOffWithinMinutes);
  const ranks = [...recent.map((seen) => runOffRank[seen.runOff]), runOffRank[runOff]];
  const rises = ranks.filter((rank, index) => index > 0 && rank > (ranks[index - 1] ?? rank)).length;
  if (rises >= runOffRises || runOff === 'strong colour') return 'stop';
  return runOff === 'faint colour' ? 'caution' : 'ok';
}

/**
 * How a length under work stands to the one at intake: as delivered, more than one per cent either way is a stop.
 *
 * @param nowMm - measured now [mm, above 0]
 * @param intakeMm - at intake [mm, above 0]
 * @source workshop-setting (data/wash/stopConditions.json)
 */
export const lengthWatch = (nowMm: number, intakeMm: number, { lengthShare }: StopLimits): Watch => {
  const share = Math.abs(nowMm - intakeMm) / intakeMm;
  return share > lengthShare + hair ? 'stop' : 'ok';
};

/** Words a stop was called by in earlier records. */
const formerWords = (id: StopId): string | undefined =>
  (stopTable.rows as readonly { readonly id: string; readonly formerly?: string }[]).find(
    (row) => row.id === id,
  )?.formerly;

/** The words a stop is called by. */
export const stopWords = (id: StopId): string => stopTable.rows.find((row) => row.id === id)?.when ?? id;

/** The stop that is called by these words, or null where somebody wrote their own. */
export const stopNamed = (words: string): StopId | null =>
  stopIds.find((id) => id === words || stopWords(id) === words || formerWords(id) === words) ?? null;

/** Whether a stop is a running colour, for which the bath keeps a band of its own. */
export const isBleed = (words: string): boolean => {
  const id = stopNamed(words);
  return stopTable.rows.find((row) => row.id === id)?.rescue === 'bleed';
};
