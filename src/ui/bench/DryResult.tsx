import type { DryAnswer, RugAnswer, RugSpread } from '../../core/drying/index.ts';
import { dryAlarmWords } from '../../text/dryAlarmWords.ts';
import { unknownFibreWords } from '../../text/dryingWords.ts';
import { bindingWords } from '../../text/dryRoomWords.ts';
import { nextReadingWords } from '../../text/nextReadingWords.ts';
import { figure } from '../dossier/figures.ts';
import { FactList, Notice, Section } from '../kit/index.ts';
import { RegainPlot } from './RegainPlot.tsx';
import { hoursLookedAt } from './typedDrying.ts';

const hours = (value: number | null): string =>
  value === null ? `after ${hoursLookedAt} h` : `${figure(value)} h`;

const bounds = ([from, to]: RugSpread['interval80']): string =>
  from === null ? hours(null) : `${figure(from)} h – ${hours(to)}`;

const firstOf = ({ rugs }: DryAnswer): RugAnswer | undefined => rugs[0];

/** The hours at which something else holds drying up, with the water demanded and offered. */
const bindingRows = (hourly: DryAnswer['hourly']) =>
  hourly
    .filter(({ binding }, i) => binding !== hourly[i - 1]?.binding)
    .map(({ hour, airC, rh, demandedLPerH, offeredLPerH, binding }) => ({
      name: `From hour ${figure(hour)}`,
      value: `${figure(airC, 0)} °C, ${figure(rh * 100, 0)} % RH; the rugs would give ${figure(demandedLPerH)} L/h, the room could take ${figure(offeredLPerH)} L/h`,
      why: bindingWords[binding],
    }));

/** When the rug will be dry, as a band over the clock; what one machine more would change. */
export function DryResult({
  answer,
  withOneMore,
}: {
  readonly answer: DryAnswer;
  readonly withOneMore: DryAnswer | null;
}) {
  const rug = firstOf(answer);
  if (rug?.spread === undefined) return null;
  const { spread, hoursToTarget, targetRegain, mouldIndex } = rug;
  const more = withOneMore === null ? undefined : firstOf(withOneMore);
  const { room, outside, exchangeDries } = answer.air;
  const { loadKg, byAirExchangeKg, byCondensationKg, byMachineKg } = answer.water;
  const alarms = answer.alarms.filter((alarm) => !('rug' in alarm) || alarm.rug === rug.id);
  const toldWords = `Dry after ${hours(hoursToTarget)}; 80 % likely ${bounds(spread.interval80)}, 95 % likely ${bounds(spread.interval95)}`;
  return (
    <div aria-live="polite">
      <Section title="When it will be dry">
        <p className="amt">
          {hoursToTarget === null ? `Not within ${hoursLookedAt} h` : hours(hoursToTarget)}
        </p>
        <p>
          <b>{bounds(spread.interval80)}</b>, 80 % likely; {bounds(spread.interval95)}, 95 % likely.
        </p>
        <RegainPlot bands={spread.bands} target={targetRegain} words={toldWords} />
        <p className="why">
          Water as a share of oven-dry mass. The line is the middle course, the bands hold 80 and 95 % of the
          courses; amber from 24 h, red from 48 h of being wet.
        </p>
        {alarms.map((alarm) => (
          <Notice key={alarm.code} tone={alarm.code === 'wet-past-amber' ? 'caution' : 'stop'}>
            <p>{dryAlarmWords(alarm)}</p>
          </Notice>
        ))}
        {rug.unknownFibreAs === null ? null : (
          <Notice tone="caution">
            <p>{unknownFibreWords(rug.id, rug.unknownFibreAs)}</p>
          </Notice>
        )}
      </Section>
      {spread.next.length === 0 ? null : (
        <Section title="What to measure">
          <ul>
            {spread.next.map((next) => (
              <li key={next.kind}>{nextReadingWords(next)}</li>
            ))}
          </ul>
        </Section>
      )}
      {more?.spread === undefined ? null : (
        <Section title="With one machine more">
          <p className="amt">
            {more.hoursToTarget === null ? `Not within ${hoursLookedAt} h` : hours(more.hoursToTarget)}
          </p>
          <p>
            <b>{bounds(more.spread.interval80)}</b>, 80 % likely.
          </p>
        </Section>
      )}
      <Section title="What holds drying up">
        <FactList rows={bindingRows(answer.hourly)} />
      </Section>
      <Section title="Where the water goes">
        <FactList
          rows={[
            { name: 'Water to begin with', value: `${figure(loadKg)} kg`, why: 'in the rugs and in the air' },
            {
              name: 'With the outside air',
              value: `${figure(byAirExchangeKg)} kg`,
              ...(byAirExchangeKg < 0 ? { why: 'the outside air brings water in: keep it closed' } : {}),
            },
            ...(room === null || outside === null
              ? []
              : [
                  {
                    name: 'Outside against room',
                    value: `${figure(outside.humidityRatio * 1000)} against ${figure(room.humidityRatio * 1000)} g/kg`,
                    why: exchangeDries
                      ? 'drier: opening takes water out, as the room is at the start'
                      : 'not drier: opening lets water in',
                  },
                  { name: 'Dew point in the room', value: `${figure(room.dewPointC)} °C` },
                ]),
            ...(byCondensationKg < 0.05
              ? []
              : [
                  {
                    name: 'Falls out as dew',
                    value: `${figure(byCondensationKg)} kg`,
                    why: 'on the coldest places of the room',
                  },
                ]),
            { name: 'By the machines', value: `${figure(byMachineKg.reduce((sum, kg) => sum + kg, 0))} kg` },
            { name: 'Dampest air', value: `${figure(Math.min(1, answer.peakRh) * 100, 0)} % RH` },
            { name: 'Mould index', value: figure(mouldIndex, 2), why: 'ranks only; the 24 and 48 h rule' },
          ]}
        />
        <Notice tone="caution" title="A forecast is no proof.">
          <p>
            Release the rug by the dry standard. Mind wet floors and current, the heat of a closed room, and
            the weight of a wet rug.
          </p>
        </Notice>
      </Section>
    </div>
  );
}
