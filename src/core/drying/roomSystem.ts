import { readTable, slopeOfTable, vapourPressure } from '../air/index.ts';
import type { ArrowSystem } from './arrowSystem.ts';
import { refrigerantShare, refrigerantShareByRh } from './dehumidifier.ts';
import { airAt, outsideVapour, type PreparedRoom } from './preparedRoom.ts';
import { balanceFace, newFace, saturatedConcentration } from './surfaceFlux.ts';

/** What no one knows exactly: one value per rug, in the order of the room's rugs. */
export interface Unknowns {
  /** [kg/kg] */
  readonly startRegain: Float64Array;
  /** The room's calibration factor as it meets each rug. */
  readonly g: Float64Array;
  /** Greatest resistance of the dry outer pile [s/m]. */
  readonly resistance: Float64Array;
  readonly criticalRegain: Float64Array;
  /** True oven-dry mass over the one that was reckoned. */
  readonly dryMass: Float64Array;
  /** Water that rugs outside the run truly give over what was reckoned of them. */
  others: number;
}

/** Water that rugs outside the run give to the air [kg/s], at even steps from hour 0. */
export type Background = readonly number[];
export const backgroundStepS = 900;

/** Vapour beyond saturation falls out within about a minute. */
const condensingS = 60;

/** Below this difference the outer pile counts as dry at once; it keeps the resistance finite. */
const leastCriticalGap = 1e-3;

/** The ways water leaves the air besides the machines, which follow in their order. */
export const fixedPaths = ['airExchange', 'condensation'] as const;

/** The unknowns as the scenario has them. */
export function knownUnknowns({ rugs, g }: PreparedRoom): Unknowns {
  return {
    startRegain: Float64Array.from(rugs, (rug) => rug.startRegain),
    g: new Float64Array(rugs.length).fill(g),
    resistance: Float64Array.from(rugs, (rug) => rug.resistance),
    criticalRegain: Float64Array.from(rugs, (rug) => rug.criticalRegain),
    dryMass: new Float64Array(rugs.length).fill(1),
    others: 1,
  };
}

const backgroundAt = (background: Background | null, time: number): number => {
  if (background === null) return 0;
  const place = Math.min(background.length - 1, Math.max(0, time / backgroundStepS));
  const i = Math.min(background.length - 2, Math.floor(place));
  const [from, to] = [background[Math.max(0, i)] ?? 0, background[i + 1] ?? background[i] ?? 0];
  return from + (to - from) * (place - i);
};

/**
 * The rates of a room of rugs: each rug by its surface balance, the air by what rugs, machines and
 * outside air give and take.
 *
 * @param room - prepared
 * @param background - water from rugs that are not in this run
 * @source none: mass balance; the parts cite their sources
 */
