import { latentHeat, slopeOfTable, vapourPressure } from '../air/index.ts';
import type { ArrowSystem } from './arrowSystem.ts';
import { refrigerantShare, refrigerantShareByRh } from './dehumidifier.ts';
import { airAt } from './givenAir.ts';
import { conditionAt, exposedAt, outsideAt, type PreparedRoom, warmedVapour } from './preparedRoom.ts';
import { type AirRate, noRate, warm } from './roomHeat.ts';
import { setFace } from './rugFace.ts';
import { newFace, saturatedConcentration, saturatedSlope } from './surfaceFlux.ts';
import { knownUnknowns, type Unknowns } from './unknowns.ts';

/** Water that rugs outside the run give to the air [kg/s], at even steps from hour 0. */
export type Background = readonly number[];
export const backgroundStepS = 900;

/** Vapour beyond saturation falls out within about a minute. */
const condensingS = 60;

const kelvinAtZeroC = 273.15;

/**
 * The ways water leaves the air besides the machines, which follow in their order. While the air is measured it
 * is known how much went, not which way.
 */
export const fixedPaths = ['airExchange', 'condensation', 'whileMeasured'] as const;

const backgroundAt = (background: Background | null, time: number): number => {
  if (background === null) return 0;
  const place = Math.min(background.length - 1, Math.max(0, time / backgroundStepS));
  const i = Math.min(background.length - 2, Math.floor(place));
  const [from, to] = [background[Math.max(0, i)] ?? 0, background[i + 1] ?? background[i] ?? 0];
  return from + (to - from) * (place - i);
};

/**
 * The rates of a room of rugs: each rug by its surface balance, the air by what rugs, machines and
 * outside air give and take, its temperature by the room's heat where it is not given.
 *
 * @param room - prepared
 * @param background - water from rugs that are not in this run
 * @source none: balances of mass and heat; the parts cite their sources
 */
