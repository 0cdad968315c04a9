import type { RuleEntry, RuleGroup } from './ruleSpot.ts';
import type { SourceKey } from './washPlan.ts';

interface TextRow {
  readonly group: RuleGroup;
  readonly row: string;
  readonly title: string;
  readonly because?: string;
  readonly source: string;
  readonly where?: string;
}

/** What a row says beside its numbers: one line for each name, empty lists left out. */
export function texts(
  table: string,
  { because = '', source, ...row }: TextRow,
  lines: Readonly<Record<string, string | number | readonly string[] | undefined>>,
): readonly RuleEntry[] {
  return Object.entries(lines).flatMap(([name, value]) => {
    if (value === undefined || (Array.isArray(value) && value.length === 0)) return [];
    const words: readonly string[] = Array.isArray(value) ? value : [String(value)];
    const text = words.join(words.every((one) => one.endsWith('.')) ? ' ' : '; ');
    return [
      {
        ...{ ...row, because, name, source: source as SourceKey, address: `${table}/${row.row}/${name}` },
        ...({ form: { kind: 'fixed' }, strictness: 'none', locked: true, value: text } as const),
      },
    ];
  });
}

/** A row of this project's own: what counts as what. */
export const countsAs = (
  group: RuleGroup,
  title: string,
  lists: Readonly<Record<string, readonly string[]>>,
) => texts(group, { group, row: title, title, source: 'workshop-setting' }, lists);
