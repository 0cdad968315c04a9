/**
 * Stores of water that exchange it with one shared air, and with nothing else: so the matrix of slopes is
 * an arrow (a diagonal, one row, one column) and a step costs in proportion to the number of stores.
 * State: cells (regain of each rug), then the air's vapour, then the total gone by each path.
 */
export interface ArrowSystem {
  readonly cells: number;
  readonly paths: number;
  /** Water per unit of each cell [kg]. */
  readonly weights: Float64Array;
  /** Water per unit of the air [m³]. */
  readonly volume: number;
  /** Air that is measured follows its readings whatever the cells give off. */
  readonly airIsGiven: boolean;
  /** Whether anything but the state changes the rates. */
  readonly varies: boolean;
  /** Works out the rates at a time [s] and state, and with `slopes` how they change with the state. */
  readonly evaluate: (time: number, state: Float64Array, slopes: boolean) => void;
  /** Filled by `evaluate`. */
  readonly cellRate: Float64Array;
  readonly cellByCell: Float64Array;
  readonly cellByAir: Float64Array;
  readonly pathRate: Float64Array;
  readonly pathByAir: Float64Array;
  /** Water that others give to the air [kg/s], or the slope of measured air [kg/m³s]. */
  readonly givenRate: () => number;
}
