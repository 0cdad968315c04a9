import settings from '../../data/drying/room.json' with { type: 'json' };
import type { DryAlarm, DryAnswer, DryingProblem } from '../core/drying/index.ts';
import type { DryingRug } from './dryingRug.ts';
import { type RoomStanding, roomHeatOf, runs } from './roomStanding.ts';
import { hoursBetween } from './wetting.ts';

/** What a drying room has to be told before it happens: by the forecast, by the clock, by its switches. */
export type RoomAlarm =
  | DryAlarm
  /** Its water is missing from every forecast of the room, and its own end is unknown. */
  | { readonly code: 'size-missing'; readonly rug: string }
  /** What is recorded of the room cannot be reckoned, so that no other alarm of its forecast can come. */
  | { readonly code: 'no-forecast'; readonly problem: DryingProblem }
  | { readonly code: 'reading-overdue'; readonly rug: string; readonly since: string }
  | { readonly code: 'turning-due'; readonly rug: string; readonly since: string; readonly overdue: boolean }
  | { readonly code: 'air-not-read'; readonly since: string | null }
  | { readonly code: 'room-damp'; readonly rh: number; readonly most: number }
  | { readonly code: 'machine-off'; readonly machine: string; readonly since: string | null }
  /** Said to dry without heat, where a heater runs by now: what solvent is left in it may catch fire. */
  | { readonly code: 'heat-not-told'; readonly rug: string; readonly by: readonly string[] }
  | {
      readonly code: 'too-warm-for-plan';
      readonly rug: string;
      readonly airC: number;
      readonly mostC: number;
    };

export type AlarmUrgency = 'now' | 'soon';

const soon: readonly RoomAlarm['code'][] = [
  'wet-past-amber',
  'damp-again',
  'reading-stands-alone',
  'readings-contradict-model',
  'air-not-read',
  'room-damp',
  'reading-overdue',
];

/** How pressing an alarm is. @source none: rule of this project */
export const alarmUrgency = (alarm: RoomAlarm): AlarmUrgency =>
  soon.includes(alarm.code) || (alarm.code === 'turning-due' && !alarm.overdue) ? 'soon' : 'now';

const newest = (instants: readonly string[]): string => [...instants].sort().at(-1) ?? '';

/** Dry by the forecast, the slow end of its 80 % included; what is left is to prove it. */
function isForecastDry(rug: DryingRug, answer: DryAnswer | null, now: string): boolean {
  const end = answer?.rugs.find(({ id }) => id === rug.rug)?.spread?.interval80[1];
  return end !== undefined && end !== null && hoursBetween(rug.hungAt, now) >= end;
}

function byClock(rug: DryingRug, now: string, isDry: boolean): readonly RoomAlarm[] {
  const { looks, hungAt, postures } = rug;
  const read = newest([hungAt, ...looks.map(({ when }) => when)]);
  const turned = newest([hungAt, ...postures.map(({ when }) => when)]);
  const alarms: RoomAlarm[] = [];
  if (hoursBetween(read, now) > settings.readingEveryHours) {
    alarms.push({ code: 'reading-overdue', rug: rug.rug, since: read });
  }
  const still = hoursBetween(turned, now);
  if (still >= settings.turnFromHours && !isDry) {
    const overdue = still >= settings.turnByHours;
    alarms.push({ code: 'turning-due', rug: rug.rug, since: turned, overdue });
  }
  return alarms;
}

/**
 * Everything to be said of a drying room now, the pressing ones first.
 *
 * @param room - the room's standing
 * @param hanging - what dries in it, and the ids of those that nobody measured
 * @param answer - its forecast; null where none is possible
 * @param now - instant
 * @source none: workshop settings of data/drying/room.json; turning every 4 to 6 h is common practice
 */
export function roomAlarms(
  room: RoomStanding,
  { rugs, unmeasured }: { readonly rugs: readonly DryingRug[]; readonly unmeasured: readonly string[] },
  answer: DryAnswer | null,
  now: string,
): readonly RoomAlarm[] {
  if (rugs.length + unmeasured.length === 0) return [];
  const alarms: RoomAlarm[] = [
    ...unmeasured.map((rug): RoomAlarm => ({ code: 'size-missing', rug })),
    ...(answer?.alarms ?? []),
    ...rugs.flatMap((rug) => byClock(rug, now, isForecastDry(rug, answer, now))),
  ];
  const air = room.room.at(-1);
  if (air === undefined || hoursBetween(air.when, now) > settings.readingEveryHours) {
    alarms.push({ code: 'air-not-read', since: air?.when ?? null });
  }
  const rh = room.room.findLast((read) => read.rh !== undefined)?.rh;
  if (rh !== undefined && rh > settings.rhAtMost) {
    alarms.push({ code: 'room-damp', rh, most: settings.rhAtMost });
  }
  for (const { machine, name, kind } of room.setUp?.machines ?? []) {
    // A heater that stands still may be meant so; a still fan or dehumidifier beside wet rugs is a mistake.
    if (kind === 'heater' || runs(room, machine)) continue;
    alarms.push({ code: 'machine-off', machine: name, since: room.switches[machine]?.at(-1)?.when ?? null });
  }
  const airC = room.room.findLast((read) => read.airC !== undefined)?.airC;
  for (const { rug, airAtMostC } of rugs) {
    if (airC !== undefined && airAtMostC !== null && airC > airAtMostC) {
      alarms.push({ code: 'too-warm-for-plan', rug, airC, mostC: airAtMostC });
    }
  }
  const heat = roomHeatOf(room);
  for (const { rug, heated } of rugs) {
    if (heat.heat === 'on' && heated === false) alarms.push({ code: 'heat-not-told', rug, by: heat.by });
  }
  const rank = { now: 0, soon: 1 } as const;
  return alarms.sort((a, b) => rank[alarmUrgency(a)] - rank[alarmUrgency(b)]);
}
