import { done, type Problem, type Result, refused } from './result.ts';

declare const brand: unique symbol;

/** What a quantity is called, how its unit is written, and the range outside which a value is a slip. */
interface QuantityKind {
  readonly words: string;
  readonly symbol: string;
  readonly least: number;
  readonly most: number;
}

/**
 * The one registry of quantities. Bounds are the widest a workshop could mean; a narrower valid range
 * belongs to the calculation that needs it.
 */
export const quantityKinds = {
  celsius: { words: 'temperature', symbol: '°C', least: -90, most: 400 },
  temperatureStep: { words: 'temperature difference', symbol: 'K', least: -500, most: 500 },
  pascal: { words: 'pressure', symbol: 'Pa', least: -1e7, most: 1e7 },
  fraction: { words: 'fraction', symbol: '', least: 0, most: 1 },
  regain: { words: 'moisture ratio', symbol: 'kg/kg', least: 0, most: 20 },
  kilogram: { words: 'mass', symbol: 'kg', least: 0, most: 2000 },
  gram: { words: 'mass', symbol: 'g', least: 0, most: 2e6 },
  millimetre: { words: 'length', symbol: 'mm', least: 0, most: 50_000 },
  squareMetre: { words: 'area', symbol: 'm²', least: 0, most: 1000 },
  litre: { words: 'volume', symbol: 'L', least: 0, most: 1e5 },
  ph: { words: 'pH', symbol: 'pH', least: 0, most: 14 },
  minute: { words: 'time', symbol: 'min', least: 0, most: 1e6 },
  hour: { words: 'time', symbol: 'h', least: 0, most: 1e5 },
  perSquareMetre: { words: 'density', symbol: '/m²', least: 0, most: 1e8 },
  kilogramPerSquareMetre: { words: 'mass per area', symbol: 'kg/m²', least: 0, most: 100 },
} as const satisfies Readonly<Record<string, QuantityKind>>;

export type QuantityName = keyof typeof quantityKinds;

/** A number that carries its unit in its type. Only the constructors below make one. */
export type Quantity<Name extends QuantityName> = number & { readonly [brand]: Name };

export type Celsius = Quantity<'celsius'>;
export type TemperatureStep = Quantity<'temperatureStep'>;
export type Pascal = Quantity<'pascal'>;
export type Fraction = Quantity<'fraction'>;
export type Regain = Quantity<'regain'>;
export type Kilogram = Quantity<'kilogram'>;
export type Gram = Quantity<'gram'>;
export type Millimetre = Quantity<'millimetre'>;
export type SquareMetre = Quantity<'squareMetre'>;
export type Litre = Quantity<'litre'>;
export type Ph = Quantity<'ph'>;
export type Minute = Quantity<'minute'>;
export type Hour = Quantity<'hour'>;
export type PerSquareMetre = Quantity<'perSquareMetre'>;
export type KilogramPerSquareMetre = Quantity<'kilogramPerSquareMetre'>;

export type OutOfRange = Problem<
  'out-of-range',
  {
    readonly field: string;
    readonly value: number;
    readonly least: number;
    readonly most: number;
    readonly symbol: string;
  }
>;

/**
 * Makes a quantity from a number that came from outside.
 *
 * @param name - which quantity of the registry
 * @param value - the number, in the registry's unit
 * @param field - the name a person knows the field by
 * @refuses out-of-range - not a finite number, or outside the registry's bounds
 * @source none: bounds are this project's, wide enough for any rug
 */
export function quantity<Name extends QuantityName>(
  name: Name,
  value: number,
  field: string = quantityKinds[name].words,
): Result<Quantity<Name>, OutOfRange> {
  const { least, most, symbol } = quantityKinds[name];
  if (Number.isFinite(value) && value >= least && value <= most) return done(value as Quantity<Name>);
  return refused('out-of-range', { field, value, least, most, symbol });
}

const literal =
  <Name extends QuantityName>(name: Name) =>
  (value: number): Quantity<Name> => {
    const made = quantity(name, value);
    if (!made.ok) throw new RangeError(`${value} is no ${quantityKinds[name].words}`);
    return made.value;
  };

/** Constructors for numbers written in code; a bad literal is a bug and throws. */
export const celsius = literal('celsius');
export const temperatureStep = literal('temperatureStep');
export const pascal = literal('pascal');
export const fraction = literal('fraction');
export const regain = literal('regain');
export const kilogram = literal('kilogram');
export const gram = literal('gram');
export const millimetre = literal('millimetre');
export const squareMetre = literal('squareMetre');
export const litre = literal('litre');
export const ph = literal('ph');
export const minute = literal('minute');
export const hour = literal('hour');
export const perSquareMetre = literal('perSquareMetre');
export const kilogramPerSquareMetre = literal('kilogramPerSquareMetre');

/** A humidity given in per cent, as a fraction 0 … 1. */
export const percent = (value: number): Fraction => fraction(value / 100);
