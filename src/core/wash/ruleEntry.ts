import valueTable from '../../../data/wash/ruleValues.json' with { type: 'json' };
import { type Axis, axes } from './limit.ts';
import { agents } from './planFacts.ts';
import { neverUsed, type Rulebook, shippedRulebook, stopConditions } from './rulebook.ts';
import { axisForms, type RuleForm, type Strictness } from './ruleForm.ts';
import type { RuleCase, StepRow } from './ruleTables.ts';
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
  'stop condition',
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
}

type Row = Pick<RuleEntry, 'group' | 'row' | 'title' | 'source'> &
  Partial<Pick<RuleEntry, 'where' | 'locked'>>;

const phOnFibre: RuleForm = { kind: 'band', least: 3.5, most: 10, unit: 'pH' };

const caseSpots = (
  { locked = false, ...row }: Row,
  { because }: RuleCase,
  address: string,
  path: Spot['path'],
  formOf: (axis: Axis) => RuleForm = (axis) => axisForms[axis],
): readonly Spot[] =>
  axes.map((axis) => ({
    ...row,
    address: `${address}/${axis}`,
    because,
    name: axis,
    form: formOf(axis),
    strictness: axis,
    locked,
    path: [...path, 'limits', axis],
  }));

const ruleSpots = ({ rules }: Rulebook): readonly Spot[] =>
  rules.flatMap(({ id, title, source, where, override, cases }, index) =>
    Object.entries(cases).flatMap(([name, one]) =>
      caseSpots(
        {
          group: 'rule',
          row: id,
          title,
          source,
          locked: !override,
          ...(where === undefined ? {} : { where }),
        },
        one,
        `rules/${id}/${name}`,
        ['rules', index, 'cases', name],
      ),
    ),
  );

function fibreSpots(book: Rulebook, table: 'fibres' | 'backings'): readonly Spot[] {
  return Object.entries(book[table]).flatMap(([fibre, row]) => {
    const title = table === 'fibres' ? fibre : `${fibre} as weft or backing`;
    const base = { group: 'fibre', row: fibre, title, source: row.source } as const;
    const path = [table, fibre];
    const aims = (['bathAim', 'finalAim'] as const).map((name) => ({
      ...{ ...base, address: `${table}/${fibre}/${name}`, because: row.because, name },
      ...{ form: phOnFibre, strictness: 'none' as const, locked: false, path: [...path, name] },
    }));
    const formOf = (axis: Axis) => (axis === 'bathPh' || axis === 'finalPh' ? phOnFibre : axisForms[axis]);
    return [...caseSpots(base, row, `${table}/${fibre}`, path, formOf), ...(table === 'fibres' ? aims : [])];
  });
}

const dyeSpots = ({ dyes }: Rulebook): readonly Spot[] =>
  Object.entries(dyes).flatMap(([name, row]) =>
    caseSpots({ group: 'dye class', row: name, title: name, source: row.source }, row, `dyes/${name}`, [
      'dyes',
      name,
    ]),
  );

const single = (row: Omit<Spot, 'strictness' | 'locked'> & Partial<Spot>): Spot => ({
  strictness: 'none',
  locked: false,
  ...row,
});

function numberSpots(table: 'tests' | 'shop'): readonly Spot[] {
  return valueTable[table].map((row) => {
    const { key, name, unit, least, most } = row;
    const isRange = typeof (shippedRulebook[table] as Readonly<Record<string, unknown>>)[key] === 'object';
    return single({
      address: `${table}/${key}`,
      group: table === 'tests' ? 'dye test' : 'dose and time',
      row: key,
      title: name,
      because: '',
      name,
      form: { kind: isRange ? 'band' : 'number', least, most, unit },
      strictness: 'tighter' in row ? (row.tighter as 'lower' | 'higher') : 'none',
      locked: 'locked' in row && row.locked === true,
      source: 'source' in row ? (row.source as SourceKey) : 'workshop-setting',
      path: [table, key],
    });
  });
}

const waterSpots = ({ shop }: Rulebook): readonly Spot[] =>
  Object.entries(shop.waterLPerM2).flatMap(([method, uses]) =>
    Object.keys(uses).map((use) =>
      single({
        address: `shop/waterLPerM2/${method}/${use}`,
        ...{ group: 'dose and time', row: method, title: `water, ${method}`, because: '', name: use },
        form: { kind: 'number', least: 0, most: 200, unit: 'L/m²' },
        source: shop.source,
        path: ['shop', 'waterLPerM2', method, use],
      }),
    ),
  );

const dwell: RuleForm = { kind: 'number', least: 0, most: 60, unit: 'min' };

const stainSpots = ({ stains }: Rulebook): readonly Spot[] =>
  stains.flatMap(({ class: kind, source, note, treatments }, index) =>
    treatments.flatMap(({ golden, what, ph, mostC }, at) => {
      const base = {
        group: 'stain',
        row: kind,
        title: `${kind}: ${golden}`,
        because: `${what} ${note}`,
        source,
      } as const;
      const spot = (name: string, form: RuleForm, more: Partial<Spot> = {}) =>
        single({
          ...{ ...base, address: `stains/${kind}/${golden}/${name}`, name, form },
          ...{ path: ['stains', index, 'treatments', at, name], ...more },
        });
      return [
        spot('dwellMinutes', dwell),
        ...(ph === undefined ? [] : [spot('ph', phOnFibre, { strictness: 'bathPh' })]),
        ...(mostC === undefined
          ? []
          : [spot('mostC', { kind: 'number', least: 5, most: 40, unit: '°C' }, { strictness: 'lower' })]),
      ];
    }),
  );

