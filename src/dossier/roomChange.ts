import { airState } from '../core/air/index.ts';
import {
  asBelieved,
  asLearnt,
  type Dehumidifier,
  type DryAlarm,
  type DryAnswer,
  type DryRug,
  type DryScenario,
  type Fan,
  type LearntDrying,
  type Opening,
  type Posture,
  warmthReckoned,
} from '../core/drying/index.ts';

/** One thing done otherwise in a drying room, from an hour of its scenario on. */
export type RoomChange =
  | { readonly kind: 'add-rug'; readonly rug: DryRug }
  | { readonly kind: 'turn'; readonly rug: string; readonly hour: number; readonly posture: Posture }
  | { readonly kind: 'take-down'; readonly rug: string; readonly hour: number }
  | { readonly kind: 'add-machine'; readonly machine: Dehumidifier }
  | { readonly kind: 'add-fan'; readonly fan: Fan }
  | {
      readonly kind: 'open';
      readonly opening: Opening;
      /** What the walls let through, where the room's record does not say it [W/K]. */
      readonly wallsWPerK?: number | undefined;
    };

/**
 * The scenario with one thing done otherwise; readings stay, since they speak of the hours before.
 *
 * @param scenario - of the room as it stands
 * @param change - what would be done
 * @source none: the same scenario, one thing changed
 */
export function changedScenario(scenario: DryScenario, change: RoomChange): DryScenario {
  const { room, dehumidifiers, fans = [] } = scenario;
  const withRug = (id: string, alter: (rug: DryRug) => DryRug): DryScenario => ({
    ...scenario,
    rugs: scenario.rugs.map((rug) => (rug.id === id ? alter(rug) : rug)),
  });
  switch (change.kind) {
    case 'add-rug':
      return { ...scenario, rugs: [...scenario.rugs, change.rug] };
    case 'turn': {
      const { hour, posture } = change;
      return withRug(change.rug, (rug) => ({
        ...rug,
        turnings: [...(rug.turnings ?? []).filter((turning) => turning.hour < hour), { hour, posture }],
      }));
    }
    case 'take-down':
      return withRug(change.rug, (rug) => ({ ...rug, takenAtHour: change.hour }));
    case 'add-machine':
      return { ...scenario, dehumidifiers: [...dehumidifiers, change.machine] };
    case 'add-fan':
      return { ...scenario, fans: [...fans, change.fan] };
    case 'open':
      return { ...scenario, room: { ...room, openings: [...(room.openings ?? []), change.opening] } };
  }
}

/** A rug's finish before and after a change, on the scenario's clock; null: not in the hours looked at. */
export interface RugMoved {
  readonly id: string;
  readonly before: number | null;
  readonly after: number | null;
  readonly movedHours: number | null;
}

/** The scenarios that answer what a change would do. */
export interface WhatIf {
  /** As it stands and as it would be, along the likely course: two runs, told at once. */
  readonly before: DryScenario;
  readonly after: DryScenario;
  /** As it would be, with its draws: how sure it is. */
  readonly drawn: DryScenario;
}

/**
 * What to work out for a change. A room that is only taken to stay as warm as it is has its warmth reckoned
 * where windows are opened: held, it would say that winter air dries for nothing.
 *
 * @param scenario - of the room as it stands
 * @param answer - its forecast
 * @param change - what would be done
 * @param learning - what past rugs taught: a rug the change adds is believed as those of its make were
 * @source none: the same scenario, one thing changed
 */
export function whatIfOf(
  scenario: DryScenario,
  answer: DryAnswer,
  change: RoomChange,
  learning: LearntDrying | null,
): WhatIf {
  const base =
    change.kind === 'open'
      ? warmthReckoned(scenario, change.opening.fromHour, change.wallsWPerK).scenario
      : scenario;
  const other = changedScenario(base, change);
  const drawn = learning === null ? other : asLearnt(other, learning);
  return { before: asBelieved(base, answer), after: asBelieved(drawn, answer), drawn };
}

/**
 * Each rug's finish beside what it would be. The change moves the forecast by as much as it moves the likely
 * course; a rug the change adds has no before.
 *
 * @param forecast - of the room as it stands
 * @param before - its likely course
 * @param after - the likely course with the change
 * @source none: difference of two runs
 */
export const rugsMoved = (forecast: DryAnswer, before: DryAnswer, after: DryAnswer): readonly RugMoved[] => {
  const endOf = ({ rugs }: DryAnswer, id: string) => rugs.find((rug) => rug.id === id)?.targetAtHour ?? null;
  return after.rugs.map(({ id, targetAtHour }) => {
    const [stood, was] = [endOf(forecast, id), endOf(before, id)];
    const movedHours = was === null || targetAtHour === null ? null : targetAtHour - was;
    const is = stood === null || movedHours === null ? targetAtHour : stood + movedHours;
    return { id, before: stood, after: is, movedHours };
  });
};

const keyOf = (alarm: DryAlarm): string => `${alarm.code} ${'rug' in alarm ? alarm.rug : ''}`;

/** Alarms that a change brings. */
export function newAlarms(before: DryAnswer, after: DryAnswer): readonly DryAlarm[] {
  const known = new Set(before.alarms.map(keyOf));
  return after.alarms.filter((alarm) => !known.has(keyOf(alarm)));
}

/**
 * Whether open windows dry a room: by the water in a kilogram of air, never by relative humidity.
 *
 * @param answer - the room's forecast with windows as they are
 * @param outside - air outside [°C, fraction]
 * @param fromHour - hour at which they would be opened
 * @returns humidity ratios of both [kg/kg]; null where one of them cannot be told
 * @source ashrae-2017-f01, eq. 20, humidity ratio (data/air/moistAir.json)
 */
export function openingCompared(
  answer: DryAnswer,
  outside: { readonly airC: number; readonly rh: number },
  fromHour: number,
): { readonly room: number; readonly outside: number } | null {
  const inside = answer.hourly.findLast(({ hour }) => hour <= fromHour) ?? answer.hourly[0];
  if (inside === undefined) return null;
  const [room, out] = [inside, outside].map(({ airC, rh }) => airState({ temperatureC: airC, rh }));
  return room?.ok === true && out?.ok === true
    ? { room: room.value.humidityRatio, outside: out.value.humidityRatio }
    : null;
}
