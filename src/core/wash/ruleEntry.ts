import { type Axis, axes } from './limit.ts';
import { agents } from './planFacts.ts';
import { isPeroxide, isSulfite, type Rulebook, shippedRulebook } from './rulebook.ts';
import { axisForms, type RuleForm, type Strictness } from './ruleForm.ts';
import { ruleNumbers } from './ruleNumbers.ts';
import { type RuleEntry, type Spot, single, valueAt } from './ruleSpot.ts';
import type { RuleCase, Treatment } from './ruleTables.ts';
import { ruleTexts, stepName } from './ruleTexts.ts';

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

/** A colour that no test clears counts as loose in every workshop. */
const unproven: readonly string[] = ['unknown', 'no common bath'];

const dyeSpots = ({ dyes }: Rulebook): readonly Spot[] =>
  Object.entries(dyes).flatMap(([name, row]) => {
    const locked = unproven.includes(name);
    const base = { group: 'dye class', row: name, title: name, source: row.source, locked } as const;
    return caseSpots(base, row, `dyes/${name}`, ['dyes', name]);
  });

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
const warmth: RuleForm = { kind: 'number', least: 5, most: 40, unit: '°C' };

/** How a treatment's liquid is made up; a share of the pure agent is only ever made weaker. */
const doseForm = (dose: Treatment['dose']): RuleForm | null => {
  switch (dose?.kind) {
    case 'grams per litre':
      return { kind: 'band', least: 0, most: 50, unit: 'g/L' };
    case 'share':
      return { kind: 'band', least: 0, most: dose.most, unit: 'of 1, pure' };
    default:
      return null;
  }
};

const stainSpots = ({ stains }: Rulebook): readonly Spot[] =>
  stains.flatMap(({ class: kind, source, treatments }, index) =>
    treatments.flatMap(({ golden, what, agents: spotters, ph, mostC, dose }, at) => {
      const base = {
        group: 'stain',
        row: kind,
        title: `${kind}: ${golden}`,
        because: what,
        source,
      } as const;
      const spot = (name: string, form: RuleForm, more: Partial<Spot> = {}) =>
        single({
          ...{ ...base, address: `stains/${kind}/${golden}/${name}`, name, form },
          ...{ path: ['stains', index, 'treatments', at, name], ...more },
        });
      const doseOf = doseForm(dose);
      return [
        spot('dwellMinutes', dwell),
        // Below its band a sulfite gasses; warm peroxide eats fibre and dye.
        ...(ph === undefined
          ? []
          : [spot('ph', phOnFibre, { strictness: 'bathPh', locked: spotters.some(isSulfite) })]),
        ...(mostC === undefined
          ? []
          : [spot('mostC', warmth, { strictness: 'lower', locked: spotters.some(isPeroxide) })]),
        ...(doseOf === null ? [] : [spot('dose', doseOf)]),
      ];
    }),
  );

const stepSpots = ({ steps }: Rulebook): readonly Spot[] =>
  steps.flatMap((step, index) =>
    step.dwellMinutes === undefined
      ? []
      : [
          single({
            address: `steps/${stepName(step)}/dwellMinutes`,
            ...{
              group: 'step',
              row: stepName(step),
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

const flowSpots = ({ flows }: Rulebook): readonly Spot[] =>
  flows.flatMap(({ id, title, source, steps }, index) =>
    steps.flatMap((step, at) => {
      const base = { group: 'flow', row: id, title, because: `${at + 1}. ${step.do}`, source } as const;
      const spot = (name: 'dwellMinutes' | 'mostC', form: RuleForm, strictness: Strictness) =>
        step[name] === undefined
          ? []
          : [
              single({
                ...{ ...base, name, form, strictness, address: `flows/${id}/${step.id}/${name}` },
                path: ['flows', index, 'steps', at, name],
              }),
            ];
      return [...spot('dwellMinutes', dwell, 'none'), ...spot('mostC', warmth, 'lower')];
    }),
  );

/** Every place of a rulebook that may hold a value, whether it does or not. */
export const ruleSpotsOf = (book: Rulebook): readonly Spot[] => [
  ...ruleSpots(book),
  ...fibreSpots(book, 'fibres'),
  ...fibreSpots(book, 'backings'),
  ...dyeSpots(book),
  ...ruleNumbers(),
  ...waterSpots(book),
  ...stainSpots(book),
  ...stepSpots(book),
  ...flowSpots(book),
  ...mixtureSpots(book),
];

/**
 * Everything the rulebook says, one value after another, with the texts that are part of the product.
 *
 * @param book - the rulebook read
 * @returns entries that hold a value; each with its row, reason and source
 * @source none: the tables of data/wash, each row with its own source
 */
export function ruleEntries(book: Rulebook): readonly RuleEntry[] {
  const held = ruleSpotsOf(book).flatMap(({ path, rule: _rule, ...entry }) => {
    const value = valueAt(book, path);
    return value === null ? [] : [{ ...entry, value }];
  });
  return [...held, ...ruleTexts(book)];
}
