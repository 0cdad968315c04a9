import type { AirRate } from './roomHeat.ts';

/**
 * Stores of water that exchange it, and the heat it takes along, with one shared air, and with nothing
 * else: so the matrix of slopes is an arrow (a diagonal, two rows, two columns) and a step costs in
 * proportion to the number of stores.
 * State: cells (regain of each rug), then the air's vapour, its temperature, and the total gone by each path.
 */
export interface ArrowSystem {
  readonly cells: number;
  readonly paths: number;
  /** Water per unit of each cell [kg]. */
  readonly weights: Float64Array;
  /** Water per unit of the air [m³]. */
  readonly volume: number;
  /** Air that is measured follows its readings whatever the cells give off. */
  readonly vapourIsGiven: () => boolean;
  /** Whether the temperature is held, scheduled or measured. */
  readonly heatIsGiven: () => boolean;
  /** Whether anything but the state changes the rates. */
  readonly varies: boolean;
  /** Works out the rates at a time [s] and state, and with `slopes` how they change with the state. */
  readonly evaluate: (time: number, state: Float64Array, slopes: boolean) => void;
  /** Filled by `evaluate`. */
  readonly cellRate: Float64Array;
  readonly cellByCell: Float64Array;
  readonly cellByAir: Float64Array;
  readonly cellByHeat: Float64Array;
  readonly pathRate: Float64Array;
  readonly pathByAir: Float64Array;
  readonly pathByHeat: Float64Array;
  /** Warming of the air [K/s] and how it changes with each cell. */
  readonly heatByCell: Float64Array;
  readonly heat: AirRate;
  /** Water that others give to the air [kg/s], or the slope of measured air [kg/m³s]. */
  readonly givenRate: () => number;
}

/** The slopes of a system at one state, kept while its rates are worked out elsewhere. */
export function makeArrowMatrix(system: ArrowSystem) {
  const { cells, paths, volume } = system;
  const ofCells = () => new Float64Array(cells);
  const [byCell, byAir, byHeat, heatByCell] = [ofCells(), ofCells(), ofCells(), ofCells()];
  const [inverse, waterShare, warmthShare] = [ofCells(), ofCells(), ofCells()];
  const whole = { shift: 0, airByAir: 0, airByHeat: 0, heatByAir: 0, heatByHeat: 0 };
  const pathByAir = new Float64Array(paths);
  const pathByHeat = new Float64Array(paths);
  const heat = { byAir: 0, byHeat: 0 };

  return {
    keep(): void {
      byCell.set(system.cellByCell);
      byAir.set(system.cellByAir);
      byHeat.set(system.cellByHeat);
      heatByCell.set(system.heatByCell);
      pathByAir.set(system.pathByAir);
      pathByHeat.set(system.pathByHeat);
      heat.byAir = system.heat.byAir;
      heat.byHeat = system.heat.byHeat;
    },
    /** Makes ready to solve with one shift: all stages of a step share it. */
    factor(shift: number): void {
      whole.shift = shift;
      const [vapourGiven, heatGiven] = [system.vapourIsGiven(), system.heatIsGiven()];
      // The two shared rows once the cells are eliminated: a x + b y = e, c x + d y = f.
      let [a, b, c, d] = [shift, 0, 0, shift];
      for (let i = 0; i < cells; i++) {
        const perPivot = 1 / (shift - (byCell[i] ?? 0));
        const weight = (system.weights[i] ?? 0) / volume;
        const share = weight * (byCell[i] ?? 0) * perPivot;
        const warmth = (heatByCell[i] ?? 0) * perPivot;
        const [toAir, toHeat] = [byAir[i] ?? 0, byHeat[i] ?? 0];
        inverse[i] = perPivot;
        waterShare[i] = share;
        warmthShare[i] = warmth;
        a += (share + weight) * toAir;
        b += (share + weight) * toHeat;
        c -= warmth * toAir;
        d -= warmth * toHeat;
      }
      for (let k = 0; k < paths; k++) {
        a += (pathByAir[k] ?? 0) / volume;
        b += (pathByHeat[k] ?? 0) / volume;
      }
      c -= heat.byAir;
      d -= heat.byHeat;
      if (vapourGiven) [a, b] = [shift, 0];
      if (heatGiven) [c, d] = [0, shift];
      const determinant = a * d - b * c;
      whole.airByAir = d / determinant;
      whole.airByHeat = -b / determinant;
      whole.heatByAir = -c / determinant;
      whole.heatByHeat = a / determinant;
    },
    /** Solves (shift − slopes) x = right, down the arrow's two shafts and back. */
    solve(into: Float64Array, right: Float64Array): void {
      let [e, f] = [right[cells] ?? 0, right[cells + 1] ?? 0];
      // Given air moves by itself, whatever the cells give.
      if (!system.vapourIsGiven()) {
        for (let i = 0; i < cells; i++) e -= (waterShare[i] ?? 0) * (right[i] ?? 0);
      }
      if (!system.heatIsGiven()) {
        for (let i = 0; i < cells; i++) f += (warmthShare[i] ?? 0) * (right[i] ?? 0);
      }
      const air = whole.airByAir * e + whole.airByHeat * f;
      const warm = whole.heatByAir * e + whole.heatByHeat * f;
      into[cells] = air;
      into[cells + 1] = warm;
      for (let i = 0; i < cells; i++) {
        const moved = (right[i] ?? 0) + (byAir[i] ?? 0) * air + (byHeat[i] ?? 0) * warm;
        into[i] = moved * (inverse[i] ?? 0);
      }
      for (let k = 0; k < paths; k++) {
        const moved = (pathByAir[k] ?? 0) * air + (pathByHeat[k] ?? 0) * warm;
        into[cells + 2 + k] = ((right[cells + 2 + k] ?? 0) + moved) / whole.shift;
      }
    },
  };
}
