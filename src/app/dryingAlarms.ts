import type { DryingAlarmsAnswer, RoomAlarmsTold, RoomListRow } from '../contract/rooms.ts';
import type { Hanging } from '../dossier/dryingRug.ts';
import { type RoomAlarm, roomAlarms } from '../dossier/roomAlarms.ts';
import { forecastInstant, roomAheadHours, roomScenario } from '../dossier/roomScenario.ts';
import { roomStandingOf } from '../dossier/roomStanding.ts';
import { hangingAsTold } from './forecastDrying.ts';
import type { House } from './house.ts';
import { listRooms } from './rooms.ts';

interface Look {
  readonly key: string;
  readonly told: Promise<RoomAlarmsTold>;
}

/** What the last look worked out: every tablet looks again whenever anything is recorded, often at once. */
const lastLook = new WeakMap<House['ledger'], Map<string, Look>>();

async function lookAt(
  house: House,
  { room, body }: RoomListRow,
  { rugs, unmeasured }: Hanging,
  now: string,
): Promise<RoomAlarmsTold> {
  const standing = roomStandingOf(await house.ledger.read(`room/${room}`));
  const built = rugs.length === 0 ? null : roomScenario(standing, rugs, forecastInstant(now), roomAheadHours);
  const answer = built?.ok === true ? await house.forecaster.forecast(built.value.scenario) : null;
  const hanging = { rugs, unmeasured: unmeasured.map(({ rug }) => rug) };
  const foreseen = roomAlarms(standing, hanging, answer?.ok === true ? answer.value : null, now);
  const alarms: readonly RoomAlarm[] =
    answer?.ok === false ? [{ code: 'no-forecast', problem: answer.problem }, ...foreseen] : foreseen;
  const names = Object.fromEntries(
    [...rugs, ...unmeasured].map(({ rug, tag, title }) => [rug, `${tag} ${title}`]),
  );
  return { room, name: body.name, alarms, names, zero: built?.ok === true ? built.value.zero : now };
}

/** What has to be said of each drying room before it happens; rooms where nothing hangs are left out. */
export async function dryingAlarms(house: House): Promise<DryingAlarmsAnswer> {
  const now = house.clock.now();
  const looks = lastLook.get(house.ledger) ?? new Map<string, Look>();
  lastLook.set(house.ledger, looks);
  const told: RoomAlarmsTold[] = [];
  for (const row of (await listRooms(house)).rooms) {
    const hanging = await hangingAsTold(house, row.room);
    const { seal } = await house.ledger.head(`room/${row.room}`);
    const key = `${seal} ${forecastInstant(now)} ${JSON.stringify(hanging)}`;
    const known = looks.get(row.room);
    const look = known?.key === key ? known : { key, told: lookAt(house, row, hanging, now) };
    looks.set(row.room, look);
    // A look that failed is no answer to keep.
    look.told.catch(() => looks.delete(row.room));
    told.push(await look.told);
  }
  return { rooms: told.filter(({ alarms }) => alarms.length > 0) };
}
