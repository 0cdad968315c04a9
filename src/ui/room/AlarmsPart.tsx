import { alarmUrgency, type RoomAlarm, type RoomAssumption } from '../../dossier/index.ts';
import { assumptionWords, roomAlarmWords } from '../../text/roomAlarmWords.ts';
import { Section } from '../kit/index.ts';
import { useRoomView } from './roomView.ts';

const signs = { now: '▲', soon: '◆' } as const;
const said = { now: 'now: ', soon: 'soon: ' } as const;

/** So many of what comes soon stand open; more would push the work off the screen. */
const fewEnough = 2;

/** What has to be said before it happens, the pressing first; what was assumed stands apart. */
export function AlarmsPart(props: {
  readonly alarms: readonly RoomAlarm[];
  readonly assumptions: readonly RoomAssumption[];
}) {
  const { names } = useRoomView();
  const { alarms, assumptions } = props;
  if (alarms.length === 0 && assumptions.length === 0) return null;
  const pressing = alarms.filter((alarm) => alarmUrgency(alarm) === 'now');
  const soon = alarms.filter((alarm) => alarmUrgency(alarm) === 'soon');
  const lines = (some: readonly RoomAlarm[]) => (
    <ul className="plain-list roomAlarms">
      {some.map((alarm) => {
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
  );
  return (
    <Section title="To know now">
      {lines(pressing)}
      {soon.length <= fewEnough ? (
        lines(soon)
      ) : (
        <details>
          <summary>Soon: {soon.length} more</summary>
          {lines(soon)}
        </details>
      )}
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
