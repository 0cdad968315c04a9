import type { Axis, Bounds, Limit } from './limit.ts';
import type { RuleNumber } from './planFacts.ts';
import { type Rulebook, ruleRow } from './rulebook.ts';
import type { RuleCase } from './ruleTables.ts';
import type { RuleId, SourceKey } from './washPlan.ts';

/** One cap with the row that sets it and the finding it comes from. */
export type SourcedLimit = Limit & {
  readonly rule: RuleId;
  readonly because: string;
  readonly source: SourceKey;
  readonly about: string;
  readonly assumed: boolean;
  readonly overridable: boolean;
};

interface Origin {
  readonly rule: RuleId;
  readonly because: string;
  readonly source: SourceKey;
  readonly about: string;
  readonly assumed?: boolean;
  readonly overridable?: boolean;
  /** Limits the owner set: no authority stands behind them. */
  readonly own?: readonly Axis[] | undefined;
}

/** Every cap of a case, each with its origin. */
export function limitsFrom(limits: Partial<Bounds>, origin: Origin): readonly SourcedLimit[] {
  const { assumed = false, overridable = false, own = [], ...rest } = origin;
  return (Object.keys(limits) as Axis[]).map((axis) => {
    const source = own.includes(axis) ? 'workshop-setting' : rest.source;
    return { axis, value: limits[axis], ...rest, source, assumed, overridable } as SourcedLimit;
  });
}

/** Caps of one case of a rule, for what it is about. */
export function ruleLimits(
  book: Rulebook,
  id: RuleNumber | `mark ${string}`,
  caseName: string,
  about: string,
  assumed = false,
): readonly SourcedLimit[] {
  const row = ruleRow(book, id);
  const found: RuleCase | undefined = row.cases[caseName];
  if (found === undefined) throw new Error(`rule ${id} has no case ${caseName}`);
  return limitsFrom(found.limits, {
    rule: id,
    because: found.because,
    source: row.source,
    about,
    assumed,
    overridable: row.override,
    own: found.own,
  });
}

/** Caps of a row of the dye table; `more` adds what only this colour's readings can say. */
export function dyeLimits(
  book: Rulebook,
  row: string,
  about: string,
  options: { readonly assumed?: boolean; readonly more?: Partial<Bounds>; readonly rule?: RuleId } = {},
): readonly SourcedLimit[] {
  const found = book.dyes[row];
  if (found === undefined) throw new Error(`no row ${row} in data/wash/dyeTests.json`);
  return limitsFrom(
    { ...found.limits, ...options.more },
    {
      rule: options.rule ?? `dye ${row}`,
      because: found.because,
      source: found.source,
      about,
      assumed: options.assumed ?? false,
      own: found.own,
    },
  );
}
