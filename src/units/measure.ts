import customary from '../../data/units/customary.json' with { type: 'json' };

/** Which units a workshop reads and writes; what is on record is always SI. */
export type UnitSystem = 'metric' | 'customary';

/** How one system writes a measure: shown = kept × times + plus. */
interface Written {
  readonly unit: string;
  readonly times: number;
  readonly plus: number;
  /** Decimals that are worth reading. */
  readonly digits: number;
}

const written = (unit: string, times: number, digits: number, plus = 0): Written => ({
  ...{ unit, times, plus, digits },
});

const { footM, inchM, poundKg, pintL, btuPerHourFahrenheitWPerK, grainsPerPound } = customary;
const { fahrenheitPerKelvin, fahrenheitAtZeroC } = customary;

/** What people read and type about a room and what dries in it, with the unit it is kept in. */
const measures = {
  /** Kept in °C. */
  temperature: {
    metric: written('°C', 1, 1),
    customary: written('°F', fahrenheitPerKelvin, 1, fahrenheitAtZeroC),
  },
  /** Kept in m³. */
  volume: { metric: written('m³', 1, 1), customary: written('ft³', footM ** -3, 0) },
  /** Of baths and rinses; kept in L. */
  bath: { metric: written('L', 1, 1), customary: written('US gal', 1 / (8 * pintL), 2) },
  /** Kept in m². */
  area: { metric: written('m²', 1, 2), customary: written('ft²', footM ** -2, 1) },
  /** Kept in m/s. */
  airSpeed: { metric: written('m/s', 1, 2), customary: written('ft/min', 60 / footM, 0) },
  /** Of poles, meshes and rugs; kept in mm. */
  span: { metric: written('m', 1e-3, 2), customary: written('ft', 1e-3 / footM, 2) },
  /** Between neighbours; kept in mm. */
  gap: { metric: written('cm', 0.1, 0), customary: written('in', 1e-3 / inchM, 1) },
  /** Kept in kg. */
  mass: { metric: written('kg', 1, 2), customary: written('lb', 1 / poundKg, 2) },
  /** What hangs together, to the tenth: nobody weighs a pole; kept in kg. */
  load: { metric: written('kg', 1, 1), customary: written('lb', 1 / poundKg, 1) },
  /** What hangs from the warps of a metre of width; kept in kg/m. */
  widthLoad: {
    metric: written('kg per metre of width', 1, 1),
    customary: written('lb per foot of width', footM / poundKg, 1),
  },
  /** Kept in L a day. */
  waterPerDay: { metric: written('L a day', 1, 1), customary: written('pints a day', 1 / pintL, 1) },
  /** Kept in L/h. */
  waterPerHour: { metric: written('L/h', 1, 2), customary: written('pints/h', 1 / pintL, 2) },
  /** Of walls, for each degree; kept in W/K. */
  wallLoss: {
    metric: written('W/K', 1, 0),
    customary: written('Btu/(h·°F)', 1 / btuPerHourFahrenheitWPerK, 0),
  },
  /** Water by dry air; kept in kg/kg. */
  humidityRatio: {
    metric: written('g/kg', 1000, 1),
    customary: written('grains/lb', grainsPerPound, 0),
  },
} as const satisfies Readonly<Record<string, Readonly<Record<UnitSystem, Written>>>>;

export type Measure = keyof typeof measures;

const writtenIn = (measure: Measure, units: UnitSystem): Written => measures[measure][units];

/** The unit a measure is read and typed in. @source nist-sp-811, appendix B.8 (data/units/customary.json) */
export const unitOf = (measure: Measure, units: UnitSystem): string => writtenIn(measure, units).unit;

/**
 * A measure as it is shown, with no more decimals than are worth reading.
 *
 * @param measure - what is shown
 * @param kept - in the unit it is kept in
 * @param units - of the workshop
 * @source nist-sp-811, appendix B.8 (data/units/customary.json)
 */
export function shownIn(measure: Measure, kept: number, units: UnitSystem): number {
  const { times, plus, digits } = writtenIn(measure, units);
  return Number((kept * times + plus).toFixed(digits));
}

/**
 * A typed measure as it is kept. Nine figures keep what was typed and drop what the conversion made up.
 *
 * @param measure - what was typed
 * @param typed - in the unit of the workshop
 * @param units - of the workshop
 * @source nist-sp-811, appendix B.8 (data/units/customary.json)
 */
export function keptFrom(measure: Measure, typed: number, units: UnitSystem): number {
  const { times, plus } = writtenIn(measure, units);
  return Number(((typed - plus) / times).toPrecision(9));
}

/**
 * Bounds of a field in the unit it is typed in, rounded inwards so that both ends may be typed.
 *
 * @param measure - what is typed
 * @param least - in the unit it is kept in
 * @param most - in the unit it is kept in
 * @param units - of the workshop
 * @source nist-sp-811, appendix B.8 (data/units/customary.json)
 */
export function boundsIn(
  measure: Measure,
  least: number,
  most: number,
  units: UnitSystem,
): { readonly least: number; readonly most: number } {
  const { times, plus, digits } = writtenIn(measure, units);
  // A last figure made by the conversion itself is no reason to round a whole step inwards.
  const step = 10 ** digits;
  const slack = 1e-9;
  const inward = (value: number, round: (x: number) => number, side: 1 | -1) =>
    Number((round((value * times + plus) * step - side * slack * step) / step).toFixed(digits));
  return { least: inward(least, Math.ceil, 1), most: inward(most, Math.floor, -1) };
}

/**
 * A measure with its unit, as the workshop reads it.
 *
 * @param measure - what is shown
 * @param kept - in the unit it is kept in
 * @param units - of the workshop
 * @source nist-sp-811, appendix B.8 (data/units/customary.json)
 */
export const measureWords = (measure: Measure, kept: number, units: UnitSystem): string =>
  `${shownIn(measure, kept, units)} ${unitOf(measure, units)}`;
