import * as z from 'zod/mini';
import type { BodyWrongShape } from '../text/httpWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import { namesAllowed } from './namesAllowed.ts';

/** Forms a text may have to keep, told by one that keeps it. */
const forms: readonly (readonly [sample: string, words: string])[] = [
  ['2026-11-25T09:00:00.000Z', 'an instant such as 2026-11-25T09:00:00.000Z'],
  ['2026-11-25', 'a day such as 2026-11-25'],
  ['EUR', 'the three capital letters of a currency, such as EUR'],
  ['0'.repeat(64), '64 hexadecimal digits in lower case'],
  ['somebody@example.org', 'an e-mail address such as somebody@example.org'],
  ['41', '1 to 12 letters, digits or hyphens'],
  ['0198b1f2-7c1e-7d2a-9f00-3a5b6c7d8e9f', 'an id of letters, digits, hyphens and underscores, at most 64'],
];

const kinds: Readonly<Record<string, string>> = {
  string: 'a text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  object: 'an object',
  array: 'a list',
  record: 'an object',
  tuple: 'a list of fixed length',
};

const formOf = (pattern: string): string => {
  const parts = /^\/(.*)\/([a-z]*)$/s.exec(pattern);
  const kept = new RegExp(parts?.[1] ?? pattern, parts?.[2] ?? '');
  return forms.find(([sample]) => kept.test(sample))?.[1] ?? `a text that keeps the form ${pattern}`;
};

const bound = (origin: string, most: boolean, limit: unknown, inclusive: boolean): string => {
  const words = most ? (inclusive ? 'at most' : 'less than') : inclusive ? 'at least' : 'more than';
  if (origin === 'string') return `a text of ${words} ${limit} character${limit === 1 ? '' : 's'}`;
  if (origin === 'array') return `a list of ${words} ${limit}`;
  return `${origin === 'int' ? 'a whole number' : 'a number'} of ${words} ${limit}`;
};

const listed = (values: readonly unknown[]): string =>
  values.length === 1 ? `${values[0]}` : `one of: ${values.join(', ')}`;

/** Of a union none of whose forms is plainly meant, the fields of each form. */
function formsOf(forms: readonly (readonly string[])[]): string {
  return forms.length === 0
    ? 'one of the forms that are written down for it'
    : `an object of one of these forms: ${forms.map((names) => `{${names.join(', ')}}`).join(' ')}`;
}

function allowedBy(issue: z.core.$ZodIssue, names: readonly (readonly string[])[]): string {
  switch (issue.code) {
    case 'invalid_type':
      return kinds[issue.expected] ?? issue.expected;
    case 'invalid_value':
      return listed(issue.values);
    case 'too_small':
    case 'too_big': {
      const most = issue.code === 'too_big';
      const limit = most ? issue.maximum : issue.minimum;
      if (issue.exact === true)
        return `${issue.origin === 'array' ? 'a list' : 'a text'} of exactly ${limit}`;
      return bound(issue.origin, most, limit, issue.inclusive ?? true);
    }
    case 'invalid_format':
      return issue.pattern === undefined ? `a text in the form ${issue.format}` : formOf(issue.pattern);
    case 'invalid_union':
      return 'discriminator' in issue && 'options' in issue && Array.isArray(issue.options)
        ? listed(issue.options)
        : formsOf(names);
    case 'not_multiple_of':
      return `a multiple of ${issue.divisor}`;
    default:
      return issue.message === '' || issue.message === 'Invalid input' ? 'something else' : issue.message;
  }
}

const fieldOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (field, step) =>
      typeof step === 'number'
        ? `${field}[${step}]`
        : field === ''
          ? String(step)
          : `${field}.${String(step)}`,
    '',
  ) || 'the body';

const valueAt = (input: unknown, path: readonly PropertyKey[]): unknown =>
  path.reduce<unknown>(
    (value, step) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[step] : undefined,
    input,
  );

const shortest = 60;

/** Of a union's forms the one that is plainly meant: all its names are there and no other; its own issue is told. */
function meantIssue(issue: z.core.$ZodIssue): z.core.$ZodIssue {
  if (issue.code !== 'invalid_union') return issue;
  const meant = issue.errors.filter(
    (issues) =>
      issues.length > 0 && issues.every(({ code, path }) => code !== 'unrecognized_keys' && path.length > 0),
  );
  const [first] = meant.length === 1 ? (meant[0] ?? []) : [];
  return first === undefined ? issue : meantIssue({ ...first, path: [...issue.path, ...first.path] });
}

/** A value as a person may be shown it: short, and without guessing what was meant. */
function shown(value: unknown): string {
  if (value === undefined) return 'missing';
  const text = (typeof value === 'number' ? undefined : JSON.stringify(value)) ?? String(value);
  if (typeof value === 'string' && text.length > shortest) {
    return `a text of ${value.length} characters that begins ${text.slice(0, shortest)}…`;
  }
  return text.length > shortest ? `${text.slice(0, shortest)}…` : text;
}

/**
 * Takes what came from outside for what it should be, or names the first field that is not.
 *
 * @param schema - the shape asked for
 * @param input - anything
 * @refuses body-wrong-shape - with field, value and what is allowed
 * @source none: rule of this project
 */
export function readShape<Shape extends z.ZodMiniType>(
  schema: Shape,
  input: unknown,
): Result<z.infer<Shape>, BodyWrongShape> {
  const read = z.safeParse(schema, input);
  if (read.success) return done(read.data);
  const [first] = read.error.issues;
  if (first === undefined) throw new Error('a refused shape without an issue');
  const issue = meantIssue(first);
  const names = namesAllowed(schema, input, issue.path);
  const [strange] = issue.code === 'unrecognized_keys' ? issue.keys : [];
  const path = strange === undefined ? issue.path : [...issue.path, strange];
  return refused('body-wrong-shape', {
    field: fieldOf(path),
    value: shown(valueAt(input, path)),
    allowed:
      strange === undefined
        ? allowedBy(issue, names)
        : `one of the names known there: ${[...new Set(names.flat())].join(', ')}`,
  });
}
