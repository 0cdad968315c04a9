import type { DryAlarm } from '../core/drying/index.ts';
import { measureWords, type UnitSystem } from '../units/index.ts';
import { readingNames } from './dryingWords.ts';

const percent = (ratio: number) => `${Math.round(ratio * 100)} %`;

/** A chance in words: draws that all agree are no certainty, and none of many is no proof that it cannot be. */
export const chanceWords = (chance: number): string =>
  chance > 0.99 ? 'more than 99 %' : chance < 0.01 ? 'less than 1 %' : percent(chance);

type PastRed = Extract<DryAlarm, { readonly code: 'wet-past-red' }>;
type StandsAlone = Extract<DryAlarm, { readonly code: 'reading-stands-alone' }>;

/** What the clock of a rug comes to, without what to do: a rug may hang wet, or may not be wetted yet. */
export const pastRedWords = ({ rug, chance }: PastRed): string =>
  `${rug}: not dry within 48 h of its first wetting${chance === null ? '' : ` (${chanceWords(chance)} likely)`}.`;

/** Which reading no course of the rug can explain; `when` as “at 17:20”. */
export const standsAloneWords = (
  { kind, spreads }: Pick<StandsAlone, 'kind' | 'spreads'>,
  when: string,
): string =>
  `the ${readingNames[kind] ?? 'reading'} ${when} fits nothing else (off by ${Math.abs(spreads).toFixed(0)} times its usual error) and was left out. Take it again.`;

/** What an alarm of the drying room says, and what to do; an hour by the scenario's clock where no other is told. */
export function dryAlarmWords(
  alarm: DryAlarm,
  units: UnitSystem = 'metric',
  when = (hour: number): string => `at hour ${hour}`,
): string {
  const warm = (celsius: number) => measureWords('temperature', Math.round(celsius), units);
  switch (alarm.code) {
    case 'wet-past-amber':
      return `${alarm.rug}: not dry within 24 h of its first wetting. Give it more air or another machine, or dry it first.`;
    case 'wet-past-red':
      return `${pastRedWords(alarm)} Do not wet it before the room can dry it; if it is wet, act now.`;
    case 'not-dry-in-time':
      return `${alarm.rug}: not dry in the hours looked at; it still holds ${percent(alarm.endRegain)} of its dry mass.`;
    case 'target-out-of-reach':
      return `${alarm.rug}: this air leaves ${percent(alarm.atRest)} in it, so ${percent(alarm.target)} is never reached. Bring the room’s humidity down.`;
    case 'damp-again':
      return `${alarm.rug}: reaches its target, but takes water up again and holds ${percent(alarm.regain)} ${when(alarm.hour)}. Take it down before the wet rugs come in, or hang them elsewhere.`;
    case 'mould-may-begin':
      return `${alarm.rug}: mould index ${alarm.mouldIndex.toFixed(1)}, growth may begin. Keep it apart, wear a respirator and gloves to look at it.`;
    case 'reading-stands-alone':
      return `${alarm.rug}: ${standsAloneWords(alarm, when(alarm.hour))}`;
    case 'readings-contradict-model':
      return `${alarm.rug}: its readings contradict the forecast. Trust the readings, check scale and dry mass, and do not promise by this forecast.`;
    case 'room-too-hot':
      return `The room reaches ${warm(alarm.peakC)}: heat sets stains, hardens some fibres, and nobody works in it for long. Heat less or open it.`;
    case 'too-warm-for-fibre':
      return `${alarm.rug}: hangs at up to ${warm(alarm.airC)}; silk and viscose dry at ${warm(25)} at most. Dry it apart, with moving air instead of warmth.`;
    case 'room-saturates':
      return `The room reaches ${percent(alarm.peakRh)} humidity: nothing dries and everything in it grows damp. Hang fewer, add a machine, or open it to drier air.`;
  }
}
