import type * as z from 'zod/mini';

type Shape = z.core.$ZodType;

const definition = (shape: Shape) => (shape as z.core.$ZodTypes)._zod.def;

const inside = (value: unknown, step: PropertyKey): unknown =>
  typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined;

/** Whether the words that tell one form from another are those of this form. */
function isMeant(shape: Shape, value: unknown): boolean {
  const def = definition(shape);
  if (def.type !== 'object') return true;
  return Object.entries(def.shape).every(([name, of]) => {
    const told = definition(of);
    return told.type !== 'literal' || told.values.some((one) => one === inside(value, name));
  });
}

/** The plain shapes behind what may be left out and what has several forms. */
function plainShapes(shape: Shape, value: unknown): readonly Shape[] {
  const def = definition(shape);
  switch (def.type) {
    case 'default':
    case 'optional':
    case 'nullable':
    case 'readonly':
      return plainShapes(def.innerType, value);
    case 'union':
      return def.options.filter((one) => isMeant(one, value)).flatMap((one) => plainShapes(one, value));
    default:
      return [shape];
  }
}

function partOf(shape: Shape, step: PropertyKey): Shape | null {
  const def = definition(shape);
  if (def.type === 'object') return def.shape[String(step)] ?? null;
  if (def.type === 'array') return def.element;
  return def.type === 'record' ? def.valueType : null;
}

function namesOf(shape: Shape): readonly string[] {
  const def = definition(shape);
  if (def.type === 'object') return Object.keys(def.shape);
  if (def.type !== 'record') return [];
  const key = definition(def.keyType);
  return key.type === 'enum' ? Object.values(key.entries).map(String) : [];
}

/** The forms that a place of a shape may have. */
function shapesAt(shape: Shape, input: unknown, path: readonly PropertyKey[]): readonly Shape[] {
  const [step, ...rest] = path;
  const shapes = plainShapes(shape, input);
  if (step === undefined) return shapes;
  const parts = shapes.flatMap((one) => partOf(one, step) ?? []);
  return parts.flatMap((one) => shapesAt(one, inside(input, step), rest));
}

/**
 * The names that fields may have at a place of a shape, form by form where it has several.
 *
 * @param shape - of the whole
 * @param input - what was given for it; it tells which of several forms is meant
 * @param path - to the place
 * @returns a list of names for each form; forms that name nothing are left out
 * @source none: reads the shape itself
 */
export const namesAllowed = (
  shape: Shape,
  input: unknown,
  path: readonly PropertyKey[],
): readonly (readonly string[])[] =>
  shapesAt(shape, input, path)
    .map(namesOf)
    .filter((names) => names.length > 0);
