import { useQuery } from '@tanstack/react-query';
import { Link } from 'wouter';
import type { DryingAlarmsAnswer, RoomAlarmsTold } from '../../contract/index.ts';
import { alarmUrgency, type RoomAlarm } from '../../dossier/roomAlarms.ts';
import { roomAlarmWords } from '../../text/roomAlarmWords.ts';
import { asked, call, useSettings } from '../call/index.ts';
import { instantWords } from '../kit/index.ts';
import { instantOf } from '../room/roomView.ts';

const signs = { now: '▲', soon: '◆' } as const;
const anewMs = 5 * 60_000;

/** What each rug itself asks for stands among the rugs; here is what nobody sees by looking at one. */
const ofTheRoom = ({ code }: RoomAlarm): boolean => code !== 'turning-due' && code !== 'reading-overdue';
const mostShown = 5;

/** The drying rooms' alarms before they happen, above what each rug asks for. */
export function DryingAlarms() {
  const { data } = useQuery({
    queryKey: ['rooms', 'alarms'],
    queryFn: () => asked(call<DryingAlarmsAnswer>('/api/drying-alarms')),
    refetchInterval: anewMs,
  });
  return (data?.rooms ?? []).map((told) => <RoomAlarms key={told.room} told={told} />);
}

function RoomAlarms({ told }: { readonly told: RoomAlarmsTold }) {
  const { room, name, names, zero } = told;
  const alarms = told.alarms.filter(ofTheRoom);
  const { units } = useSettings();
  if (alarms.length === 0) return null;
  const words = {
    rug: (rug: string) => names[rug] ?? 'a rug',
    at: (instant: string) => instantWords(instant),
    instant: (hour: number) => instantOf(zero, hour),
    units,
  };
  return (
    <section className="group" aria-labelledby={`alarms-${room}`}>
      <h2 id={`alarms-${room}`}>
        {name} <small>{alarms.length}</small>
      </h2>
      <ul className="plain-list dryingAlarms">
        {alarms.slice(0, mostShown).map((alarm) => {
          const urgency = alarmUrgency(alarm);
          return (
            <li key={JSON.stringify(alarm)} className={urgency}>
              <span aria-hidden="true">{signs[urgency]} </span>
              <span className="unseen">{urgency}: </span>
              {roomAlarmWords(alarm, words)}
            </li>
          );
        })}
      </ul>
      <Link className="btn ghost" href={`/rooms/${room}`}>
        Open {name}
      </Link>
    </section>
  );
}
