import { describe, expect, test } from 'vitest';
import { asWasher, knownRug, type RugStory } from '../../test/support/rugStory.ts';
import type { TestLiquid } from '../core/wash/index.ts';
import type { RugFactOf } from './facts/index.ts';
import { planOf } from './planFacts.ts';

const alkaline: RugFactOf<'BathPlanned'> = {
  type: 'BathPlanned',
  bath: 'second',
  purpose: 'second wash',
  agents: ['alkaline detergent'],
  ph: 8,
};

const asked = (story: RugStory) => {
  const plan = planOf(story.standing, asWasher(story.now).settings, story.now);
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value.missingDyeTests;
};
const asks = (story: RugStory, liquid: TestLiquid) => asked(story).find((one) => one.liquid === liquid);

describe('the baths of a dossier decide what its dyes are tested in', () => {
  test('every wet plan asks for the bath, the acid rinse and the margin, and none for alkali nobody means to use', () => {
    for (const liquid of ['planned bath', 'acid rinse', 'margin'] as const) {
      expect(asks(knownRug(), liquid)).toBeDefined();
    }
    expect(asks(knownRug(), 'acid rinse')?.blocksWetWork).toBe(true);
    // Ten degrees past the bath, for thirty minutes: rule of this project.
    const [bath, margin] = [asks(knownRug(), 'planned bath'), asks(knownRug(), 'margin')];
    expect((margin?.temperatureC ?? 0) - (bath?.temperatureC ?? 0)).toBe(10);
    expect(margin?.minutes).toBe(30);
    expect(asks(knownRug(), 'alkali challenge')).toBeUndefined();
  });

  test('an alkaline bath asks for the alkali challenge with its own agent, and water waits for it', () => {
    const challenge = asks(knownRug().given(alkaline), 'alkali challenge');
    expect(challenge?.agents).toEqual(['alkaline detergent']);
    expect(challenge?.pH).toBeGreaterThanOrEqual(8.5);
    expect(challenge?.blocksWetWork).toBe(true);
  });

  test('a bath that is changed or dropped asks no more for what it was', () => {
    const planned = knownRug().given(alkaline);
    const milder = planned.given({ ...alkaline, agents: ['neutral detergent'], ph: 6.5 });
    expect(asks(milder, 'alkali challenge')).toBeUndefined();
    expect(asks(planned.given({ type: 'BathDropped', bath: 'second' }), 'alkali challenge')).toBeUndefined();
  });
});

describe('a bath that this rug does not bear is not written down as meant', () => {
  test.each([
    // Chlorine dissolves wool (ISO 1833-4); the rest are rules of this project.
    [{ agents: ['hypochlorite'], ph: 9 }, 'wash-agent-forbidden'],
    [{ agents: ['citric acid', 'metabisulfite'], ph: 3 }, 'wash-mixture-forbidden'],
    [{ agents: ['alkaline detergent'], ph: 9.5 }, 'wash-bath-ph-outside'],
  ] as const)('%j', (bath, code) => {
    expect(knownRug().refuses({ ...alkaline, ...bath, agents: [...bath.agents] })?.code).toBe(code);
  });

  test('only who washes plans a bath, and what nobody planned is not dropped', () => {
    const counter = { ...asWasher(knownRug().now), person: { person: 'ines', roles: ['counter'] as const } };
    expect(knownRug().refuses(alkaline, counter)?.code).toBe('role-missing');
    expect(knownRug().refuses({ type: 'BathDropped', bath: 'other' })?.code).toBe('bath-not-planned');
  });
});
