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
  const [byCell, byAir, byHeat, heatByCell] = [0, 1, 2, 3].map(() => new Float64Array(cells)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
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
    /** Solves (shift − slopes) x = right, down the arrow's two shafts and back. */
    solve(into: Float64Array, right: Float64Array, shift: number): void {
      const [vapourGiven, heatGiven] = [system.vapourIsGiven(), system.heatIsGiven()];
      // The two shared rows once the cells are eliminated: a x + b y = e, c x + d y = f.
      let [a, b, c, d] = [shift, 0, 0, shift];
      let [e, f] = [right[cells] ?? 0, right[cells + 1] ?? 0];
      for (let i = 0; i < cells; i++) {
        const pivot = shift - (byCell[i] ?? 0);
        const weight = (system.weights[i] ?? 0) / volume;
        const share = (weight * (byCell[i] ?? 0)) / pivot;
        const [toAir, toHeat, own] = [byAir[i] ?? 0, byHeat[i] ?? 0, right[i] ?? 0];
        a += (share + weight) * toAir;
        b += (share + weight) * toHeat;
        e -= share * own;
        const warmth = (heatByCell[i] ?? 0) / pivot;
        c -= warmth * toAir;
        d -= warmth * toHeat;
        f += warmth * own;
      }
      for (let k = 0; k < paths; k++) {
        a += (pathByAir[k] ?? 0) / volume;
        b += (pathByHeat[k] ?? 0) / volume;
      }
      c -= heat.byAir;
      d -= heat.byHeat;
      if (vapourGiven) [a, b, e] = [shift, 0, right[cells] ?? 0];
      if (heatGiven) [c, d, f] = [0, shift, right[cells + 1] ?? 0];
      const whole = a * d - b * c;
      const [air, warm] = [(e * d - b * f) / whole, (a * f - c * e) / whole];
      into[cells] = air;
      into[cells + 1] = warm;
      for (let i = 0; i < cells; i++) {
        const moved = (right[i] ?? 0) + (byAir[i] ?? 0) * air + (byHeat[i] ?? 0) * warm;
        into[i] = moved / (shift - (byCell[i] ?? 0));
      }
      for (let k = 0; k < paths; k++) {
        const moved = (pathByAir[k] ?? 0) * air + (pathByHeat[k] ?? 0) * warm;
        into[cells + 2 + k] = ((right[cells + 2 + k] ?? 0) + moved) / shift;
      }
    },
  };
}
