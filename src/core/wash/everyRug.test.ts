import { describe, expect, test } from 'vitest';
import { withinOn } from './limit.ts';
import { agentsAllowed } from './mixtures.ts';
import { constructions, dyes, fibres, findingCodes, type PlanFacts } from './planFacts.ts';
import { planWash } from './planWash.ts';
import { requiredDyeTests } from './requiredDyeTests.ts';

/** Lehmer's generator (multiplier 48271, modulus 2³¹ − 1): the same rugs on every run. */
function* chance(seed: number): Generator<number> {
  for (let state = seed; ; ) {
    state = (state * 48_271) % 2_147_483_647;
    yield state / 2_147_483_647;
  }
}

const drawn = chance(20_261_125);
const oneOf = <Item>(items: readonly Item[]): Item =>
  items[Math.floor((drawn.next().value ?? 0) * items.length)] as Item;

const rug = (): PlanFacts => {
  const pile = oneOf(fibres);
  return {
    route: 'rug in use',
    construction: oneOf(constructions),
    pile: { [pile]: 1 },
    foundation: { warp: oneOf(fibres), weft: oneOf(fibres) },
    areaM2: 3,
    dryMassKg: 9,
    findings: [{ code: oneOf(findingCodes), certainty: 'seen' }],
    colours: [{ id: 'c', name: 'the colour', kind: 'field colour', dyeClass: oneOf(dyes) }],
    expectedDryingHours: 20,
    monthsSinceWash: 100,
    valueAboveAuthority: false,
  };
};

/** Everything a plan may not do whatever the rug is. */
function faultsOf(facts: PlanFacts): readonly string[] {
  const plan = planWash(facts);
  if (!plan.ok) return plan.problem.code === 'wash-facts-invalid' ? ['facts invalid'] : [];
  const { steps, bounds } = plan.value;
  return steps.flatMap((step) => {
    const band =
      step.kind === 'acid rinse' || step.kind === 'acid pre-treatment' ? bounds.finalPh : bounds.bathPh;
    return [
      ...(agentsAllowed(step.agents, bounds) ? [] : [`${step.kind}: forbidden agent`]),
      ...(step.temperatureC !== undefined && step.temperatureC.most > bounds.temperatureC
        ? ['too warm']
        : []),
      ...(step.wet && !withinOn('method', 'low moisture', bounds.method) ? ['wet on a dry rug'] : []),
      ...(step.targetPh !== undefined &&
      (band === 'no liquid' || step.targetPh.least < band.least || step.targetPh.most > band.most)
        ? ['pH outside']
        : []),
    ];
  });
}

describe('every rug the tables can describe', () => {
  test('has a plan within its limits, or a refusal with its reason', () => {
    for (let i = 0; i < 400; i++) {
      const facts = rug();
      const faults = faultsOf(facts);
      if (faults.length > 0) throw new Error(`${JSON.stringify(facts)}: ${faults.join(', ')}`);
    }
    expect.assertions(0);
  });

  test('is never planned more freely because one more thing was found', () => {
    for (let i = 0; i < 150; i++) {
      const facts = rug();
      const more = { ...facts, findings: [...(facts.findings ?? []), { code: oneOf(findingCodes) }] };
      const [before, after] = [planWash(facts), planWash(more)];
      if (!after.ok) continue;
      if (!before.ok) throw new Error(`one more finding gave a plan: ${JSON.stringify(more)}`);
      for (const axis of ['method', 'temperatureC', 'wetMinutes', 'agitation', 'forbiddenAgents'] as const) {
        expect(withinOn(axis, after.value.bounds[axis] as never, before.value.bounds[axis] as never)).toBe(
          true,
        );
      }
    }
  });
});

describe('an alkaline bath', () => {
  const facts = rug();
  test('asks for the alkali challenge of every colour, and without one nothing asks for it', () => {
    const asks = (one: PlanFacts) =>
      requiredDyeTests(one).some(({ liquid }) => liquid === 'alkali challenge');
    const plannedBaths = [{ purpose: 'wash', agents: ['sodium carbonate'], pH: 8 }] as const;
    expect(asks(facts)).toBe(false);
    expect(asks({ ...facts, plannedBaths })).toBe(true);
    expect(
      asks({ ...facts, plannedBaths: [{ purpose: 'wash', agents: ['neutral detergent'], pH: 9 }] }),
    ).toBe(true);
  });
});
