import valueTable from '../../../data/wash/ruleValues.json' with { type: 'json' };
import { type Rulebook, shippedRulebook } from './rulebook.ts';
import { type RuleGroup, type Spot, single, valueAt } from './ruleSpot.ts';
import type { SourceKey } from './washPlan.ts';

interface NumberRow {
  /** Its place in the table, parts joined by a point. */
  readonly key: string;
  readonly name: string;
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  readonly tighter?: 'lower' | 'higher';
  readonly locked?: boolean;
  readonly source?: SourceKey;
  readonly because?: string;
  /** The rule that fires by it. */
  readonly rule?: string;
}

/** The tables that hold single numbers, and where the list of all rules shows them. */
const tables = {
  tests: 'dye test',
  shop: 'dose and time',
  spotting: 'dose and time',
  residues: 'rinse',
  rinse: 'rinse',
  sewer: 'waste water',
  stops: 'stop condition',
} as const satisfies { readonly [T in keyof Rulebook]?: RuleGroup };

const isRange = (value: unknown): boolean => typeof value === 'object' && value !== null;

/**
 * Single numbers of the rulebook, each with how far an owner may move it.
 *
 * @source workshop-setting (data/wash/ruleValues.json), or what the row names
 */
export const ruleNumbers = (): readonly Spot[] =>
  (Object.keys(tables) as readonly (keyof typeof tables)[]).flatMap((table) =>
    (valueTable[table] as readonly NumberRow[]).map(({ key, name, unit, least, most, ...row }) => {
      const path = [table, ...key.split('.')];
      return single({
        ...{ address: `${table}/${key}`, group: tables[table], row: key, title: name, name, path },
        because: row.because ?? '',
        form: { kind: isRange(valueAt(shippedRulebook, path)) ? 'band' : 'number', least, most, unit },
        strictness: row.tighter ?? 'none',
        locked: row.locked === true,
        source: row.source ?? 'workshop-setting',
        rule: row.rule,
      });
    }),
  );
