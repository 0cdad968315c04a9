import heat from '../../../data/drying/heat.json' with { type: 'json' };
import surface from '../../../data/drying/surface.json' with { type: 'json' };
import type { Estimate } from '../air/index.ts';
import { secondsPerHour } from './givenAir.ts';
import { conditionsOf } from './roomCondition.ts';
import type { DryScenario } from './scenario.ts';

/** Spreads of a normal belief that hold 80 % of it. */
const within80 = 1.2816;
const wattsPerKw = 1000;

/**
 * What the walls, floor and roof of a room let through where nobody described them.
 *
 * @param volumeM3 - of the room
 * @returns loss [W/K]: likeliest, and the bounds of 80 %
 * @source common-practice (data/drying/heat.json): an insulated room among heated ones to a plain outhouse
 */
export function wallsByVolume(volumeM3: number): Estimate {
  const likely = heat.wallsWPerM3K * volumeM3;
  const factor = Math.exp(within80 * heat.wallsSpread);
  return { likely, least: likely / factor, most: likely * factor };
}

/**
 * A room that was taken to stay as warm as it is, with its warmth reckoned instead: what keeps it warm now,
 * besides its own machines, is taken to go on as it does now, against the walls and the air exchange.
 *
 * @param scenario - of a room held at a temperature
 * @param hour - now, on the scenario's clock [h]
 * @param wallsWPerK - what the walls let through; absent: by the room's volume, with its wide spread
 * @returns the scenario with a heat balance, and the heat nobody recorded [W]; as it was where no
 *   temperature is held
 * @source none: heat balance at rest; the water that evaporates and the water machines give back are taken to be even
 */
export function warmthReckoned(
  scenario: DryScenario,
  hour: number,
  wallsWPerK?: number,
): { readonly scenario: DryScenario; readonly unrecordedW: number } {
  const { room, outside, heaters = [] } = scenario;
  const { airC, ...rest } = room;
  if (airC === undefined) return { scenario, unrecordedW: 0 };
  const { airDensityKgPerM3, airHeatJPerKgK } = surface.lewis;
  const present = conditionsOf(scenario).findLast(({ from }) => from <= hour * secondsPerHour);
  const airChangesPerS = present?.airChangesPerS ?? room.airChangesPerHour / secondsPerHour;
  const exchangeWPerK = airChangesPerS * room.volumeM3 * airDensityKgPerM3 * airHeatJPerKgK;
  const lossW = ((wallsWPerK ?? wallsByVolume(room.volumeM3).likely) + exchangeWPerK) * (airC - outside.airC);
  const knownW = (present?.heaters ?? []).reduce((sum, { watts }) => sum + watts, present?.heatW ?? 0);
  const unrecordedW = Math.max(0, lossW - knownW);
  return {
    unrecordedW,
    scenario: {
      ...scenario,
      room: {
        ...rest,
        startC: room.measured?.[0]?.airC ?? airC,
        ...(wallsWPerK === undefined ? {} : { wallsWPerK }),
      },
      heaters: unrecordedW > 0 ? [...heaters, { kw: unrecordedW / wattsPerKw }] : heaters,
    },
  };
}
