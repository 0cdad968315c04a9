import { Link } from 'wouter';
import { type NextReading, readingKind } from '../../core/drying/index.ts';
import {
  dryingPlaceOf,
  moistureRatio,
  type NextLook,
  nextLook,
  ovenDryMassOf,
  wetClockHours,
} from '../../dossier/index.ts';
import { chanceWords, standsAloneWords } from '../../text/dryAlarmWords.ts';
import { factorWords } from '../../text/learntWords.ts';
import { nextLookReasons, nextLookWords } from '../../text/nextLookWords.ts';
import { nextReadingWords } from '../../text/nextReadingWords.ts';
import '../bench/dry.css';
import { RegainPlot } from '../bench/RegainPlot.tsx';
import { useRoom } from '../call/index.ts';
import { useDossier } from '../dossier/dossierView.ts';
import { figure, percentWords } from '../dossier/figures.ts';
import { Part } from '../dossier/Part.tsx';
import { Busy, FactList, type FactRow, instantWords, Notice, ProblemNotice } from '../kit/index.ts';
import { instantOf, pastRed } from '../room/roomView.ts';
import { useRoomForecast } from '../room/useRoomForecast.ts';

/** When this rug will be dry, among everything that hangs in its room. */
export function ForecastPart() {
  const { standing } = useDossier();
  const place = dryingPlaceOf(standing);
  return place === null || place.room === null ? null : <InRoom room={place.room} />;
}

function InRoom({ room }: { readonly room: string }) {
  const { rug, standing, visit } = useDossier();
  const { answer: told, problem } = useRoom(room);
  const { built, forecast, answer, now, rugs } = useRoomForecast(told);
  const found = answer?.rugs.find(({ id }) => id === rug);
  const drying = built?.ok === true ? built.value : null;
  const spread = found?.spread;
  if (visit === null) return null;
  if (drying === null || found === undefined || spread === undefined) {
    return (
      <Part id="forecast" title="Forecast">
        <ProblemNotice problem={problem} />
        {built?.ok === false ? <ProblemNotice problem={built.problem} /> : null}
        {forecast.answer?.ok === false ? <ProblemNotice problem={forecast.answer.problem} /> : null}
        {forecast.isBusy ? <Busy words="Working out the forecast" /> : null}
        <Link className="btn ghost" href={`/rooms/${room}`}>
          Open its drying room
        </Link>
      </Part>
    );
  }
  const { zero, scenario, learning } = drying;
  const hung = scenario.rugs.find(({ id }) => id === rug)?.hungAtHour ?? 0;
  const wetted = scenario.rugs.find(({ id }) => id === rug)?.wettedAtHour ?? hung;
  const at = (fromHanging: number | null) =>
    fromHanging === null ? 'later than looked at' : instantWords(instantOf(zero, hung + fromHanging));
  const { interval80, interval95, chanceRed } = spread;
  const isLate = pastRed(answer, rug);
  const ovenDry = ovenDryMassOf(standing, visit);
  const weighed = visit.readings.flatMap(({ massKg, when }) =>
    massKg === undefined || ovenDry === null
      ? []
      : [{ hour: hourOf(when, zero) - wetted, water: moistureRatio(massKg, ovenDry) }],
  );
  // As far as the band reaches, and always past the 48 hours of its wet clock.
  const until =
    Math.max(hung + (interval95[1] ?? Number.POSITIVE_INFINITY), wetted + wetClockHours.redHours) + 4;
  const bands = spread.bands
    .filter(({ hour }) => hour >= hung && hour <= until)
    .map((band) => ({ ...band, hour: band.hour - wetted }));
  const present = rugs.find((one) => one.rug === rug);
  const look = present === undefined ? null : nextLook(present, spread, now);
  const width = interval80[0] === null || interval80[1] === null ? null : interval80[1] - interval80[0];
  return (
    <Part id="forecast" title="Forecast">
      <p className="forecastBig">
        {interval80[1] !== null && hung + interval80[1] <= hourOf(now, zero)
          ? 'Dry by the forecast: prove it'
          : `${at(interval80[0])} – ${at(interval80[1])}`}
      </p>
      <p>
        80 % likely; most likely {at(found.hoursToTarget)}; 95 %: {at(interval95[0])} – {at(interval95[1])}.{' '}
        <span className="why">
          {width === null ? '' : `The 80 % interval is ${figure(width)} h wide; every weighing narrows it.`}
        </span>
      </p>
      <p className="why">{factorWords(learning)}</p>
      {isLate ? (
        <Notice
          tone="stop"
          title={`${chanceWords(chanceRed)} likely to be wet past ${wetClockHours.redHours} h.`}
        >
          <p>More air, fewer neighbours, another machine, or turn it to where both faces dry.</p>
        </Notice>
      ) : null}
      {spread.readings
        .filter(({ outlier }) => outlier)
        .map(({ reading, spreads }) => {
          const kind = readingKind(reading);
          const when = `at ${instantWords(instantOf(zero, reading.hour))}`;
          return (
            <Notice key={`${kind} ${when}`} tone="caution" title="A reading stands alone.">
              <p>In the forecast, {standsAloneWords({ kind, spreads }, when)}</p>
            </Notice>
          );
        })}
      {spread.contradicted ? (
        <Notice tone="caution" title="The readings contradict the forecast.">
          <p>Trust the readings. Check the scale and the dry mass, and promise nothing by this forecast.</p>
        </Notice>
      ) : null}
      <RegainPlot
        bands={bands}
        target={found.targetRegain}
        weighed={weighed}
        nowHour={hourOf(now, zero) - wetted}
        words={`Water in the rug by hours since first wetting; dry between ${at(interval80[0])} and ${at(interval80[1])}, 80 % likely`}
      />
      <FactList
        rows={[
          ...(look === null ? [] : [lookRow(look, spread.next[0], zero, now)]),
          {
            name: 'Mould index',
            value: figure(found.mouldIndex, 2),
            why: 'VTT model, class very sensitive (no class is published for soiled wool): for ranking; the wet clock rules',
          },
          {
            name: 'Dry means',
            value: `${percentWords(found.targetRegain)} water`,
            why: 'the fibre’s rest at 65 % RH',
          },
        ]}
      />
    </Part>
  );
}

/** The reading that narrows the forecast most; where none does, or it is dry by the forecast, what is due. */
function lookRow(look: NextLook, most: NextReading | undefined, zero: string, now: string): FactRow {
  const name = 'Measure next';
  if (look.what !== 'prove' && most !== undefined) {
    const at = instantOf(zero, most.hour);
    return { name, value: nextReadingWords(most, at <= now ? 'now' : `at ${instantWords(at)}`) };
  }
  const when = look.dueAt <= now ? 'now' : instantWords(look.dueAt);
  return { name, value: `${nextLookWords[look.what]}, ${when}`, why: nextLookReasons[look.what] };
}

const hourOf = (instant: string, zero: string): number =>
  (Date.parse(instant) - Date.parse(zero)) / 3_600_000;
