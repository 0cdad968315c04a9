import heat from '../../../data/drying/heat.json' with { type: 'json' };
import { secondsPerHour } from './givenAir.ts';
import type { DryScenario, Running } from './scenario.ts';
import { type AirFilm, airFilm } from './surfaceFlux.ts';

const wattsPerKw = 1000;

/** What is switched and opened in a room, until something is switched again. */
export interface RoomCondition {
  readonly from: number;
  readonly film: AirFilm;
  readonly airChangesPerS: number;
  /** By machine. */
  readonly runs: readonly boolean[];
  /** Heat of fans and of the machines' current [W]. */
  readonly heatW: number;
  readonly heaters: readonly { readonly watts: number; readonly untilC: number }[];
}

const runsAt = ({ fromHour, untilHour = Number.POSITIVE_INFINITY }: Running, hour: number): boolean =>
  hour >= fromHour && hour < untilHour;

const isOn = ({ runs }: { readonly runs?: readonly Running[] | undefined }, hour: number): boolean =>
  runs === undefined || runs.some((running) => runsAt(running, hour));

/** Electrical power of a machine [kW]: its own, or the usual for its litres and type. */
const machineKw = ({ kw, litresPerDay, type = 'refrigerant' }: DryScenario['dehumidifiers'][number]) =>
  kw ?? (heat.machines[type].kwhPerLitre * litresPerDay) / 24;

function conditionAt({ room, dehumidifiers, fans = [], heaters = [] }: DryScenario, hour: number) {
  const blowing = fans.filter((fan) => isOn(fan, hour));
  const opening = room.openings?.findLast((one) => runsAt(one, hour));
  const runs = dehumidifiers.map((machine) => isOn(machine, hour));
  const kwOfMachines = dehumidifiers.reduce((sum, machine, k) => {
    const { electricShare } = heat.machines[machine.type ?? 'refrigerant'];
    return runs[k] === true ? sum + electricShare * machineKw(machine) : sum;
  }, 0);
  const kwOfFans = blowing.reduce((sum, { kw = heat.fanKw }) => sum + kw, 0);
  return {
    from: hour * secondsPerHour,
    film: airFilm(Math.max(room.airSpeed, ...blowing.map(({ airSpeed }) => airSpeed))),
    airChangesPerS: (opening?.airChangesPerHour ?? room.airChangesPerHour) / secondsPerHour,
    runs,
    heatW: (kwOfMachines + kwOfFans) * wattsPerKw,
    heaters: heaters
      .filter((heater) => isOn(heater, hour))
      .map(({ kw, untilC = Number.POSITIVE_INFINITY }) => ({ watts: kw * wattsPerKw, untilC })),
  };
}

/**
 * What is switched and opened, stretch by stretch.
 *
 * @param scenario - checked
 * @returns conditions in rising time, the first from hour 0; of two openings at once the later named holds
 * @source common-practice, current and heat of machines (data/drying/heat.json)
 */
export function conditionsOf(scenario: DryScenario): readonly RoomCondition[] {
  const { room, dehumidifiers, fans = [], heaters = [], hours } = scenario;
  const runs = [...dehumidifiers, ...fans, ...heaters].flatMap((one) => one.runs ?? []);
  const switched = [...runs, ...(room.openings ?? [])].flatMap(({ fromHour, untilHour = hours }) => [
    fromHour,
    untilHour,
  ]);
  const times = new Set([0, ...switched.filter((hour) => hour > 0 && hour < hours)]);
  return [...times].sort((a, b) => a - b).map((hour) => conditionAt(scenario, hour));
}