export function makeRoomSystem(room: PreparedRoom, background: Background | null) {
  const { rugs, machines, volumeM3, film, airChangesPerS, airIsMeasured } = room;
  const cells = rugs.length;
  const paths = fixedPaths.length + machines.length;
  const weights = new Float64Array(cells);
  const hangs = new Uint8Array(cells);
  const exposure = new Float64Array(cells);
  const cellRate = new Float64Array(cells);
  const cellByCell = new Float64Array(cells);
  const cellByAir = new Float64Array(cells);
  const pathRate = new Float64Array(paths);
  const pathByAir = new Float64Array(paths);
  const faces = rugs.map(newFace);
  const varies = room.air.length > 1 || background !== null;
  let unknowns = knownUnknowns(room);
  let given = airAt(room.air, 0);
  let [airC, atSaturation, out, background0] = [0, 0, 0, 0];

  const takeAir = (time: number): void => {
    given = airAt(room.air, time);
    airC = given.airC;
    atSaturation = saturatedConcentration(airC);
    out = outsideVapour(room, airC);
    background0 = unknowns.others * backgroundAt(background, time);
  };
  takeAir(0);

  const evaluateRug = (i: number, regain: number, vapour: number, rh: number, slopes: boolean): void => {
    const rug = rugs[i];
    const face = faces[i];
    if (rug === undefined || face === undefined || hangs[i] === 0) {
      cellRate[i] = 0;
      cellByCell[i] = 0;
      cellByAir[i] = 0;
      return;
    }
    const { activity, regain: atRest, saturation } = rug.desorption;
    const g = unknowns.g[i] ?? 1;
    const most = unknowns.resistance[i] ?? 0;
    const critical = unknowns.criticalRegain[i] ?? 0;
    // While water is plenty neither the isotherm nor the air at rest matters: most of the work is spared.
    const rest = regain < critical ? readTable(atRest, rh) : 0;
    const gap = Math.max(leastCriticalGap, critical - rest);
    const dryness = regain < critical ? Math.min(1, (critical - regain) / gap) : 0;
    face.activity = regain < saturation ? readTable(activity, regain) : 1;
    face.resistance = (1 / film.vapour + most * dryness) / g;
    balanceFace(face, airC, vapour, film.heat);
    const perKg = (exposure[i] ?? 0) / (weights[i] ?? 1);
    cellRate[i] = -face.flux * perKg;
    if (!slopes) return;
    const inside = dryness > 0 && dryness < 1 ? most / gap / g : 0;
    const byRegain = face.fluxByActivity * slopeOfTable(activity, regain) - face.fluxByResistance * inside;
    const restByAir = rh < 1 ? slopeOfTable(atRest, rh) / atSaturation : 0;
    const byAir = face.fluxByAir + face.fluxByResistance * inside * dryness * restByAir;
    cellByCell[i] = -byRegain * perKg;
    cellByAir[i] = -byAir * perKg;
  };

  const evaluatePaths = (vapour: number, rh: number): void => {
    if (airIsMeasured) return;
    pathRate[0] = airChangesPerS * volumeM3 * (vapour - out);
    pathByAir[0] = airChangesPerS * volumeM3;
    const beyond = vapour - atSaturation;
    pathRate[1] = beyond > 0 ? (volumeM3 * beyond) / condensingS : 0;
    pathByAir[1] = beyond > 0 ? volumeM3 / condensingS : 0;
    const pascalsPerVapour = vapourPressure(1, airC);
    const share = refrigerantShare(airC, rh);
    const shareByRh = refrigerantShareByRh(airC, rh);
    for (let k = 0; k < machines.length; k++) {
      const machine = machines[k];
      if (machine === undefined) break;
      const perVapour = machine.perPascal * pascalsPerVapour;
      const keeps = machine.refrigerant ? share : 1;
      const rise = machine.refrigerant ? shareByRh : 0;
      pathRate[fixedPaths.length + k] = perVapour * vapour * keeps;
      pathByAir[fixedPaths.length + k] = perVapour * (keeps + (vapour * rise) / atSaturation);
    }
  };

  const system: ArrowSystem = {
    ...{ cells, paths, weights, volume: volumeM3, airIsGiven: airIsMeasured, varies },
    ...{ cellRate, cellByCell, cellByAir, pathRate, pathByAir },
    evaluate(time, state, slopes) {
      if (varies) takeAir(time);
      const vapour = state[cells] ?? 0;
      const rh = Math.min(1, vapour / atSaturation);
      for (let i = 0; i < cells; i++) evaluateRug(i, state[i] ?? 0, vapour, rh, slopes);
      evaluatePaths(vapour, rh);
    },
    givenRate: () => (airIsMeasured ? given.vapourPerS : background0),
  };
  return {
    system,
    /** Takes a draw of the unknowns and hangs nothing yet. */
    begin(draw: Unknowns): void {
      unknowns = draw;
      hangs.fill(0);
      for (const [i, rug] of rugs.entries()) {
        weights[i] = rug.dryMassKg * (draw.dryMass[i] ?? 1);
        exposure[i] = rug.exposedM2;
      }
    },
    /** Hangs and takes down what the time asks for. */
    hangAt(time: number): void {
      for (const [i, { hungAt, takenAt }] of rugs.entries())
        hangs[i] = time >= hungAt && time < takenAt ? 1 : 0;
    },
    /** Temperatures of the faces at the last evaluation [°C]. */
    faces,
  };
}
