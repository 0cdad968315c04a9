import * as z from 'zod/mini';
import { fact, fractionOfOne, line, sha256 } from './shape.ts';

/** How a count along one axis came about: by the counter alone, or with a person's eye, taps or own count. */
export const knotBases = ['automatic', 'confirmed', 'tapped', 'by hand'] as const;

const seen = z.number().check(z.gt(0), z.lte(2000));
const overMm = z.number().check(z.gte(5), z.lte(2000));
/** Nodes or knots seen along an axis, over this length. */
const counted = { count: seen, overMm };

const positive = z.number().check(z.gt(0));
const interval = z.object({ least: positive, most: positive });

const axis = z
  .object({
    ...counted,
    /** Of the count, every cause included. */
    interval95: interval,
    basis: z.enum(knotBases),
    /** The counter's own; absent where a person counted alone. */
    confidence: z.optional(fractionOfOne),
  })
  .check(
    z.refine(
      ({ count, interval95: { least, most } }) => least <= count && count <= most,
      'an interval with the count inside',
    ),
  );

const mmPerPx = z.number().check(z.gte(0.0005), z.lte(5));
/** Per pixel of the photograph as it is kept. */
const scaled = { mmPerPx, interval95: interval };

/** The card's printed 100 mm bar as measured with a ruler [mm]. */
export const barMm = z.number().check(z.gte(90), z.lte(110));
export const cardSerial = z.string().check(z.regex(/^[0-9A-Z]{6}$/));

/** What gave a photograph its scale. */
const scale = z.discriminatedUnion('from', [
  z.object({
    from: z.literal('card'),
    serial: cardSerial,
    tag: z.optional(line),
    /** How many of its four codes were read. */
    codes: z.int().check(z.gte(2), z.lte(4)),
    /** Absent where nobody measured it: the scale then is unverified. */
    barMm: z.optional(barMm),
    ...scaled,
  }),
  z.object({ from: z.literal('length in the picture'), lengthMm: overMm, ...scaled }),
  z.object({ from: z.literal('given'), ...scaled }),
]);

const places = <Place extends z.core.SomeType>(place: Place) =>
  z.array(place).check(z.minLength(1), z.maxLength(9));
const nodesPerKnot = z.union([z.literal(1), z.literal(2)]);

/** Knots counted on the back, with a ruler or on photographs. */
export const knotsCounted = z.discriminatedUnion('counted', [
  fact('KnotsCounted', {
    counted: z.literal('by hand'),
    nodesPerKnot,
    places: places(z.object({ place: line, weftwise: z.object(counted), warpwise: z.object(counted) })),
  }),
  fact('KnotsCounted', {
    counted: z.literal('photographed'),
    nodesPerKnot,
    nodesWhy: z.enum(['seen on the back', 'colour changes']),
    /** The counter, so that a later and better one can be told from it. */
    algorithm: line,
    places: places(z.object({ place: line, photo: sha256, scale, weftwise: axis, warpwise: axis })),
  }),
]);
