import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { bathTest, found, soundRug, tested } from '../../../test/support/soundRug.ts';
import { within, withinOn } from './limit.ts';
import { agentsAllowed } from './mixtures.ts';
import {
  constructions,
  dyes,
  type Fibre,
  fibres,
  findingCodes,
  type Grade,
  grades,
  type PlanFacts,
  ruleIds,
} from './planFacts.ts';
import { planWash, tightens } from './planWash.ts';
import { missingDyeTests } from './requiredDyeTests.ts';
import { shippedRulebook } from './rulebook.ts';

const bare = (facts: PlanFacts) => {
  const plan = planWash(facts);
  return plan.ok ? plan.value : null;
};

const anyRug: fc.Arbitrary<PlanFacts> = fc
  .record({
    construction: fc.constantFrom(...constructions),
    pile: fc.constantFrom(...fibres),
    warp: fc.constantFrom(...fibres),
    weft: fc.constantFrom(...fibres),
    dyeClass: fc.constantFrom(...dyes),
    grade: fc.constantFrom<Grade>(...grades),
    findings: fc.subarray([...findingCodes], { maxLength: 4 }),
    hours: fc.constantFrom(8, 20, 30, 60),
    stain: fc.constantFrom('tannin', 'rust', 'synthetic dye', 'mould stain', 'oil, wax or gum' as const),
  })
  .map(({ construction, pile, warp, weft, dyeClass, grade, findings, hours, stain }) => ({
    ...soundRug,
    construction,
    pile: { [pile]: 1 } as { readonly [F in Fibre]?: number },
    foundation: { warp, weft },
    colours: [
      {
        id: 'red',
        name: 'red',
        kind: 'field colour',
        dyeClass,
        besideLightField: false,
        atUrinePlace: false,
      },
    ],
    dyeTests: [...tested(grade), bathTest('spotter', '5', { agents: ['citric acid'], pH: 5 })],
    findings: findings.map((code) => ({ code })),
    expectedDryingHours: hours,
    stains: [{ id: 's1', class: stain }],
  }));

describe('laws over every combination of material, dye and finding', () => {
  test('a plan exists or refuses with a reason, and its steps never leave its limits', () => {
    fc.assert(
      fc.property(anyRug, (facts) => {
        const plan = planWash(facts);
        if (!plan.ok) {
          expect(plan.problem.code).toMatch(/^wash-/);
          return;
        }
        const { bounds, steps, method } = plan.value;
        const dry = withinOn('method', method, 'dry only');
        let wetMinutes = 0;
        for (const step of steps) {
          expect(agentsAllowed(step.agents, bounds)).toBe(true);
          if (dry) expect(step.wet).toBe(false);
          if (step.wet) wetMinutes += step.dwellMinutes ?? 0;
          if (step.temperatureC !== undefined)
            expect(step.temperatureC.most).toBeLessThanOrEqual(bounds.temperatureC);
          // An acid spotter is held to what the rug is left with, exactly as its acid rinse is.
          const acid =
            step.kind === 'acid rinse' ||
            step.kind === 'acid pre-treatment' ||
            (step.stain !== undefined && step.agents.includes('citric acid'));
          const cap = acid ? bounds.finalPh : bounds.bathPh;
          if (step.targetPh !== undefined && cap !== 'no liquid') {
            expect(step.targetPh.least).toBeGreaterThanOrEqual(cap.least);
            expect(step.targetPh.most).toBeLessThanOrEqual(cap.most);
          }
        }
        expect(wetMinutes).toBeLessThanOrEqual(bounds.wetMinutes + 1e-9);
      }),
      { numRuns: 700 },
    );
  });

  test('one more finding never loosens any axis', () => {
    fc.assert(
      fc.property(anyRug, fc.constantFrom(...findingCodes), (facts, code) => {
        const before = bare(facts);
        const after = bare({ ...facts, findings: [...(facts.findings ?? []), { code }] });
        if (before === null || after === null) return;
        expect(within(after.bounds, before.bounds)).toBe(true);
        expect(tightens(after, before)).toEqual([]);
      }),
      { numRuns: 700 },
    );
  });

  test('after a refusal one more finding does not make a plan', () => {
    fc.assert(
      fc.property(anyRug, fc.constantFrom(...findingCodes), (facts, code) => {
        const before = planWash(facts);
        if (before.ok || before.problem.code !== 'wash-blocked') return;
        expect(planWash({ ...facts, findings: [...(facts.findings ?? []), { code }] }).ok).toBe(false);
      }),
      { numRuns: 400 },
    );
  });

  test('what would loosen a plan truly does, and never tightens what it names', () => {
    fc.assert(
      fc.property(anyRug, (facts) => {
        const plan = bare({ ...facts, findings: undefined as never, pile: { unknown: 1 } });
        if (plan === null) return;
        for (const { axis, from, to } of plan.loosens.flatMap(({ allows }) => allows)) {
          if (axis === 'steps') continue;
          expect(withinOn(axis, from as never, to as never) && from === to).toBe(false);
          expect(withinOn(axis, to as never, from as never)).toBe(false);
        }
      }),
      { numRuns: 200 },
    );
  });
});

