import { alarmUrgency, type RoomAlarm, type RoomAssumption } from '../../dossier/index.ts';
import { assumptionWords, roomAlarmWords } from '../../text/roomAlarmWords.ts';
import { Section } from '../kit/index.ts';
import { useRoomView } from './roomView.ts';

const signs = { now: '▲', soon: '◆' } as const;
const said = { now: 'now: ', soon: 'soon: ' } as const;

/** What has to be said before it happens, the pressing first; what was assumed stands apart. */
export function AlarmsPart(props: {
  readonly alarms: readonly RoomAlarm[];
  readonly assumptions: readonly RoomAssumption[];
}) {
  const { names } = useRoomView();
  const { alarms, assumptions } = props;
  if (alarms.length === 0 && assumptions.length === 0) return null;
  return (
    <Section title="To know now">
      <ul className="plain-list roomAlarms">
        {alarms.map((alarm) => {
          const urgency = alarmUrgency(alarm);
          return (
            <li key={JSON.stringify(alarm)} className={urgency}>
              <span aria-hidden="true">{signs[urgency]} </span>
              <span className="unseen">{said[urgency]}</span>
              {roomAlarmWords(alarm, names)}
            </li>
          );
        })}
      </ul>
      {assumptions.length === 0 ? null : (
        <details>
          <summary>Assumed where nobody measured: {assumptions.length}</summary>
          <ul className="plain-list roomAlarms">
            {assumptions.map((one) => (
              <li key={JSON.stringify(one)} className="later">
                {assumptionWords(one, names)}
              </li>
            ))}
          </ul>
        </details>
      )}
    </Section>
  );
}
