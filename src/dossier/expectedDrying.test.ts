import { describe, expect, test } from 'vitest';
import {
  asOwner,
  asWasher,
  identified,
  lookedOver,
  measured,
  minutesLater,
  opened,
  RugStory,
  received,
  weighed,
} from '../../test/support/rugStory.ts';
import { expectedDrying } from './expectedDrying.ts';
import type { RugFact, RugFactOf } from './facts/index.ts';
import { wetBlockers } from './mayWet.ts';
import { nextStepsOf } from './nextStep.ts';
import { overrideAbout } from './overrideAbout.ts';
import { planFactsOf, planOf } from './planFacts.ts';
import { latestVisit } from './standing.ts';

const forecast = (hours: number | null): RugFactOf<'DryingForecast'> => ({
  type: 'DryingForecast',
  ...{ room: 'attic', hours, medianHours: null, share: 0.9, lookedHours: 120, among: [], scenario: {} },
});
const story = new RugStory().given(opened, received, measured, weighed, lookedOver, identified);
const visitOf = (told: RugStory) => {
  const visit = latestVisit(told.standing);
  if (visit === null) throw new Error('no visit');
  return visit;
};
const planFor = (told: RugStory) => {
  const { settings } = asOwner(told.now);
  const plan = planOf(told.standing, settings, told.now);
  if (!plan.ok) throw new Error(plan.problem.code);
  return plan.value;
};
const holdsR38 = (told: RugStory) => planFor(told).limits.some(({ rule }) => rule === 'R38');

describe('hours until dry', () => {
  // US EPA, mould course: dried within 24 to 48 hours; rule R38 of this project.
  test('a forecast past 48 h blocks the wash as hours by hand do, and one within does not', () => {
    expect(holdsR38(story)).toBe(true);
    expect(holdsR38(story.given(forecast(47)))).toBe(false);
    expect(holdsR38(story.given(forecast(49)))).toBe(true);
    expect(planFor(story.given(forecast(49))).method).toBe('dry only');
  });

  test('a forecast without an end counts with the hours it looked at', () => {
    const endless = story.given(forecast(null));
    expect(expectedDrying(visitOf(endless))).toEqual({
      hours: 120,
      from: 'forecast of the drying room, no end in sight by then',
    });
    expect(holdsR38(endless)).toBe(true);
  });

  test('the owner may put hours by hand in place of a forecast and says why; a washer may not', () => {
    const slow = story.given(forecast(60));
    const byHand: RugFact = { type: 'DryingExpected', hours: 30, why: 'Two machines come tonight.' };
    expect(slow.refuses(byHand, asWasher(slow.now))?.code).toBe('drying-hours-need-owner');
    expect(slow.refuses({ type: 'DryingExpected', hours: 30 })?.code).toBe('drying-hours-need-owner');
    const set = slow.given(byHand);
    expect(expectedDrying(visitOf(set))).toEqual({ hours: 30, from: 'estimated by hand' });
    expect(expectedDrying(visitOf(set.given(forecast(55))))?.hours).toBe(55);
  });

  test('the promise is held against the forecast, not against a guess made before it', () => {
    const told = story.given({ type: 'DryingExpected', hours: 12 }).given(forecast(40));
    const facts = planFactsOf(told.standing, asOwner(told.now).settings, told.now);
    expect(facts).toMatchObject({ ok: true, value: { expectedDryingHours: 40 } });
  });

  test('an override of R38 is for the hours it was granted for', () => {
    const slow = story.given(forecast(60));
    const about = overrideAbout(planOf(slow.standing, asOwner(slow.now).settings, slow.now), 'R38') ?? [];
    expect(about).toEqual(['60 h, forecast of the drying room, dry by then in nine of ten']);
    const override: RugFact = {
      type: 'OverrideGranted',
      rule: 'R38',
      reason: 'Heirloom, flooded.',
      about: [...about],
    };
    const granted = slow.given(override);
    expect(planFor(granted).overridden.map(({ rule }) => rule)).toContain('R38');
    expect(holdsR38(granted.given(forecast(61)))).toBe(true);
  });
});

describe('the age of a forecast', () => {
  const stale = (told: RugStory, hours: number) => {
    const now = minutesLater(told.now, hours * 60);
    const blockers = wetBlockers(told.standing, asOwner(now).settings, now);
    return blockers.some(({ code }) => code === 'drying-forecast-stale');
  };

  test('after twelve hours it is asked again before the water, though the plan stays as it was', () => {
    const made = story.given(forecast(30));
    expect([stale(made, 11), stale(made, 13)]).toEqual([false, true]);
    expect(holdsR38(made.later(13 * 60))).toBe(false);
    expect(stale(story.given({ type: 'DryingExpected', hours: 30 }), 40)).toBe(false);
  });
});

test('a rug that hung six hours without a turn is to be turned before anything else', () => {
  const wet: readonly RugFact[] = [
    { type: 'StepStarted', step: '4-wet-out', wets: true },
    { type: 'StepDone', step: '4-wet-out' },
    { type: 'DryingStarted', posture: 'hung', place: 'pole 1' },
  ];
  // Folded without judging: how it came to be wet is not what this is about.
  const entries = wet.map((fact, index) => ({
    ...{
      id: `w${index}`,
      stream: 'rug/r1',
      revision: 20 + index,
      by: 'tobin',
      version: 1,
      seal: `w${index}`,
    },
    ...{ at: minutesLater(story.now, index), fact },
  }));
  const hung = new RugStory([...story.entries, ...entries], story.now);
  const at = (hours: number) => {
    const now = minutesLater(story.now, hours * 60);
    return nextStepsOf(hung.standing, asOwner(now).settings, now)[0]?.deed.code;
  };
  expect([at(2), at(6.1)]).toEqual(['take-drying-reading', 'turn-rug']);
});
