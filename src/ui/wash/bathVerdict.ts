import stops from '../../../data/wash/stopConditions.json' with { type: 'json' };
import { type Grade, grades, type PhBand, type PlanStep, type WashPlan } from '../../core/wash/index.ts';
import type { Noted, RugStanding } from '../../dossier/index.ts';
import { figure } from '../dossier/figures.ts';
import type { ReadingVerdict } from './ReadingPad.tsx';

interface Span {
  readonly least: number;
  readonly most: number;
}

/** pH this far outside its band, or °C this far outside theirs, is a stop. Workshop settings. */
export const phStop = 0.5;
export const temperatureStopC = 5;

const outside = (value: number, { least, most }: Span): number =>
  value < least ? value - least : value > most ? value - most : 0;

const verdict = (value: number, band: Span, stopAt: number, unit: string): ReadingVerdict => {
  const off = outside(value, band);
  const range = `${figure(band.least, 2)} – ${figure(band.most, 2)}${unit}`;
  if (off === 0) return { tone: 'ok', words: `within ${range}` };
  const words = `${figure(Math.abs(off), 2)}${unit} ${off > 0 ? 'above' : 'below'} ${range}`;
  // Half a pH is exactly on the edge where 7.5 − 7.0 is computed: a hair of slack keeps it a stop.
  return Math.abs(off) >= stopAt - 1e-9
    ? { tone: 'stop', words: `${words}: stop` }
    : { tone: 'caution', words: `${words}: bring it back` };
};

export const phVerdict = (value: number, band: Span): ReadingVerdict => verdict(value, band, phStop, '');
export const temperatureVerdict = (value: number, band: Span): ReadingVerdict =>
  verdict(value, band, temperatureStopC, ' °C');

const spanOf = (band: PhBand): Span | null => (band === 'no liquid' ? null : band);

/** The pH a step's liquid must keep: its own aim, else the plan's band. */
export const phBandOf = (step: PlanStep | undefined, plan: WashPlan): Span | null =>
  step?.targetPh ?? spanOf(step?.kind === 'acid rinse' ? plan.bounds.finalPh : plan.bounds.bathPh);

/** Cold enough to be no shock, warm enough only up to the plan's cap. */
export const temperatureBandOf = (step: PlanStep | undefined, plan: WashPlan): Span =>
  step?.temperatureC ?? { least: 0, most: plan.bounds.temperatureC };

/** While a colour is being rescued its own band stands in for the plan's. */
export const rescuePhBand: Span = { least: stops.rescueBleedPh.least, most: stops.rescueBleedPh.target };

/** In a rescue the lower end is no aim but a wall: below it the acid itself does harm. */
export const rescuePhVerdict = (value: number): ReadingVerdict =>
  value < rescuePhBand.least
    ? { tone: 'stop', words: `below pH ${figure(rescuePhBand.least)}: no more acid, flood with water` }
    : phVerdict(value, rescuePhBand);

const gradeRank = (grade: Grade): number => grades.indexOf(grade);

/** The worst and the best a colour of this rug did on the bench in water or the planned bath. */
export interface BenchGrades {
  readonly worst: Grade;
  readonly best: Grade;
}

/** Nothing tested counts as the best, so that any stain tells. */
export function benchGrades(standing: RugStanding): BenchGrades {
  const read = standing.dyeTests.flatMap(({ liquid, reading }) =>
    (liquid === 'planned bath' || liquid === 'cold water') && reading.kind === 'graded'
      ? [reading.staining]
      : [],
  );
  const byRank = [...read].sort((a, b) => gradeRank(a) - gradeRank(b));
  return { worst: byRank[0] ?? '5', best: byRank.at(-1) ?? '5' };
}

/**
 * White cloth half a grade below the bench test is a stop. A reading does not say which colour was pressed:
 * below the worst it is a stop for certain, below the best it is one for the colours that did better.
 */
export function clothVerdict(cloth: Grade, { worst, best }: BenchGrades): ReadingVerdict {
  if (gradeRank(cloth) < gradeRank(worst))
    return { tone: 'stop', words: `bench test was ${worst}: stop, a colour runs` };
  if (gradeRank(cloth) < gradeRank(best))
    return { tone: 'caution', words: `fine for the colour that was ${worst}; stop if any other was pressed` };
  return { tone: 'ok', words: `no worse than the bench test, ${worst}` };
}

const runOffRank = { clear: 0, soil: 0, 'faint colour': 1, 'strong colour': 2 } as const;
type RunOff = keyof typeof runOffRank;
const risingWithinMs = 5 * 60_000;

/** Run-off that gets more coloured twice within five minutes is a stop; any colour is a caution. */
export function runOffVerdict(
  runOff: RunOff,
  earlier: readonly Pick<Noted<'BathMeasured'>, 'runOff' | 'when'>[],
  now: string,
): ReadingVerdict {
  const recent = earlier.flatMap(({ runOff: seen, when }) =>
    seen !== undefined && Date.parse(now) - Date.parse(when) <= risingWithinMs ? [runOffRank[seen]] : [],
  );
  const ranks = [...recent, runOffRank[runOff]];
  const rises = ranks.filter((rank, index) => index > 0 && rank > (ranks[index - 1] ?? rank)).length;
  if (rises >= 2 || runOff === 'strong colour') return { tone: 'stop', words: 'colour comes off: stop' };
  return runOff === 'faint colour'
    ? { tone: 'caution', words: 'colour in the run-off: look again within five minutes' }
    : { tone: 'ok', words: 'no colour in the run-off' };
}
