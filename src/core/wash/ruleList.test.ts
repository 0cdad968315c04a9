import { describe, expect, test } from 'vitest';
import cautionTable from '../../../data/wash/cautions.json' with { type: 'json' };
import differentialTable from '../../../data/wash/differential.json' with { type: 'json' };
import dyeTestTable from '../../../data/wash/dyeTests.json' with { type: 'json' };
import fibreTable from '../../../data/wash/fibres.json' with { type: 'json' };
import flowTable from '../../../data/wash/flows.json' with { type: 'json' };
import mixtureTable from '../../../data/wash/mixtures.json' with { type: 'json' };
import residueTable from '../../../data/wash/residues.json' with { type: 'json' };
import riskTable from '../../../data/wash/risks.json' with { type: 'json' };
import ruleTable from '../../../data/wash/rules.json' with { type: 'json' };
import shopTable from '../../../data/wash/shopFacts.json' with { type: 'json' };
import stainTable from '../../../data/wash/stains.json' with { type: 'json' };
import stepTable from '../../../data/wash/steps.json' with { type: 'json' };
import stopTable from '../../../data/wash/stopConditions.json' with { type: 'json' };
import { shippedRulebook } from './rulebook.ts';
import { ruleEntries, ruleSpotsOf } from './ruleEntry.ts';
import { fitsForm } from './ruleForm.ts';

// That everything in the tables can be read in the list is a rule of this project; no published source.

/** What a person would read in a table: its sentences, without the description of the table itself. */
const sentencesIn = (table: object): readonly string[] =>
  Object.entries(table).flatMap(([key, value]): readonly string[] => {
    if (['where', 'readFrom', 'unit', 'source', 'formerly'].includes(key)) return [];
    if (typeof value === 'string') return /\s.*\.$/.test(value) && !value.includes('{') ? [value] : [];
    return typeof value === 'object' && value !== null ? sentencesIn(value) : [];
  });

/** The numbers of a table. */
const figuresIn = (value: unknown): readonly number[] => {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(figuresIn) : [];
};

describe('every value of the rulebook', () => {
  test('has an address of its own and is what its own form allows', () => {
    const spots = ruleSpotsOf(shippedRulebook);
    expect(new Set(spots.map(({ address }) => address)).size).toBe(spots.length);
    const entries = ruleEntries(shippedRulebook);
    expect(entries.length).toBeGreaterThan(300);
    const unfit = entries.filter(({ form, value }) => form.kind !== 'fixed' && !fitsForm(form, value));
    expect(unfit.map(({ address }) => address)).toEqual([]);
  });

  test('has an address of its own also where it is only a text', () => {
    const addresses = ruleEntries(shippedRulebook).map(({ address }) => address);
    expect(addresses.filter((one, at) => addresses.indexOf(one) !== at)).toEqual([]);
  });

  test.each([
    ['cautions', cautionTable],
    ['differential', differentialTable],
    ['dyeTests', dyeTestTable],
    ['fibres', fibreTable],
    ['flows', flowTable],
    ['mixtures', mixtureTable],
    ['residues', residueTable],
    ['risks', riskTable],
    ['rules', ruleTable],
    ['stains', stainTable],
    ['steps', stepTable],
    ['stopConditions', stopTable],
  ])('every sentence of data/wash/%s.json stands in the list, with a source', (_name, table) => {
    const entries = ruleEntries(shippedRulebook);
    const listed = entries.map(({ title, because, value, name }) => `${title} ${because} ${name} ${value}`);
    const text = listed.join('\n');
    expect(sentencesIn(table).filter((sentence) => !text.includes(sentence))).toEqual([]);
    expect(entries.filter(({ source }) => source.trim() === '')).toEqual([]);
  });

  test.each([
    ['dyeTests', dyeTestTable, ['rows']],
    ['mixtures', mixtureTable, ['rows']],
    ['residues', residueTable, ['rows']],
    ['shopFacts', shopTable, []],
    ['stains', stainTable, ['rows']],
    ['stopConditions', stopTable, ['rows', 'rescueCards']],
    ['differential', differentialTable, ['rows']],
  ] as readonly (readonly [string, object, readonly string[]])[])(
    'every figure of data/wash/%s.json stands in the list',
    (_name, table, apart) => {
      const values = ruleEntries(shippedRulebook).map(({ value }) => JSON.stringify(value));
      const figures = Object.entries(table).flatMap(([key, value]) =>
        apart.includes(key) ? [] : figuresIn(value),
      );
      expect(figures.length).toBeGreaterThan(0);
      const shown = new Set(values.flatMap((value) => value.match(/[\d.]+/g) ?? []).map(Number));
      expect(figures.filter((figure) => !shown.has(figure))).toEqual([]);
    },
  );

  test('stands in the list of every rule R01 to R40', () => {
    const rows = new Set(ruleEntries(shippedRulebook).map(({ row }) => row));
    expect(shippedRulebook.rules.filter(({ id }) => !rows.has(id))).toEqual([]);
  });
});
