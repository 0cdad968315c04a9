import { done, type Problem, type Result, refused } from '../../units/index.ts';
import { agents } from './planFacts.ts';
import { type Rulebook, shippedRulebook } from './rulebook.ts';
import { ruleSpotsOf } from './ruleEntry.ts';
import { allowedWords, asStrict, fitsForm, type OwnMixture, type RuleForm } from './ruleForm.ts';
import { type RuleEntry, type Spot, valueAt } from './ruleSpot.ts';

/** An owner's value in place of a delivered one; null takes it back to what was delivered. */
export interface RuleChange {
  readonly address: string;
  readonly value: unknown;
}

export type RuleProblem =
  | Problem<'rule-value-unknown', { readonly address: string }>
  | Problem<'rule-value-wrong', { readonly name: string; readonly value: string; readonly allowed: string }>
  | Problem<
      'rule-looser-than-delivered',
      { readonly title: string; readonly name: string; readonly value: string; readonly delivered: string }
    >;

const ownMixture = /^mixtures\/\+(.{1,80})$/;

const spotsByBook = new WeakMap<Rulebook, ReadonlyMap<string, Spot>>();

function spotAt(book: Rulebook, address: string): Spot | undefined {
  let spots = spotsByBook.get(book);
  if (spots === undefined) {
    spots = new Map(ruleSpotsOf(book).map((spot) => [spot.address, spot]));
    spotsByBook.set(book, spots);
  }
  return spots.get(address);
}

/**
 * One value of a rulebook with what may stand there, also where nothing does yet.
 *
 * @returns null for an address no rulebook has
 * @source none: the tables of data/wash
 */
export function ruleEntryAt(book: Rulebook, address: string): RuleEntry | null {
  const spot = spotAt(book, address);
  if (spot !== undefined) {
    const { path, rule: _rule, ...entry } = spot;
    return { ...entry, value: valueAt(book, path) };
  }
  const name = ownMixture.exec(address)?.[1];
  if (name === undefined) return null;
  const form: RuleForm = { kind: 'mixture', options: agents };
  const row = {
    group: 'forbidden mixture',
    row: name,
    title: name,
    because: '',
    name: 'agents',
    form,
  } as const;
  return { ...row, address, strictness: 'none', locked: false, source: 'workshop-setting', value: null };
}

const written = (value: unknown): string => (typeof value === 'string' ? value : JSON.stringify(value));

const textOf = (value: unknown): string => {
  if (Array.isArray(value)) return value.length === 0 ? 'nothing' : value.join(', ');
  const band = value as { readonly least?: number; readonly most?: number } | null;
  return band?.least !== undefined ? `${band.least} to ${band.most}` : written(value);
};

/**
 * Whether an owner may put a value in place of a delivered one.
 *
 * @param change - address and value
 * @returns the entry as it is delivered
 * @refuses rule-value-unknown - no rulebook has this address
 * @refuses rule-value-wrong - with what is allowed
 * @refuses rule-looser-than-delivered - forbidden mixtures, rules without override and published safety times
 * are tightened only
 * @source none: rule of this project, docs/decisions/0009-the-rulebook-is-a-value.md
 */
export function judgeRuleChange({ address, value }: RuleChange): Result<RuleEntry, RuleProblem> {
  const entry = ruleEntryAt(shippedRulebook, address);
  if (entry === null) return refused('rule-value-unknown', { address });
  if (value === null) return done(entry);
  const { form, name, title, locked, strictness, value: delivered } = entry;
  if (!fitsForm(form, value)) {
    return refused('rule-value-wrong', { name, value: written(value), allowed: allowedWords(form) });
  }
  if (locked && delivered !== null && !asStrict(strictness, value, delivered)) {
    return refused('rule-looser-than-delivered', {
      ...{ title, name, value: textOf(value), delivered: textOf(delivered) },
    });
  }
  return done(entry);
}

/** A copy with one value set; everything beside the path is shared. */
function withValue(held: unknown, [key, ...rest]: readonly (string | number)[], value: unknown): unknown {
  if (key === undefined) {
    const isMade = typeof held === 'object' && held !== null && 'kind' in held;
    return isMade ? { ...held, ...(value as object) } : value;
  }
  if (Array.isArray(held)) {
    return held.map((item, index) => (index === key ? withValue(item, rest, value) : item));
  }
  const record = (held ?? {}) as Readonly<Record<string, unknown>>;
  return { ...record, [key]: withValue(record[key], rest, value) };
}

/** A row that says where its values come from: the table, its key, and what stands under it. */
const rowsWithSource: readonly string[] = ['stains', 'steps', 'flows', 'mixtures'];

/**
 * Says of a changed value that it is the workshop's own: no published work stands behind it any more.
 * A limit says so by itself, since its row keeps other limits; another row as a whole.
 */
function asOwn(book: Rulebook, { path, rule }: Spot): Rulebook {
  const at = path.indexOf('limits');
  if (at > 0) {
    const own = [...path.slice(0, at), 'own'];
    const before = (valueAt(book, own) ?? []) as readonly string[];
    return withValue(book, own, [...before, path[at + 1]]) as Rulebook;
  }
  const [table = '', row = ''] = path;
  if (rowsWithSource.includes(String(table))) {
    return withValue(book, [table, row, 'source'], 'workshop-setting') as Rulebook;
  }
  const told = book.rules.findIndex(({ id }) => id === rule);
  return told < 0 ? book : (withValue(book, ['rules', told, 'source'], 'workshop-setting') as Rulebook);
}

function withChange(book: Rulebook, { address, value }: RuleChange): Rulebook {
  if (value === null) return book;
  const spot = spotAt(shippedRulebook, address);
  if (spot !== undefined) return asOwn(withValue(book, spot.path, value) as Rulebook, spot);
  const id = ownMixture.exec(address)?.[1];
  if (id === undefined) return book;
  const { a, b, hazard } = value as OwnMixture;
  const own = { id, a, b, hazard, source: 'workshop-setting' } as Rulebook['mixtures'][number];
  return { ...book, mixtures: [...book.mixtures, own] };
}

/**
 * The delivered rulebook with a workshop's changes. A change that a later version of the tables no longer
 * knows, or that would now be looser than they allow, is left out: the delivered value holds.
 *
 * @param changes - the latest value of each address
 * @param version - how the result is named on plans
 * @source none: rule of this project, docs/decisions/0009-the-rulebook-is-a-value.md
 */
export function rulebookWith(changes: readonly RuleChange[], version: string): Rulebook {
  const fit = changes.filter((change) => judgeRuleChange(change).ok);
  const own = fit.filter(({ value }) => value !== null);
  return { ...own.reduce(withChange, shippedRulebook), version, changes: own };
}
