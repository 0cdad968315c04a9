import type { DryingAlarmsAnswer, RoomAlarmsTold } from '../contract/rooms.ts';
import { dryForecast } from '../core/drying/index.ts';
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

type Known = ReadonlyMap<string, { readonly key: string; readonly told: RoomAlarmsTold }>;

/** What the last look worked out: every tablet looks again whenever anything is recorded. */
const lastLook = new WeakMap<House['ledger'], Known>();

/** What has to be said of each drying room before it happens; rooms where nothing hangs are left out. */
export async function dryingAlarms(house: House): Promise<DryingAlarmsAnswer> {
  const now = house.clock.now();
  const before = lastLook.get(house.ledger);
  const known = new Map<string, { readonly key: string; readonly told: RoomAlarmsTold }>();
  const slot = Math.floor(Date.parse(now) / (everyMinutes * 60_000));
  for (const { room, body } of (await listRooms(house)).rooms) {
    const rugs = await hangingAsTold(house, room);
    const { seal } = await house.ledger.head(`room/${room}`);
    const key = `${seal} ${slot} ${JSON.stringify(rugs)}`;
    const same = before?.get(room);
    if (same?.key === key) {
      known.set(room, same);
      continue;
    }
    const standing = roomStandingOf(await house.ledger.read(`room/${room}`));
    const built = rugs.length === 0 ? null : roomScenario(standing, rugs, now, aheadHours);
    const answer = built?.ok === true ? dryForecast({ ...built.value.scenario, draws }) : null;
    const alarms = roomAlarms(standing, rugs, answer?.ok === true ? answer.value : null, now);
    const names = Object.fromEntries(rugs.map(({ rug, tag, title }) => [rug, `${tag} ${title}`]));
    known.set(room, { key, told: { room, name: body.name, alarms, names } });
  }
  lastLook.set(house.ledger, known);
  return { rooms: [...known.values()].map(({ told }) => told).filter(({ alarms }) => alarms.length > 0) };
}
