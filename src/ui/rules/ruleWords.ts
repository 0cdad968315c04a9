import type { Axis, AxisValue, OwnMixture, RuleEntry, RuleGroup } from '../../core/wash/index.ts';
import { axisNames, valueWords } from '../dossier/limitWords.ts';

export const groupNames: { readonly [G in RuleGroup]: string } = {
  rule: 'Rules R01 to R40',
  fibre: 'Limits by fibre',
  'dye class': 'What dye readings allow',
  'dye test': 'How dyes are tested',
  'dose and time': 'Doses, water and times',
  stain: 'Stains',
  step: 'Steps of the wash',
  'forbidden mixture': 'Forbidden mixtures',
  residue: 'What is still in a rug, and what clears it',
  flow: 'Flows of their own',
  question: 'Finding out what a stain is',
  'waste water': 'Waste water',
  rinse: 'Rinse: pace and end point',
  'stop condition': 'Stop conditions',
  'rescue card': 'Rescue cards',
  caution: 'Cautions',
  risk: 'Risks a client is told of',
  'grey scale': 'Grey scales',
};

const otherNames: Readonly<Record<string, string>> = {
  dose: 'How it is made up',

  bathAim: 'Aim in the bath',
  finalAim: 'Aim when it is left',
  dwellMinutes: 'Dwell',
  ph: 'pH',
  mostC: 'Warmth, at most',
  a: 'These',
  b: 'never with these',
  belowPh: 'Blocked below',
  abovePh: 'Blocked above',
  agents: 'Never together',
  wetOut: 'wetting out',
  wash: 'the wash',
  rinse: 'a rinse',
  acidRinse: 'the acid rinse',
};

const isAxis = (name: string): name is Axis => name in axisNames;

/** What a value is called. */
export const ruleName = ({ name }: Pick<RuleEntry, 'name'>): string =>
  isAxis(name) ? axisNames[name] : (otherNames[name] ?? name);

/** A value of the rulebook as a person reads it. */
export function ruleValue({ name, form }: Pick<RuleEntry, 'name' | 'form'>, value: unknown): string {
  if (value === null) return 'nothing';
  if (isAxis(name)) return valueWords(name, value as AxisValue);
  switch (form.kind) {
    case 'number':
      return form.unit === 'pH' ? `pH ${String(value)}` : `${String(value)} ${form.unit}`;
    case 'band': {
      if (typeof value === 'string') return value;
      const { least, most } = value as { readonly least: number; readonly most: number };
      return `${form.unit === 'pH' ? 'pH ' : ''}${least} – ${most}${form.unit === 'pH' ? '' : ` ${form.unit}`}`;
    }
    case 'mixture': {
      const { a, b } = value as OwnMixture;
      return b.length === 0 ? a.join(', ') : `${a.join(', ')} with ${b.join(', ')}`;
    }
    case 'list':
    case 'words':
    case 'fixed':
      return Array.isArray(value) ? value.join(', ') : String(value);
  }
}

/** One row of the rulebook with its values. */
export interface RuleRowShown {
  readonly key: string;
  readonly group: RuleGroup;
  readonly row: string;
  readonly title: string;
  readonly source: string;
  readonly where: string | undefined;
  readonly parts: readonly { readonly because: string; readonly entries: readonly RuleEntry[] }[];
}

/** Entries gathered by the row they belong to, in the order of the tables. */
export function ruleRowsOf(entries: readonly RuleEntry[]): readonly RuleRowShown[] {
  const rows = new Map<string, { readonly first: RuleEntry; readonly parts: Map<string, RuleEntry[]> }>();
  for (const entry of entries) {
    const alone = entry.group === 'dose and time' || entry.group === 'dye test';
    const key = `${entry.group} ${alone && !entry.address.includes('waterLPerM2') ? entry.name : entry.row}`;
    const known = rows.get(key) ?? { first: entry, parts: new Map<string, RuleEntry[]>() };
    rows.set(key, known);
    known.parts.set(entry.because, [...(known.parts.get(entry.because) ?? []), entry]);
  }
  return [...rows].map(([key, { first, parts }]) => ({
    ...{ key, group: first.group, row: first.row, title: first.group === 'stain' ? first.row : first.title },
    ...{ source: first.source, where: first.where },
    parts: [...parts].map(([because, held]) => ({ because, entries: held })),
  }));
}

/** Whether a row holds every word looked for, in its id, title, reasons, values or source. */
export function rowHolds(row: RuleRowShown, find: string, sourceText: string): boolean {
  const values = row.parts.flatMap(({ because, entries }) => [
    because,
    ...entries.map((entry) => `${ruleName(entry)} ${ruleValue(entry, entry.value)}`),
  ]);
  const text = [row.row, row.title, groupNames[row.group], sourceText, ...values].join(' ').toLowerCase();
  return find
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word));
}
