import {
  type Axis,
  type AxisValue,
  ruleEntryAt,
  shippedRulebook,
  type WashPlan,
} from '../core/wash/index.ts';
import { axisWords, valueWords } from './limitWords.ts';
import { figure } from './measureWords.ts';
import type { PaperPart } from './paper.ts';
import { facts, heading, row, text } from './parts.ts';
import { sourceWords } from './sourceWords.ts';

const otherNames: Readonly<Record<string, string>> = {
  agents: 'never together',
  bathAim: 'aim in the bath',
  finalAim: 'aim when it is left',
  dwellMinutes: 'dwell',
  dose: 'how it is made up',
  ph: 'pH',
  mostC: 'warmth, at most',
  a: 'these',
  b: 'never with these',
  belowPh: 'blocked below pH',
  abovePh: 'blocked above pH',
};

const isAxis = (name: string): name is Axis => name in axisWords;
const isBand = (value: unknown): value is { readonly least: number; readonly most: number } =>
  typeof value === 'object' && value !== null && 'least' in value && 'most' in value;
const isMixture = (
  value: unknown,
): value is { readonly a: readonly string[]; readonly b: readonly string[] } =>
  typeof value === 'object' && value !== null && 'a' in value && 'b' in value;

const withUnit = (words: string, unit: string): string =>
  unit === 'pH' ? `pH ${words}` : `${words} ${unit}`.trim();

function ownValueWords(name: string, value: unknown, unit: string): string {
  if (value === null) return 'nothing';
  if (isAxis(name)) return valueWords(name, value as AxisValue);
  if (isMixture(value))
    return [value.a.join(', '), value.b.join(', ')].filter((side) => side !== '').join(' with ');
  if (isBand(value)) return withUnit(`${figure(value.least, 3)} to ${figure(value.most, 3)}`, unit);
  if (Array.isArray(value)) return value.join(', ');
  return withUnit(typeof value === 'number' ? figure(value, 3) : String(value), unit);
}

/**
 * What this workshop changed in the rulebook a plan was made by, each as its own setting beside what was
 * delivered; nothing where the plan follows the delivered one.
 *
 * @source none: wording of this project
 */
export function ownRuleParts({ rulebook, ownRules = [] }: WashPlan): readonly PaperPart[] {
  const rows = ownRules.flatMap(({ address, value }) => {
    const entry = ruleEntryAt(shippedRulebook, address);
    if (entry === null) return [];
    const { group, row: id, title, name, form } = entry;
    const unit = 'unit' in form ? form.unit : '';
    const what = isAxis(name) ? axisWords[name] : (otherNames[name] ?? name);
    const called = what === title ? title : `${title}: ${what}`;
    return [
      row(
        group === 'rule' ? `${id} ${called}` : called,
        ownValueWords(name, value, unit),
        `${sourceWords('workshop-setting')}; delivered: ${ownValueWords(name, entry.value, unit)}`,
      ),
    ];
  });
  if (rows.length === 0) return [];
  return [
    heading(2, 'What this workshop set itself'),
    text(`Rulebook ${rulebook}. No authority stands behind these; the owner answers for them.`, 'soft'),
    facts(...rows),
  ];
}
