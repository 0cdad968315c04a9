import * as z from 'zod/mini';
import { grades } from '../../core/wash/index.ts';

/** Read-only all the way down: what is recorded is never changed in place. */
export type Frozen<T> = T extends readonly (infer Item)[]
  ? readonly Frozen<Item>[]
  : T extends object
    ? { readonly [Key in keyof T]: Frozen<T[Key]> }
    : T;

/** A line a person types: a name, a place, a reason in a few words. */
export const line = z.string().check(z.trim(), z.minLength(1), z.maxLength(300));
/** A passage a person types. 20 000 characters are about eight printed pages. */
export const passage = z.string().check(z.trim(), z.minLength(1), z.maxLength(20_000));
export const id = z.string().check(z.regex(/^[0-9A-Za-z][0-9A-Za-z_-]{0,63}$/));
export const sha256 = z.string().check(z.regex(/^[0-9a-f]{64}$/));
/** Whether the calendar has this day: 31 February looks like one, and no clock can reckon with it. */
const isOnCalendar = (text: string): boolean => {
  const time = Date.parse(`${text.slice(0, 10)}T00:00:00Z`);
  return !Number.isNaN(time) && new Date(time).toISOString().startsWith(text.slice(0, 10));
};
export const instant = z
  .string()
  .check(
    z.regex(/^\d{4}-\d{2}-\d{2}T([01]\d|2[0-3]):[0-5]\d:[0-5]\d(\.\d{3})?Z$/),
    z.refine(isOnCalendar, 'an instant whose day the calendar has'),
  );
export const day = z
  .string()
  .check(z.regex(/^\d{4}-\d{2}-\d{2}$/), z.refine(isOnCalendar, 'a day the calendar has'));

const between = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
export const fractionOfOne = between(0, 1);
export const lengthMm = between(1, 50_000);
export const positionMm = between(-1000, 50_000);
export const massKg = between(0.01, 500);
export const massG = between(0, 500_000);
export const temperatureC = between(-30, 120);
export const acidity = between(0, 14);
export const minutes = between(0, 20_000);
export const conductivityUsPerCm = between(0, 200_000);
export const amountMinor = z.int().check(z.gte(-1_000_000_000), z.lte(1_000_000_000));

/** Money: integer minor units (cents) of a currency. */
export const money = z.object({ amountMinor, currency: z.string().check(z.regex(/^[A-Z]{3}$/)) });
/** A point in rug millimetres: face up, pile lying toward you, origin lower left. */
export const pointMm = z.object({ xMm: positionMm, yMm: positionMm });
/** Face, back, or through both. x on the back is the rug's width less x on the face. */
export const side = z.enum(['face', 'back', 'both']);
/** Staining and colour-change grades of ISO 105-A02 and A03. */
export const grade = z.enum(grades);
export const confidence = z.enum(['certain', 'probable', 'possible']);

/** A fact of a type: its fields, and when it truly happened if it was written down later. */
export const fact = <Type extends string, Fields extends z.core.$ZodShape>(type: Type, fields: Fields) =>
  z.strictObject({ type: z.literal(type), happenedAt: z.optional(instant), ...fields });
