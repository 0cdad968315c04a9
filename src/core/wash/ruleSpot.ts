import type { Rulebook } from './rulebook.ts';
import type { RuleForm, Strictness } from './ruleForm.ts';
import type { SourceKey } from './washPlan.ts';

export const ruleGroups = [
  'rule',
  'fibre',
  'dye class',
  'dye test',
  'dose and time',
  'stain',
  'step',
  'forbidden mixture',
  'residue',
  'flow',
  'question',
  'waste water',
  'rinse',
  'stop condition',
  'rescue card',
  'caution',
  'risk',
  'grey scale',
] as const;
export type RuleGroup = (typeof ruleGroups)[number];

/** One value of the rulebook: where it stands, what it is, and whether it may ever be looser than delivered. */
export interface RuleEntry {
  /** Table, row and value, permanent: `rules/R06/silk/temperatureC`. */
  readonly address: string;
  readonly group: RuleGroup;
  /** The row it belongs to: `R06`, `wool`, `watch`. */
  readonly row: string;
  readonly title: string;
  /** One sentence a client can read. */
  readonly because: string;
  /** What the value is, in words or the name of its axis. */
  readonly name: string;
  readonly form: RuleForm;
  readonly strictness: Strictness;
  /** Never looser than delivered: forbidden mixtures, rules without override, published safety times. */
  readonly locked: boolean;
  readonly source: SourceKey;
  readonly where?: string;
  /** Null where the row sets nothing on this axis, or the mixture is not there. */
  readonly value: unknown;
}

/** An entry and its place in the tables. */
export interface Spot extends Omit<RuleEntry, 'value'> {
  readonly path: readonly (string | number)[];
  /** The rule whose limit follows from this number. */
  readonly rule?: string | undefined;
}

/** A value that is a row of its own. */
export const single = (row: Omit<Spot, 'strictness' | 'locked'> & Partial<Spot>): Spot => ({
  strictness: 'none',
  locked: false,
  ...row,
});

/** A dose says how it is made up as well; an owner moves only its two ends. */
const endsOf = (held: unknown): unknown => {
  if (typeof held !== 'object' || held === null || !('kind' in held)) return held;
  const { least, most } = held as { readonly least?: unknown; readonly most?: unknown };
  return { least, most };
};

/** The value at a place, null where there is none. */
export const valueAt = (book: Rulebook, path: Spot['path']): unknown =>
  endsOf(
    path.reduce<unknown>((held, key) => (held as Readonly<Record<string, unknown>> | undefined)?.[key], book),
  ) ?? null;
