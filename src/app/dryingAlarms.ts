import type { DryingAlarmsAnswer, RoomAlarmsTold, RoomListRow } from '../contract/rooms.ts';
import type { DryingRug } from '../dossier/dryingRug.ts';
import { roomAlarms } from '../dossier/roomAlarms.ts';
import { roomScenario } from '../dossier/roomScenario.ts';
import { roomStandingOf } from '../dossier/roomStanding.ts';
import { hangingAsTold } from './forecastDrying.ts';
import type { House } from './house.ts';
import { listRooms } from './rooms.ts';

/** Alarms look two days ahead, and a chance of one in five is seen by fewer draws than a forecast needs. */
const aheadHours = 60;
const draws = 80;
const everyMinutes = 10;

interface Look {
  readonly key: string;
  readonly told: Promise<RoomAlarmsTold>;
}

/** What the last look worked out: every tablet looks again whenever anything is recorded, often at once. */
const lastLook = new WeakMap<House['ledger'], Map<string, Look>>();

async function lookAt(
  house: House,
  { room, body }: RoomListRow,
  rugs: readonly DryingRug[],
  now: string,
): Promise<RoomAlarmsTold> {
  const standing = roomStandingOf(await house.ledger.read(`room/${room}`));
  const built = rugs.length === 0 ? null : roomScenario(standing, rugs, now, aheadHours);
  const answer =
    built?.ok === true ? await house.forecaster.forecast({ ...built.value.scenario, draws }) : null;
  const alarms = roomAlarms(standing, rugs, answer?.ok === true ? answer.value : null, now);
  const names = Object.fromEntries(rugs.map(({ rug, tag, title }) => [rug, `${tag} ${title}`]));
  return { room, name: body.name, alarms, names };
}

/** What has to be said of each drying room before it happens; rooms where nothing hangs are left out. */
export async function dryingAlarms(house: House): Promise<DryingAlarmsAnswer> {
  const now = house.clock.now();
  const looks = lastLook.get(house.ledger) ?? new Map<string, Look>();
  lastLook.set(house.ledger, looks);
  const slot = Math.floor(Date.parse(now) / (everyMinutes * 60_000));
  const told: RoomAlarmsTold[] = [];
  for (const row of (await listRooms(house)).rooms) {
    const rugs = await hangingAsTold(house, row.room);
    const { seal } = await house.ledger.head(`room/${row.room}`);
    const key = `${seal} ${slot} ${JSON.stringify(rugs)}`;
    const known = looks.get(row.room);
    const look = known?.key === key ? known : { key, told: lookAt(house, row, rugs, now) };
    looks.set(row.room, look);
    // A look that failed is no answer to keep.
    look.told.catch(() => looks.delete(row.room));
    told.push(await look.told);
  }
  return { rooms: told.filter(({ alarms }) => alarms.length > 0) };
}
