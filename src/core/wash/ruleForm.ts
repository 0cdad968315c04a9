import {
  type Axis,
  agitations,
  type Band,
  dryingPostures,
  extractions,
  forbiddenActs,
  forbiddenPairs,
  noLimit,
  protections,
  requiredActs,
  risks,
  withinOn,
} from './limit.ts';
import { agents, methods, signatories } from './planFacts.ts';

/** What a value of the rulebook may be: what an owner's edit sheet offers, and what is refused. */
export type RuleForm =
  | { readonly kind: 'words'; readonly options: readonly string[] }
  | { readonly kind: 'number'; readonly least: number; readonly most: number; readonly unit: string }
  | { readonly kind: 'band'; readonly least: number; readonly most: number; readonly unit: string }
  | { readonly kind: 'list'; readonly options: readonly string[] }
  | { readonly kind: 'mixture'; readonly options: readonly string[] }
  | { readonly kind: 'fixed' };

const words = (options: readonly string[]) => ({ kind: 'words', options }) as const;
const list = (options: readonly string[]) => ({ kind: 'list', options }) as const;
const number = (most: number, unit: string, least = 0) => ({ kind: 'number', least, most, unit }) as const;
const acidity = { kind: 'band', least: 0, most: 14, unit: 'pH' } as const;

/** How the value of an axis is written; a number goes no higher than what any workshop could mean. */
export const axisForms: { readonly [A in Axis]: RuleForm } = {
  method: words(methods),
  bathPh: acidity,
  finalPh: acidity,
  temperatureC: number(noLimit.temperatureC, '°C'),
  temperatureStepK: number(noLimit.temperatureStepK, '°C'),
  agitation: words(agitations),
  wetMinutes: number(noLimit.wetMinutes, 'min'),
  bathMinutes: number(noLimit.bathMinutes, 'min'),
  strengthGPerL: number(noLimit.strengthGPerL, 'g/L'),
  totalWetHours: number(noLimit.totalWetHours, 'h'),
  extraction: words(extractions),
  dryingPosture: words(dryingPostures),
  dryingTemperatureC: number(noLimit.dryingTemperatureC, '°C'),
  people: number(6, 'people', 1),
  forbiddenAgents: list(agents),
  forbiddenPairs: list(forbiddenPairs),
  forbiddenActs: list(forbiddenActs),
  requiredActs: list(requiredActs),
  protection: list(protections),
  consents: list(risks),
  signOffs: list(signatories),
};

const isBand = (value: unknown): value is Band =>
  typeof value === 'object' &&
  value !== null &&
  typeof (value as Band).least === 'number' &&
  typeof (value as Band).most === 'number';

const isWordsOf = (options: readonly string[], value: unknown): value is readonly string[] =>
  Array.isArray(value) &&
  value.every((word) => options.includes(word)) &&
  new Set(value).size === value.length;

/** A forbidden mixture as an owner writes it: agents of one group never meet agents of the other. */
export interface OwnMixture {
  readonly a: readonly string[];
  readonly b: readonly string[];
  readonly hazard: string;
}

/** Whether a value has the form. A pH may also be `no liquid`. */
export function fitsForm(form: RuleForm, value: unknown): boolean {
  switch (form.kind) {
    case 'words':
      return typeof value === 'string' && form.options.includes(value);
    case 'number':
      return typeof value === 'number' && value >= form.least && value <= form.most;
    case 'band':
      if (value === 'no liquid') return form.unit === 'pH';
      return (
        isBand(value) && value.least >= form.least && value.most <= form.most && value.least <= value.most
      );
    case 'list':
      return isWordsOf(form.options, value);
    case 'mixture': {
      if (typeof value !== 'object' || value === null) return false;
      const { a, b, hazard } = value as OwnMixture;
      const named = isWordsOf(form.options, a) && a.length > 0 && isWordsOf(form.options, b);
      return named && typeof hazard === 'string' && hazard.trim() !== '' && hazard.length <= 300;
    }
    case 'fixed':
      return false;
  }
}

/**
 * What is allowed, in words for the person who typed something else.
 *
 * @source none: rule of this project
 */
export function allowedWords(form: RuleForm): string {
  switch (form.kind) {
    case 'words':
      return `one of: ${form.options.join(', ')}`;
    case 'number':
      return `${form.least} to ${form.most} ${form.unit}`;
    case 'band':
      return `two numbers, the lower first, within ${form.least} to ${form.most} ${form.unit}`;
    case 'list':
      return `any of: ${form.options.join(', ')}`;
    case 'mixture':
      return 'at least one agent of the list, what it must not meet, and the hazard in words';
    case 'fixed':
      return 'nothing else: this text is part of the product';
  }
}

/** How tightness is judged: by the order of an axis, or which way a number gets stricter. */
export type Strictness = Axis | 'lower' | 'higher' | 'more words' | 'none';

/** Whether a value allows nothing that another forbids. */
export function asStrict(by: Strictness, value: unknown, other: unknown): boolean {
  switch (by) {
    case 'none':
      return true;
    case 'lower':
      return (value as number) <= (other as number);
    case 'higher':
      return (value as number) >= (other as number);
    case 'more words':
      return (other as readonly string[]).every((word) => (value as readonly string[]).includes(word));
    default:
      return withinOn(by, value as never, other as never);
  }
}
