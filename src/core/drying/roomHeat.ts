import settings from '../../../data/drying/heat.json' with { type: 'json' };
import surface from '../../../data/drying/surface.json' with { type: 'json' };
import { latentHeat } from '../air/index.ts';
import type { PreparedRoom } from './preparedRoom.ts';
import type { RoomCondition } from './roomCondition.ts';

const { airDensityKgPerM3, airHeatJPerKgK } = surface.lewis;

/** A rate and how it changes with the vapour and the temperature of the air; reused from call to call. */
export interface AirRate {
  rate: number;
  byAir: number;
  byHeat: number;
}

/** A rate that is nothing so far. */
export const noRate = (): AirRate => ({ rate: 0, byAir: 0, byHeat: 0 });

/** What the heat of a room hangs on at one moment. */
export interface HeatState {
  airC: number;
  outsideC: number;
  /** True loss through the walls over the reckoned one. */
  walls: number;
  /** Water that evaporates where the heat is not reckoned by rug [kg/s]. */
  otherWater: number;
  /** Water that leaves the air as liquid: machines and condensation [kg/s]. */
  readonly liquid: AirRate;
  /** Heat the rugs draw [W]. */
  readonly drawn: AirRate;
}

/**
 * How fast a room warms: walls, outside air, heaters, current, and the heat that water takes along when
 * it evaporates and gives back when a machine takes it out.
 *
 * @param room - prepared
 * @param condition - what is switched and opened
 * @param state - of the moment
 * @param into - warming [K/s] and how it changes with vapour and temperature
 * @source none: heat balance; loss, held heat and current by common practice (data/drying/heat.json)
 */
export function warm(
  { heat, volumeM3 }: PreparedRoom,
  condition: RoomCondition,
  state: HeatState,
  into: AirRate,
): void {
  const { airC, outsideC } = state;
  const exchangeWPerK = condition.airChangesPerS * volumeM3 * airDensityKgPerM3 * airHeatJPerKgK;
  const lossWPerK = heat.wallsWPerK * state.walls + exchangeWPerK;
  let watts = condition.heatW - lossWPerK * (airC - outsideC);
  let byHeat = -lossWPerK;
  for (const { watts: full, untilC } of condition.heaters) {
    const open = Math.min(1, Math.max(0, (untilC - airC) / settings.throttleK + 0.5));
    watts += full * open;
    if (open > 0 && open < 1) byHeat -= full / settings.throttleK;
  }
  const { liquid, drawn } = state;
  const latent = latentHeat(airC);
  watts += latent * (liquid.rate - state.otherWater) - drawn.rate;
  into.rate = watts / heat.heldJPerK;
  into.byAir = (latent * liquid.byAir - drawn.byAir) / heat.heldJPerK;
  into.byHeat = (byHeat + latent * liquid.byHeat - drawn.byHeat) / heat.heldJPerK;
}