/** Steps of one kind are told apart by their first method and what calls for them. */
const stepName = ({ kind, methods, acts = [] }: StepRow) =>
  [kind, methods[0], ...acts.slice(0, 1)].join(', ');

const stepSpots = ({ steps }: Rulebook): readonly Spot[] =>
  steps.flatMap((step, index) =>
    step.dwellMinutes === undefined
      ? []
      : [
          single({
            address: `steps/${stepName(step)}/dwellMinutes`,
            ...{
              group: 'step',
              row: step.kind,
              title: stepName(step),
              because: step.what,
              name: 'dwellMinutes',
            },
            ...{ form: dwell, source: step.source, path: ['steps', index, 'dwellMinutes'] },
          }),
        ],
  );

const acidity: RuleForm = { kind: 'number', least: 0, most: 14, unit: 'pH' };

function mixtureSpots({ mixtures }: Rulebook): readonly Spot[] {
  const named = mixtures.flatMap((mixture, index) => {
    const { id, hazard, source } = mixture;
    const own = index >= shippedRulebook.mixtures.length;
    const base = {
      group: 'forbidden mixture',
      row: id,
      title: id,
      because: hazard,
      source,
      locked: true,
    } as const;
    if (own) {
      const form: RuleForm = { kind: 'mixture', options: agents };
      return [
        single({
          ...base,
          locked: false,
          address: `mixtures/+${id}`,
          name: 'agents',
          form,
          path: ['mixtures', index],
        }),
      ];
    }
    const spot = (name: 'a' | 'b' | 'belowPh' | 'abovePh', form: RuleForm, strictness: Strictness) =>
      single({
        ...base,
        address: `mixtures/${id}/${name}`,
        name,
        form,
        strictness,
        path: ['mixtures', index, name],
      });
    return [
      spot('a', { kind: 'list', options: agents }, 'more words'),
      // An empty second group means the first alone is enough: nothing could be added to that.
      ...(mixture.b.length === 0 ? [] : [spot('b', { kind: 'list', options: agents }, 'more words')]),
      ...(mixture.belowPh === undefined ? [] : [spot('belowPh', acidity, 'higher')]),
      ...(mixture.abovePh === undefined ? [] : [spot('abovePh', acidity, 'lower')]),
    ];
  });
  return named;
}

/** Every place of a rulebook that may hold a value, whether it does or not. */
export const ruleSpotsOf = (book: Rulebook): readonly Spot[] => [
  ...ruleSpots(book),
  ...fibreSpots(book, 'fibres'),
  ...fibreSpots(book, 'backings'),
  ...dyeSpots(book),
  ...numberSpots('tests'),
  ...numberSpots('shop'),
  ...waterSpots(book),
  ...stainSpots(book),
  ...stepSpots(book),
  ...mixtureSpots(book),
];

/** The value at a place, null where there is none. */
export const valueAt = (book: Rulebook, path: Spot['path']): unknown =>
  path.reduce<unknown>((held, key) => (held as Readonly<Record<string, unknown>> | undefined)?.[key], book) ??
  null;

const fixed = (row: Omit<RuleEntry, 'form' | 'strictness' | 'locked' | 'name'>): RuleEntry => ({
  ...row,
  name: 'text',
  form: { kind: 'fixed' },
  strictness: 'none',
  locked: true,
});

/**
 * Everything the rulebook says, one value after another, with the texts that are part of the product.
 *
 * @param book - the rulebook read
 * @returns entries that hold a value; each with its row, reason and source
 * @source none: the tables of data/wash, each row with its own source
 */
export function ruleEntries(book: Rulebook): readonly RuleEntry[] {
  const held = ruleSpotsOf(book).flatMap(({ path, ...entry }) => {
    const value = valueAt(book, path);
    return value === null ? [] : [{ ...entry, value }];
  });
  const said = new Set(held.map(({ group, row }) => `${group} ${row}`));
  return [
    ...held,
    // A rule whose cases set no limit still says something.
    ...book.rules.flatMap(({ id, title, source, cases }) =>
      said.has(`rule ${id}`)
        ? []
        : Object.entries(cases).map(([name, { because }]) =>
            fixed({
              address: `rules/${id}/${name}`,
              group: 'rule',
              row: id,
              title,
              because,
              source,
              value: title,
            }),
          ),
    ),
    ...neverUsed.map(({ agent, because }) =>
      fixed({
        ...{
          address: `never/${agent}`,
          group: 'forbidden mixture',
          row: agent,
          title: `${agent}: never used`,
        },
        ...{ because, source: 'memory', value: agent },
      }),
    ),
    ...stopConditions.map(({ id, when, rescue, source }) =>
      fixed({
        ...{ address: `stops/${id}`, group: 'stop condition', row: id, title: id },
        ...{ because: when, source, value: rescue },
      }),
    ),
  ];
}