export function makeRoomSystem(room: PreparedRoom, background: Background | null) {
  const { rugs, machines, volumeM3 } = room;
  const cells = rugs.length;
  const paths = fixedPaths.length + machines.length;
  const ofCells = () => new Float64Array(cells);
  const [weights, exposure, cellRate] = [ofCells(), ofCells(), ofCells()];
  const [cellByCell, cellByAir, cellByHeat, heatByCell] = [ofCells(), ofCells(), ofCells(), ofCells()];
  const [pathRate, pathByAir, pathByHeat] = [0, 1, 2].map(() => new Float64Array(paths)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const [heat, drawn, liquid] = [noRate(), noRate(), noRate()];
  const faces = rugs.map(newFace);
  const varies = room.outside.length > 1 || background !== null;
  // Not a number is no temperature, so that the first one read, 0 °C too, is taken.
  const air = { airC: Number.NaN, vapour: 0, rh: 0, atSaturation: 0, slope: 0 };
  let unknowns = knownUnknowns(room);
  let given = airAt(room.air, 0);
  let condition = conditionAt(room, 0);
  let entered = outsideAt(room, 0);
  let [enteredAt, others] = [0, 0];
  const outside = { airC: entered.airC, pressurePa: entered.pressurePa };
  const heatState = { airC: 0, outsideC: 0, walls: 1, otherWater: 0, liquid, drawn };

  const readAir = (state: Float64Array): void => {
    air.vapour = state[cells] ?? 0;
    const airC = state[cells + 1] ?? 0;
    if (airC !== air.airC) {
      air.airC = airC;
      air.atSaturation = saturatedConcentration(airC);
      air.slope = saturatedSlope(airC);
    }
    air.rh = Math.min(1, air.vapour / air.atSaturation);
  };

  const evaluateRug = (i: number, regain: number, slopes: boolean): void => {
    const [rug, face, m2] = [rugs[i], faces[i], exposure[i] ?? 0];
    if (rug === undefined || face === undefined || condition === undefined || m2 === 0) {
      cellRate[i] = cellByCell[i] = cellByAir[i] = cellByHeat[i] = heatByCell[i] = 0;
      return;
    }
    setFace(face, rug, i, unknowns, regain, air, condition.film);
    const { dryness, gap } = face;
    const perKg = m2 / (weights[i] ?? 1);
    cellRate[i] = -face.flux * perKg;
    const latent = latentHeat(face.temperatureC);
    drawn.rate += latent * face.flux * m2;
    if (!slopes) return;
    const inside =
      dryness > 0 && dryness < 1 ? (unknowns.resistance[i] ?? 0) / gap / (unknowns.g[i] ?? 1) : 0;
    const { activity, regain: atRest } = rug.desorption;
    const byRegain = face.fluxByActivity * slopeOfTable(activity, regain) - face.fluxByResistance * inside;
    const byRest = air.rh < 1 ? face.fluxByResistance * inside * dryness * slopeOfTable(atRest, air.rh) : 0;
    const byAir = face.fluxByAir + byRest / air.atSaturation;
    const byHeat = face.fluxByHeat - (byRest * air.rh * air.slope) / air.atSaturation;
    cellByCell[i] = -byRegain * perKg;
    cellByAir[i] = -byAir * perKg;
    cellByHeat[i] = -byHeat * perKg;
    heatByCell[i] = (-latent * byRegain * m2) / room.heat.heldJPerK;
    drawn.byAir += latent * byAir * m2;
    drawn.byHeat += latent * byHeat * m2;
  };

  const addLiquid = (k: number, rate: number, byAir: number, byHeat: number): void => {
    pathRate[k] = rate;
    pathByAir[k] = byAir;
    pathByHeat[k] = byHeat;
    liquid.rate += rate;
    liquid.byAir += byAir;
    liquid.byHeat += byHeat;
  };

  const evaluatePaths = (): void => {
    if (condition === undefined) return;
    const { airC, vapour, rh, atSaturation, slope } = air;
    const kelvin = airC + kelvinAtZeroC;
    const exchange = condition.airChangesPerS * volumeM3;
    const out = warmedVapour(outside, airC);
    pathRate[0] = exchange * (vapour - out);
    pathByAir[0] = exchange;
    pathByHeat[0] = (exchange * out) / kelvin;
    const falls = vapour > atSaturation ? volumeM3 / condensingS : 0;
    addLiquid(1, falls * (vapour - atSaturation), falls, -falls * slope);
    const share = refrigerantShare(airC, rh);
    const shareByRh = refrigerantShareByRh(airC, rh);
    for (let k = 0; k < machines.length; k++) {
      const machine = machines[k];
      if (machine === undefined) break;
      const perVapour = condition.runs[k] === true ? machine.perPascal * vapourPressure(1, airC) : 0;
      const keeps = machine.refrigerant ? share : 1;
      const byRh = machine.refrigerant ? shareByRh / atSaturation : 0;
      addLiquid(
        fixedPaths.length + k,
        perVapour * vapour * keeps,
        perVapour * (keeps + vapour * byRh),
        perVapour * vapour * (keeps / kelvin - byRh * rh * slope),
      );
    }
  };

  const evaluateHeat = (): void => {
    if (given.airC !== null || condition === undefined) {
      heat.rate = given.airCPerS;
      heat.byAir = heat.byHeat = 0;
      return;
    }
    heatState.airC = air.airC;
    heatState.outsideC = outside.airC;
    heatState.walls = unknowns.walls;
    heatState.otherWater = others;
    warm(room, condition, heatState, heat);
  };

  const forget = (of: AirRate): void => {
    of.rate = of.byAir = of.byHeat = 0;
  };

  const takeTime = (time: number): void => {
    const past = time - enteredAt;
    outside.airC = entered.airC + past * entered.airCPerS;
    outside.pressurePa = entered.pressurePa + past * entered.pressurePerS;
    others = unknowns.others * backgroundAt(background, time);
  };

  const system: ArrowSystem = {
    ...{ cells, paths, weights, volume: volumeM3, varies },
    ...{ cellRate, cellByCell, cellByAir, cellByHeat, pathRate, pathByAir, pathByHeat, heat, heatByCell },
    vapourIsGiven: () => given.vapour !== null,
    heatIsGiven: () => given.airC !== null,
    evaluate(time, state, slopes) {
      if (varies) takeTime(time);
      readAir(state);
      forget(drawn);
      forget(liquid);
      for (let i = 0; i < cells; i++) evaluateRug(i, state[i] ?? 0, slopes);
      if (given.vapour === null) evaluatePaths();
      evaluateHeat();
    },
    givenRate: () => (given.vapour !== null ? given.vapourPerS : others),
  };
  return {
    system,
    /** Takes a draw of the unknowns. */
    begin(draw: Unknowns): void {
      unknowns = draw;
      for (const [i, rug] of rugs.entries()) weights[i] = rug.dryMassKg * (draw.dryMass[i] ?? 1);
    },
    /** Hangs, turns, switches and opens what a time asks for, and puts given air into the state. */
    enter(time: number, state: Float64Array): void {
      given = airAt(room.air, time);
      condition = conditionAt(room, time);
      for (const [i, rug] of rugs.entries()) exposure[i] = exposedAt(rug, time);
      pathRate.fill(0);
      pathByAir.fill(0);
      pathByHeat.fill(0);
      entered = outsideAt(room, time);
      enteredAt = time;
      takeTime(time);
      if (given.airC !== null) state[cells + 1] = given.airC;
      if (given.vapour !== null) state[cells] = given.vapour;
    },
    vapourIsGiven: () => given.vapour !== null,
  };
}
