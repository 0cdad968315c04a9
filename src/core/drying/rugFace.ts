import { readTable } from '../air/index.ts';
import type { PreparedRug } from './preparedRoom.ts';
import { type AirFilm, balanceFace, type Face } from './surfaceFlux.ts';
import type { Unknowns } from './unknowns.ts';

/** Below this difference the outer pile counts as dry at once; it keeps the resistance finite. */
const leastCriticalGap = 1e-3;

/**
 * Sets a rug's face to what it gives off at a regain.
 *
 * @param face - takes activity, resistance, temperature and flux with its slopes
 * @param rug - prepared
 * @param at - its place among the unknowns
 * @param unknowns - of the run
 * @param regain - [kg/kg]
 * @param air - temperature [°C], vapour [kg/m³] and relative humidity
 * @param film - heat and vapour transfer
 * @source none: two stages of drying, resistance from the critical regain to rest (data/drying/settings.json)
 */
export function setFace(
  face: Face,
  rug: PreparedRug,
  at: number,
  unknowns: Unknowns,
  regain: number,
  air: { readonly airC: number; readonly vapour: number; readonly rh: number },
  film: AirFilm,
): void {
  const { activity, regain: atRest, saturation } = rug.desorption;
  const critical = unknowns.criticalRegain[at] ?? 0;
  // While water is plenty neither the isotherm nor the air at rest matters: most of the work is spared.
  const rest = regain < critical ? readTable(atRest, air.rh) : 0;
  const gap = Math.max(leastCriticalGap, critical - rest);
  const dryness = regain < critical ? Math.min(1, (critical - regain) / gap) : 0;
  face.activity = regain < saturation ? readTable(activity, regain) : 1;
  face.resistance = (1 / film.vapour + (unknowns.resistance[at] ?? 0) * dryness) / (unknowns.g[at] ?? 1);
  balanceFace(face, air.airC, air.vapour, film.heat);
  face.dryness = dryness;
  face.gap = gap;
}
