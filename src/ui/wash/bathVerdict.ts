import {
  type Band,
  clothWatch,
  type Grade,
  outsideBand,
  phWatch,
  type RunOff,
  type RunOffSeen,
  rescuePhBand,
  rescuePhWatch,
  runOffWatch,
  type StopLimits,
  temperatureWatch,
  type Watch,
} from '../../core/wash/index.ts';
import { figure } from '../dossier/figures.ts';
import type { ReadingVerdict } from './ReadingPad.tsx';

const verdict = (tone: Watch, value: number, band: Band, unit: string): ReadingVerdict => {
  const range = `${figure(band.least, 2)} – ${figure(band.most, 2)}${unit}`;
  if (tone === 'ok') return { tone, words: `within ${range}` };
  const off = outsideBand(value, band);
  const words = `${figure(Math.abs(off), 2)}${unit} ${off > 0 ? 'above' : 'below'} ${range}`;
  return { tone, words: tone === 'stop' ? `${words}: stop` : `${words}: bring it back` };
};

export const phVerdict = (value: number, band: Band, limits: StopLimits): ReadingVerdict =>
  verdict(phWatch(value, band, limits), value, band, '');
export const temperatureVerdict = (value: number, band: Band, limits: StopLimits): ReadingVerdict =>
  verdict(temperatureWatch(value, band, limits), value, band, ' °C');

/** During a rescue only too much acid is a stop of its own: on its way down the bath is above its band. */
export function rescuePhVerdict(value: number, limits: StopLimits): ReadingVerdict {
  if (value < rescuePhBand.least) {
    return { tone: 'stop', words: `below pH ${figure(rescuePhBand.least)}: no more acid, flood with water` };
  }
  const tone = rescuePhWatch(value, limits) === 'ok' ? 'ok' : 'caution';
  return verdict(tone, value, rescuePhBand, '');
}

/** White cloth beside the bench grade of the colour it was pressed on; unnamed, of the one that held best. */
export function clothVerdict(cloth: Grade, bench: Grade, isNamed: boolean): ReadingVerdict {
  if (clothWatch(cloth, bench) === 'ok')
    return { tone: 'ok', words: `no worse than the bench test, ${bench}` };
  return {
    tone: 'stop',
    words: isNamed
      ? `bench test was ${bench}: stop, a colour runs`
      : `the best colour was ${bench} on the bench: stop, unless you can say which colour was pressed`,
  };
}

/** Run-off by itself and beside what ran off in the last minutes. */
export function runOffVerdict(
  runOff: RunOff,
  earlier: readonly RunOffSeen[],
  limits: StopLimits,
): ReadingVerdict {
  const tone = runOffWatch(runOff, earlier, limits);
  if (tone === 'stop') return { tone, words: 'colour comes off: stop' };
  return tone === 'caution'
    ? { tone, words: 'colour in the run-off: look again within minutes' }
    : { tone, words: 'no colour in the run-off' };
}
