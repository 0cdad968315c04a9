import surface from '../../../data/drying/surface.json' with { type: 'json' };
import { latentHeat, pressureOverWater, vapourConcentration } from '../air/index.ts';

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

/** Saturated vapour over a wet face by its temperature: value, slope and half the bend at close points. */
const coldestC = -40;
const pointsPerK = 20;
/** Dry fibre that takes up vapour grows hotter than the air. */
const hottestC = 200;
const saturated = (() => {
  const exact = (celsius: number) => vapourConcentration(pressureOverWater(celsius), celsius);
  const near = 0.01;
  const points = new Float64Array(3 * ((hottestC - coldestC) * pointsPerK + 1));
  for (let i = 0; i * 3 < points.length; i++) {
    const celsius = coldestC + i / pointsPerK;
    const [below, at, above] = [exact(celsius - near), exact(celsius), exact(celsius + near)];
    points.set([at, (above - below) / (2 * near), (above - 2 * at + below) / (2 * near * near)], 3 * i);
  }
  return points;
})();

/**
 * Vapour in saturated air over water, as the drying model reads it.
 *
 * @param temperatureC - [°C, -40 … 200]
 * @returns concentration [kg/m³]
 * @source ashrae-2017-f01, eq. 6, through pressureOverWater
 * @accuracy the table follows the fit to 1e-6
 */
export function saturatedConcentration(temperatureC: number): number {
  const point = Math.round((temperatureC - coldestC) * pointsPerK);
  const off = temperatureC - coldestC - point / pointsPerK;
  const i = 3 * point;
  return (saturated[i] ?? Number.NaN) + off * ((saturated[i + 1] ?? 0) + off * (saturated[i + 2] ?? 0));
}

/** Change of saturated vapour with temperature [kg/m³K]. @source none: slope of the same table */
export function saturatedSlope(temperatureC: number): number {
  const point = Math.round((temperatureC - coldestC) * pointsPerK);
  const off = temperatureC - coldestC - point / pointsPerK;
  return (saturated[3 * point + 1] ?? 0) + 2 * off * (saturated[3 * point + 2] ?? 0);
}

/** A face and what it gives off; reused from call to call, since it is worked out millions of times. */
export interface Face {
  /** Surface humidity 0 … 1: 1 while water is free. */
  activity: number;
  /** Resistance to vapour from the wet layer to the air [s/m]. */
  resistance: number;
  /** How far the outer pile has dried, from the critical regain (0) to rest (1), and the way between [kg/kg]. */
  dryness: number;
  gap: number;
  /** Face temperature [°C]: a first guess before, the balance after. */
  temperatureC: number;
  /** Water given off [kg/m²s]. */
  flux: number;
  /** Change of the flux with activity, with vapour in the air, and with resistance, the temperature following. */
  fluxByActivity: number;
  fluxByAir: number;
  fluxByResistance: number;
  /** Change of the flux with the temperature of the air [kg/m²sK]. */
  fluxByHeat: number;
}

/** A face about which nothing is known yet. */
export const newFace = (): Face => ({
  ...{ activity: 1, resistance: 1, dryness: 0, gap: 1, temperatureC: 20, flux: 0 },
  ...{ fluxByActivity: 0, fluxByAir: 0, fluxByResistance: 0, fluxByHeat: 0 },
});

/** A last correction this small leaves an error of its square. */
const closeEnoughC = 1e-3;
const mostRounds = 30;

/**
 * Water a face gives off when the heat it draws from the air just evaporates it.
 *
 * @param face - activity and resistance; takes temperature and flux
 * @param airC - [°C]
 * @param vapour - in the air [kg/m³]
 * @param heat - heat transfer from air and surroundings [W/m²K]
 * @source ashrae-2017-f06, heat balance of a wet surface: heat · (air − face) = latent heat · flux
 * @accuracy solved to 1e-6 K
 */
export function balanceFace(face: Face, airC: number, vapour: number, heat: number): void {
  const { activity, resistance } = face;
  const perResistance = 1 / resistance;
  let temperatureC = face.temperatureC;
  let [flux, latent, fluxByTemperature, atFace] = [0, 0, 0, 0];
  for (let round = 0; round < mostRounds; round++) {
    const point = Math.round((temperatureC - coldestC) * pointsPerK);
    const off = temperatureC - coldestC - point / pointsPerK;
    const i = 3 * point;
    const slope = saturated[i + 1] ?? 0;
    const bend = saturated[i + 2] ?? 0;
    atFace = (saturated[i] ?? Number.NaN) + off * (slope + off * bend);
    const byTemperature = slope + 2 * off * bend;
    latent = latentHeat(temperatureC);
    fluxByTemperature = activity * byTemperature * perResistance;
    flux = (activity * atFace - vapour) * perResistance;
    const step = (heat * (airC - temperatureC) - latent * flux) / (heat + latent * fluxByTemperature);
    // A trial step of the integrator may ask for what no room has; the table ends there, and the step is taken back.
    temperatureC = Math.min(hottestC, Math.max(coldestC, temperatureC + step));
    if (step < closeEnoughC && step > -closeEnoughC) {
      flux += fluxByTemperature * step;
      atFace += byTemperature * step;
      break;
    }
  }
  const damping = 1 + (latent * fluxByTemperature) / heat;
  const perDamped = perResistance / damping;
  face.temperatureC = Number.isFinite(temperatureC) ? temperatureC : airC;
  face.flux = flux;
  face.fluxByActivity = atFace * perDamped;
  face.fluxByAir = -perDamped;
  face.fluxByResistance = -flux * perDamped;
  face.fluxByHeat = fluxByTemperature / damping;
}