describe('dye tests', () => {
  test('the weakest liquid comes first, and the first failure ends the row', () => {
    const order = missingDyeTests({ ...soundRug, dyeTests: [] }).map(({ liquid }) => liquid);
    expect(order.slice(0, 3)).toEqual(['dry crock', 'damp crock', 'cold water']);
    const failed = missingDyeTests({ ...soundRug, dyeTests: [bathTest('cold water', '2')] });
    expect(failed.map(({ liquid }) => liquid)).toEqual(['dry crock', 'damp crock']);
  });
  test('a flatweave is tested on both faces, a knotted rug on one', () => {
    const count = (construction: PlanFacts['construction']) =>
      missingDyeTests({ ...soundRug, construction: construction ?? 'unknown', dyeTests: [] }).length;
    expect(count('flatweave')).toBe(2 * count('knotted pile'));
  });
  test('urine asks for tests at its place', () => {
    const urine: PlanFacts = {
      ...found('urine'),
      colours: [{ id: 'red', name: 'red', kind: 'field colour', dyeClass: 'chrome' }],
    };
    expect(missingDyeTests(urine).some(({ atUrinePlace }) => atUrinePlace)).toBe(true);
  });
  test('a wet time above twelve hours asks for a day under cover', () => {
    const quick = missingDyeTests({ ...soundRug, expectedDryingHours: 10, dyeTests: [] }).map(
      ({ liquid }) => liquid,
    );
    const slow = missingDyeTests({ ...soundRug, expectedDryingHours: 14, dyeTests: [] }).map(
      ({ liquid }) => liquid,
    );
    expect(quick).not.toContain('covered 24 h');
    expect(slow).toContain('covered 24 h');
  });
  test('the plan is no warmer, stronger or longer than what was tested', () => {
    const cool = tested().map((one) =>
      one.liquid === 'planned bath' ? { ...one, temperatureC: 22, minutes: 8 } : one,
    );
    const plan = bare({ ...soundRug, dyeTests: cool });
    expect(plan?.bounds.temperatureC).toBeLessThanOrEqual(22);
    expect(plan?.bounds.bathMinutes).toBeLessThanOrEqual(8);
  });
});

test('a wet plan carries the usual cautions: skin, gas, eyes, mixtures, current, waste water', () => {
  expect(bare(soundRug)?.cautions.join(' ')).toMatch(
    /Gloves and goggles.*safety data sheet.*Air the room.*eyewash.*Never mix.*Wet floor and current.*local authority/s,
  );
});

describe('the rulebook', () => {
  test('has every rule R01 to R40, each with a reason a client can read', () => {
    for (const id of ruleIds) {
      const row = shippedRulebook.rules.find((one) => one.id === id);
      expect(row, id).toBeDefined();
      for (const { because } of Object.values(row?.cases ?? {})) expect(because).toMatch(/^[A-Z].*\.$/);
    }
  });
  test('forbidden mixtures, consent and quarantine are never overridden', () => {
    for (const rule of ['R19', 'R20', 'R21', 'R22', 'R23', 'R24', 'R27', 'R28', 'R34'] as const) {
      const plan = planWash({ ...soundRug, overrides: [{ rule, reason: 'x' }] });
      expect(plan.ok ? null : plan.problem.code).toBe('wash-override-not-possible');
    }
  });
  // Rule of this project: an override lifts a cap, never the duty to tell the client of the risk.
  test('a client is told of every rule the owner sets aside, and of all it would have told', () => {
    const slow = bare({ ...soundRug, expectedDryingHours: 60, overrides: [{ rule: 'R38', reason: 'fans' }] });
    expect(slow?.consents.map(({ text }) => text).join(' ')).toMatch(/sets a rule .* aside.*grow mould/);
    const rotten = { ...soundRug, findings: [{ code: 'dry rot', certainty: 'seen' }] } as const;
    const told = bare({ ...rotten, overrides: [{ rule: 'R13', reason: 'a board' }] })?.consents ?? [];
    expect(told.map(({ risk }) => risk)).toEqual(expect.arrayContaining(['dry rot', 'rule set aside']));
  });
  test('negative sizes and blends that are no whole are named', () => {
    const plan = planWash({ ...soundRug, areaM2: -2, pile: { wool: 0.5 } });
    const faults = plan.ok
      ? []
      : (plan.problem.facts as { readonly faults: readonly { readonly field: string }[] }).faults;
    expect(faults.map(({ field }) => field)).toEqual(['areaM2', 'pile']);
  });
});
