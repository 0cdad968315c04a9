import { describe, expect, test } from 'vitest';
import type { PlanFacts } from './planFacts.ts';
import { planWash, tightens } from './planWash.ts';
import { shippedRulebook } from './rulebook.ts';
import { judgeRuleChange, rulebookWith, ruleEntryAt } from './ruleChange.ts';
import { ruleEntries, ruleSpotsOf } from './ruleEntry.ts';
import { fitsForm } from './ruleForm.ts';

const woolRug: PlanFacts = {
  route: 'rug in use',
  construction: 'knotted pile',
  pile: { wool: 1 },
  foundation: { warp: 'cotton', weft: 'cotton' },
  areaM2: 2,
  findings: [],
  expectedDryingHours: 20,
  monthsSinceWash: 60,
  valueAboveAuthority: false,
  colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome' }],
};

const codeOf = (address: string, value: unknown) => {
  const judged = judgeRuleChange({ address, value });
  return judged.ok ? 'allowed' : judged.problem.code;
};
const bookWith = (address: string, value: unknown) => rulebookWith([{ address, value }], 'test');

describe('every value of the rulebook', () => {
  test('has an address of its own and is what its own form allows', () => {
    const spots = ruleSpotsOf(shippedRulebook);
    expect(new Set(spots.map(({ address }) => address)).size).toBe(spots.length);
    const entries = ruleEntries(shippedRulebook);
    expect(entries.length).toBeGreaterThan(300);
    const unfit = entries.filter(({ form, value }) => form.kind !== 'fixed' && !fitsForm(form, value));
    expect(unfit.map(({ address }) => address)).toEqual([]);
  });

  test('stands in the list of every rule R01 to R40', () => {
    const rows = new Set(ruleEntries(shippedRulebook).map(({ row }) => row));
    expect(shippedRulebook.rules.filter(({ id }) => !rows.has(id))).toEqual([]);
  });
});

describe('what an owner may not loosen', () => {
  test.each([
    ['rules/R22/protein/forbiddenAgents', []],
    ['rules/R20/natural/bathPh', { least: 0, most: 9 }],
    ['mixtures/acid with sulfite below pH 4/belowPh', 3.5],
    ['mixtures/peroxide above pH 9 on wool or silk/abovePh', 10],
    ['mixtures/chlorine with acid/b', ['citric acid']],
    ['rules/R28/mould/method', 'flow wash'],
    ['shop/longWetHours', 24.5],
  ])('%s is not loosened', (address, value) => {
    expect(['rule-looser-than-delivered', 'rule-value-wrong']).toContain(codeOf(address, value));
  });

  test.each([
    ['rules/R22/protein/forbiddenAgents', ['hypochlorite', 'percarbonate']],
    ['mixtures/acid with sulfite below pH 4/belowPh', 5],
    ['rules/R20/natural/bathPh', { least: 0, most: 7 }],
    ['shop/mouldHours', 36],
    ['rules/R08/slow/method', 'flow wash'],
    ['fibres/wool/temperatureC', 35],
  ])('%s may be tightened, or moved where it is a setting', (address, value) => {
    expect(codeOf(address, value)).toBe('allowed');
  });
});

describe('what cannot be a value', () => {
  test.each([
    ['rules/R99/x/method', 'flow wash', 'rule-value-unknown'],
    ['fibres/wool/temperatureC', 140, 'rule-value-wrong'],
    ['fibres/wool/temperatureC', Number.NaN, 'rule-value-wrong'],
    ['fibres/wool/bathPh', { least: 8, most: 5 }, 'rule-value-wrong'],
    ['fibres/wool/bathPh', { least: 5, most: 15 }, 'rule-value-wrong'],
    ['rules/R08/slow/method', 'boil', 'rule-value-wrong'],
    ['stops/pH off band', 'x', 'rule-value-unknown'],
    ['mixtures/+mine', { a: [], b: [], hazard: 'x' }, 'rule-value-wrong'],
  ])('%s: %j', (address, value, code) => {
    expect(codeOf(address, value)).toBe(code);
  });
});

describe('a plan is judged by the rulebook it is given', () => {
  test('a cooler wool limit makes the plan cooler and names the rulebook', () => {
    const rulebook = bookWith('fibres/wool/temperatureC', 22);
    const [before, after] = [planWash(woolRug), planWash({ ...woolRug, rulebook })];
    if (!before.ok || !after.ok) throw new Error('both rugs have a plan');
    expect(after.value.bounds.temperatureC).toBe(22);
    expect(after.value.rulebook).toBe('test');
    expect(before.value.rulebook).toBe(shippedRulebook.version);
    expect(tightens(before.value, after.value).map(({ axis }) => axis)).toContain('temperatureC');
  });

  test('a limit added to a rule holds, and taking it back leaves the delivered rulebook', () => {
    const address = 'fibres/cotton/people';
    const added = planWash({ ...woolRug, rulebook: bookWith(address, 3) });
    expect(added.ok && added.value.bounds.people).toBe(3);
    expect(rulebookWith([{ address, value: null }], shippedRulebook.version)).toEqual(shippedRulebook);
  });

  test('a mixture the owner forbids blocks a bath, and stands in the list', () => {
    const rulebook = bookWith('mixtures/+disinfectant on our dyes', {
      a: ['disinfectant'],
      b: ['dye stabiliser'],
      hazard: 'colours run',
    });
    const bath = { purpose: 'spotting', agents: ['disinfectant', 'dye stabiliser'], pH: 6 } as const;
    const plan = planWash({ ...woolRug, rulebook, plannedBaths: [bath] });
    expect(plan.ok ? null : plan.problem).toMatchObject({
      code: 'wash-mixture-forbidden',
      facts: { hazard: 'colours run' },
    });
    expect(
      ruleEntries(rulebook).some(({ address }) => address === 'mixtures/+disinfectant on our dyes'),
    ).toBe(true);
  });

  test('a dwell and a use of water change the steps', () => {
    const rulebook = rulebookWith(
      [
        { address: 'shop/detergentGPerM2', value: { least: 5, most: 8 } },
        { address: 'tests/validDays', value: 10 },
      ],
      'test',
    );
    expect(rulebook.shop.detergentGPerM2).toEqual({ least: 5, most: 8 });
    expect(ruleEntryAt(rulebook, 'tests/validDays')?.value).toBe(10);
    expect(shippedRulebook.tests.validDays).toBe(30);
  });
});

test('a change that is looser than the tables now allow is left out: the delivered value holds', () => {
  const book = bookWith('rules/R22/protein/forbiddenAgents', []);
  expect(ruleEntryAt(book, 'rules/R22/protein/forbiddenAgents')?.value).toEqual(['hypochlorite']);
});
