import { describe, expect, test } from 'vitest';
import { dryingRug, dryingScenario } from '../../../test/support/dryingRoom.ts';
import { dryForecast } from './dryForecast.ts';
import { asLearnt, learnDrying, type PastRug } from './learnDrying.ts';
import { prepareRoom } from './preparedRoom.ts';
import { makeRoomRunner } from './runRoom.ts';
import { normal, seededRandom } from './seededRandom.ts';
import { knownUnknowns } from './unknowns.ts';

const rugs = (count: number, g: number, between: number, told: number, seed = 4): readonly PastRug[] => {
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => ({
    rug: `rug ${i}`,
    construction: 'hand-knotted',
    g: { likely: g * Math.exp(between * normal(random) + told * normal(random)), spread: told },
    resistance: { likely: 60 * Math.exp(0.2 * normal(random)), spread: 0.1 },
    criticalRegain: null,
  }));
};

test('without past rugs the first guess stands, no surer and no less sure than before', () => {
  const { g, constructions } = learnDrying([]);
  expect(g).toEqual({ likely: 1, spread: expect.closeTo(0.2, 9), runs: 0, standAlone: [] });
  expect(constructions).toEqual({});
});

test('every past rug of a slow room moves the factor to where it truly lies, and makes it surer', () => {
  const after = [1, 4, 16, 64].map((count) => learnDrying(rugs(count, 0.75, 0.05, 0.05)).g);
  expect(Math.abs((after[3]?.likely ?? 0) / 0.75 - 1)).toBeLessThan(0.02);
  expect(after[1]?.spread).toBeLessThan(after[0]?.spread ?? 0);
  expect(after[3]?.spread).toBeLessThan(after[1]?.spread ?? 0);
  // Rugs differ by 0.05 however many were dried.
  expect(after[3]?.spread).toBeGreaterThan(0.04);
});

test('a middle known to be that of many sure rugs is their mean, as the normal model has it', () => {
  const told = [0.9, 0.95, 1.0, 1.05, 1.1].map((likely, i) => ({
    ...{ rug: `rug ${i}`, construction: null, resistance: null, criticalRegain: null },
    g: { likely, spread: 0.02 },
  }));
  const many = Array.from({ length: 40 }, () => told).flat();
  const mean = told.reduce((sum, { g }) => sum + Math.log(g.likely), 0) / told.length;
  expect(learnDrying(many).g.likely).toBeCloseTo(Math.exp(mean), 2);
});

test('a rug far from all others is named and hardly counts', () => {
  const good = rugs(12, 0.9, 0.03, 0.03);
  const strange: PastRug = { ...(good[0] as PastRug), rug: 'strange', g: { likely: 3, spread: 0.03 } };
  const [without, withIt] = [learnDrying(good).g, learnDrying([...good, strange]).g];
  expect(withIt.standAlone).toEqual(['strange']);
  expect(Math.abs(withIt.likely / without.likely - 1)).toBeLessThan(0.04);
});

describe('a room that dries more slowly than reckoned', () => {
  const scenario = dryingScenario({ rugs: [dryingRug({ construction: 'hand-knotted' })] });
  const truthOf = (g: number) => {
    const room = prepareRoom({ ...scenario, room: { ...scenario.room, g } });
    return makeRoomRunner(room)(knownUnknowns(room), [1, 2, 3, 5]);
  };
  const slow = truthOf(0.7);
  const readings = [1, 2, 3, 5].map((hour, k) => ({ hour, massKg: 18 * (1 + (slow.regains[0]?.[k] ?? 0)) }));

  test('teaches by its own readings, and its next rug is forecast better before anyone weighs it', () => {
    const pastOf = (): PastRug => {
      const answer = dryForecast({ ...scenario, uncertainty: true, rugs: [dryingRug({ readings })] });
      const evidence = answer.ok ? answer.value.rugs[0]?.spread?.evidence : null;
      if (evidence === null || evidence === undefined) throw new Error('nothing said');
      return { ...evidence, rug: 'past', construction: 'hand-knotted' };
    };
    const learning = learnDrying(Array.from({ length: 6 }, pastOf));
    expect(learning.g.likely).toBeLessThan(0.8);
    const hoursOf = (of: typeof scenario) => {
      const answer = dryForecast(of);
      return answer.ok ? (answer.value.rugs[0]?.hoursToTarget ?? Number.NaN) : Number.NaN;
    };
    const truth = slow.targetAtHour[0] ?? Number.NaN;
    const [before, after] = [hoursOf(scenario), hoursOf(asLearnt(scenario, learning))];
    expect(Math.abs(after / truth - 1)).toBeLessThan(Math.abs(before / truth - 1) / 2);
  });
  test('but what the scenario says itself stays', () => {
    const said = { ...scenario, room: { ...scenario.room, g: 1.1 }, rugs: [dryingRug({ resistance: 20 })] };
    const { room, rugs: of } = asLearnt(said, learnDrying(rugs(5, 0.7, 0.05, 0.05)));
    expect(room.g).toBe(1.1);
    expect(of[0]?.resistance).toBe(20);
  });
});
