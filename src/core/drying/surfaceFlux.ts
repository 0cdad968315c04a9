import surface from '../../../data/drying/surface.json' with { type: 'json' };
import {
  latentHeat,
  pressureOverWater,
  readTable,
  slopeOfTable,
  tableOf,
  vapourConcentration,
} from '../air/index.ts';

/** How fast heat and vapour pass between a face and the air along it. */
export interface AirFilm {
  /** By air movement and by radiation together [W/m²K]. */
  readonly heat: number;
  /** Of vapour [m/s]. */
  readonly vapour: number;
}

/**
 * Transfer of heat and vapour at a face by the speed of the air along it.
 *
 * @param airSpeed - [m/s, 0 … 10]
 * @returns heat transfer [W/m²K] and vapour transfer [m/s]
 * @source iso-6946, annex C; Lewis relation of ashrae-2017-f06 (data/drying/surface.json)
 * @example airFilm(1) // 13.1 W/m²K and 0.0073 m/s
 */
export function airFilm(airSpeed: number): AirFilm {
  const { convectionStillWPerM2K, convectionPerSpeedWPerM2K, radiationWPerM2K, lewis } = surface;
  const convection = convectionStillWPerM2K + convectionPerSpeedWPerM2K * airSpeed;
  const { lewisNumber, airDensityKgPerM3, airHeatJPerKgK } = lewis;
  return {
    heat: convection + radiationWPerM2K,
    vapour: convection / (airDensityKgPerM3 * airHeatJPerKgK * lewisNumber ** (2 / 3)),
  };
}

/** Saturated vapour over a wet face by its temperature; the fit itself is too slow for the innermost loop. */
const saturated = tableOf(-40, 100, 1400, (celsius) =>
  vapourConcentration(pressureOverWater(celsius), celsius),
);

/**
 * Vapour in saturated air over water, as the drying model reads it.
 *
 * @param temperatureC - [°C, -40 … 100]
 * @returns concentration [kg/m³]
 * @source ashrae-2017-f01, eq. 6, through pressureOverWater
 * @accuracy the table follows the fit to 1e-7
 */
export const saturatedConcentration = (temperatureC: number): number => readTable(saturated, temperatureC);

/** A face and what it gives off; reused from call to call, since it is worked out millions of times. */
export interface Face {
  /** Surface humidity 0 … 1: 1 while water is free. */
  activity: number;
  /** Resistance to vapour from the wet layer to the air [s/m]. */
  resistance: number;
  /** Face temperature [°C]: a first guess before, the balance after. */
  temperatureC: number;
  /** Water given off [kg/m²s]. */
  flux: number;
  /** Change of the flux with activity, with vapour in the air, and with resistance, the temperature following. */
  fluxByActivity: number;
  fluxByAir: number;
  fluxByResistance: number;
}

/** A face about which nothing is known yet. */
export const newFace = (): Face => ({
  ...{ activity: 1, resistance: 1, temperatureC: 20, flux: 0 },
  ...{ fluxByActivity: 0, fluxByAir: 0, fluxByResistance: 0 },
});

const closeEnoughC = 1e-7;

/**
 * Water a face gives off when the heat it draws from the air just evaporates it.
 *
 * @param face - activity and resistance; takes temperature and flux
 * @param airC - [°C]
 * @param vapour - in the air [kg/m³]
 * @param heat - heat transfer from air and surroundings [W/m²K]
 * @source ashrae-2017-f06, heat balance of a wet surface: heat · (air − face) = latent heat · flux
 * @accuracy solved to 1e-7 K
 */
export function balanceFace(face: Face, airC: number, vapour: number, heat: number): void {
  const { activity, resistance } = face;
  let temperatureC = face.temperatureC;
  let flux = 0;
  let latent = 0;
  let fluxByTemperature = 0;
  for (let i = 0; i < 30; i++) {
    latent = latentHeat(temperatureC);
    flux = (activity * readTable(saturated, temperatureC) - vapour) / resistance;
    fluxByTemperature = (activity * slopeOfTable(saturated, temperatureC)) / resistance;
    const step = (heat * (airC - temperatureC) - latent * flux) / (heat + latent * fluxByTemperature);
    temperatureC += step;
    if (step < closeEnoughC && step > -closeEnoughC) break;
  }
  const damping = 1 + (latent * fluxByTemperature) / heat;
  face.temperatureC = temperatureC;
  face.flux = flux;
  face.fluxByActivity = readTable(saturated, temperatureC) / resistance / damping;
  face.fluxByAir = -1 / resistance / damping;
  face.fluxByResistance = -flux / resistance / damping;
}
