import { useMemo, useState } from 'react';
import { Link } from 'wouter';
import { type RoomAssumption, roomAlarms } from '../../dossier/index.ts';
import type { RoomNames } from '../../text/roomAlarmWords.ts';
import { useMe, useRecordRoom, useRoom, useSettings } from '../call/index.ts';
import { Busy, Button, instantWords, Notice, ProblemNotice, Section, Sheet } from '../kit/index.ts';
import { AirPart } from './AirPart.tsx';
import { AirPlot } from './AirPlot.tsx';
import { AlarmsPart } from './AlarmsPart.tsx';
import { ForecastClock } from './ForecastClock.tsx';
import { LearntPart } from './LearntPart.tsx';
import { RecordPart } from './RecordPart.tsx';
import { RoomDrawing } from './RoomDrawing.tsx';
import { instantOf, RoomContext, type RoomView } from './roomView.ts';
import { SensorsPart } from './SensorsPart.tsx';
import { SetUpForm } from './SetUpForm.tsx';
import { useRoomForecast } from './useRoomForecast.ts';
import { WhatIfPart } from './WhatIfPart.tsx';

const nobody = { person: 'nobody', name: '', roles: [] } as const;
const none: readonly RoomAssumption[] = [];

/** One drying room: what hangs where, when each will be dry, what holds it up, and what would change that. */
export function RoomPage({ room }: { readonly room: string }) {
  const { answer: told, isLoading, problem } = useRoom(room);
  const { record, isBusy } = useRecordRoom(room);
  const settings = useSettings();
  const me = useMe();
  const [isChanging, setChanging] = useState(false);
  const { now, rugs, unmeasured, built, forecast, answer, tried, ask } = useRoomForecast(told);
  const alarms = useMemo(
    () =>
      told === null
        ? []
        : roomAlarms(told.standing, { rugs, unmeasured: unmeasured.map(({ rug }) => rug) }, answer, now),
    [told, rugs, unmeasured, answer, now],
  );

  if (isLoading) return <Busy words="Opening the drying room" />;
  const setUp = told?.standing.setUp ?? null;
  if (told === null || setUp === null) return <ProblemNotice problem={problem} />;
  const zero = built?.ok === true ? built.value.zero : now;
  const names: RoomNames = {
    rug: (id) => {
      const rug = [...rugs, ...unmeasured].find((one) => one.rug === id);
      return rug === undefined ? 'the rug' : `${rug.tag} ${rug.title}`;
    },
    at: (instant) => instantWords(instant),
    instant: (hour) => instantOf(zero, hour),
    units: settings.units,
  };
  const view: RoomView = {
    ...{ room, standing: told.standing, setUp, rugs, settings, now, answer, names, record, isBusy },
    isOwner: me?.roles.includes('owner') ?? false,
    asked: { now, person: me ?? nobody, settings },
    zero,
  };
  const hangs = rugs.length + unmeasured.length;
  const isOutsideRead =
    built?.ok === true && !built.value.assumptions.some(({ code }) => code === 'outside-not-read');
  const isOpen = told.standing.closed === null;
  const failed = forecast.answer?.ok === false ? forecast.answer.problem : null;
  return (
    <RoomContext value={view}>
      <div className="pageTop">
        <div>
          <h1>{setUp.name}</h1>
          <p className="lead" role="status">
            {hangs === 0 ? 'Nothing hangs here' : `${hangs} wet ${hangs === 1 ? 'rug' : 'rugs'}`}
            {forecast.isBusy ? ' · working out the forecast' : ''}
          </p>
        </div>
      </div>
      <ProblemNotice problem={problem} />
      {told.standing.closed === null ? null : (
        <Notice tone="caution" title={`Closed ${instantWords(told.standing.closed.when)}.`}>
          <p>
            {told.standing.closed.why ?? 'No reason was given.'} Nothing dries here and nothing is recorded.
            Its record stays below; an owner opens it again there.
          </p>
        </Notice>
      )}
      <AlarmsPart
        alarms={alarms.filter(({ code }) => code !== 'size-missing')}
        assumptions={built?.ok === true ? built.value.assumptions : none}
      />
      {told.elsewhere.length === 0 ? null : (
        <Notice tone="caution" title="Wet, and in no room’s forecast">
          <p>
            If one of these hangs here, say so under “Another place”: its water is missing from this forecast.
          </p>
          {told.elsewhere.map(({ rug, body }) => (
            <Link key={rug} href={`/rugs/${rug}?at=dry`} className="clockName">
              <b>{body.tag}</b> {body.title}
            </Link>
          ))}
        </Notice>
      )}
      {unmeasured.length === 0 ? null : (
        <Notice tone="caution" title="Wet, and nobody measured it">
          <p>
            In no forecast: neither its own end nor the water it gives its neighbours, so theirs come too
            early. Measure length and width where it hangs, on its dossier.
          </p>
          {unmeasured.map(({ rug, tag, title }) => (
            <Link key={rug} href={`/rugs/${rug}`} className="clockName">
              <b>{tag}</b> {title}
            </Link>
          ))}
        </Notice>
      )}
      {built?.ok === false && rugs.length > 0 ? <ProblemNotice problem={built.problem} /> : null}
      <ProblemNotice problem={failed} />
      {isOpen ? (
        <div className="cols two">
          <div>
            <AirPart />
            <ForecastClock ms={forecast.ms} />
          </div>
          <div>
            {built?.ok === true ? (
              <WhatIfPart
                tried={tried}
                outside={isOutsideRead ? built.value.scenario.outside : null}
                ask={ask}
              />
            ) : null}
            <RoomDrawing />
          </div>
        </div>
      ) : null}
      <AirPlot />
      {built?.ok === true ? <LearntPart learning={built.value.learning} /> : null}
      {isOpen ? <SensorsPart /> : null}
      <RecordPart />
      {view.isOwner && isOpen ? (
        <Section title="The room itself">
          <div className="actions">
            <Button tone="ghost" onPress={() => setChanging(true)}>
              Change the room
            </Button>
            <Link className="btn ghost" href="/rooms/new">
              Another room
            </Link>
          </div>
        </Section>
      ) : null}
      {isChanging ? (
        <Sheet title="Change the room" isOpen isWide onClose={() => setChanging(false)}>
          <SetUpForm room={room} before={setUp} onKept={() => setChanging(false)} />
        </Sheet>
      ) : null}
    </RoomContext>
  );
}
