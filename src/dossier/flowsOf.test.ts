import { describe, expect, test } from 'vitest';
import { asWasher, knownRug, type RugStory } from '../../test/support/rugStory.ts';
import { findingsOf, flowsOf, planOf, type RugFact } from './index.ts';

// Flows and what they forbid are common practice and cci-13-15, iicrc-s500 (data/wash/flows.json); that a
// suspicion counts as the worst case is a rule of this project.

const begun = (flow: string, more: object = {}): RugFact => ({
  ...{ type: 'FlowBegun', flow, why: 'Smelled it' },
  ...more,
});
const stiff: RugFact = {
  ...{ type: 'MarkRecorded', mark: 'm1', word: 'matting', side: 'face', shape: 'point' },
  ...{ pointsMm: [{ xMm: 300, yMm: 900 }], grade: 1, activity: 'stable', photos: [] },
};
const places = ({ standing, now }: RugStory) =>
  flowsOf(standing, asWasher(now)).map(({ flow, mark, begun: by }) => [flow.id, mark, by?.why]);

describe('a flow begun by hand', () => {
  test('stands beside those the record calls for, with its reason and its place', () => {
    const story = knownRug().given(
      stiff,
      begun('browning', { mark: 'm1' }),
      begun('flood', { where: 'cellar end' }),
    );
    expect(places(story)).toEqual([
      ['browning', 'm1', 'Smelled it'],
      ['flood', undefined, 'Smelled it'],
    ]);
    const look: RugFact = {
      type: 'FlowLogged',
      flow: 'browning',
      step: 'look',
      mark: 'm1',
      photos: ['a'.repeat(64)],
    };
    expect(story.refuses(look)).toBeNull();
    expect(knownRug().given(stiff).refuses(look)).toMatchObject({ code: 'stain-unknown' });
  });

  test.each([
    ['urine', 'urine'],
    ['colour-run', 'colour run'],
    ['mould', 'active mould'],
    ['flood', 'category 3 water'],
  ])('%s makes %s a suspicion, which is the worst case until it is ruled out', (flow, finding) => {
    const story = knownRug().given(begun(flow));
    expect(findingsOf(story.standing)).toContainEqual({ code: finding, certainty: 'suspected' });
    const out: RugFact = {
      type: 'FindingNoted',
      finding,
      certainty: 'ruled out',
      evidence: 'seen',
    } as RugFact;
    expect(findingsOf(story.given(out).standing)).toContainEqual({ code: finding, certainty: 'ruled out' });
  });

  test('urine that somebody smelled asks for its own dye tests before water', () => {
    const green: RugFact = {
      ...{ type: 'ColoursNamed' },
      colours: [{ colour: 'green', name: 'green, leaves', kind: 'field colour', dyeClass: 'acid' }],
    };
    const { standing, now } = knownRug().given(green, begun('urine'));
    const plan = planOf(standing, asWasher(now).settings, now);
    expect(plan).toMatchObject({ ok: true });
    expect(plan.ok && plan.value.missingDyeTests.some(({ atUrinePlace }) => atUrinePlace)).toBe(true);
  });

  test('is not begun twice at one place, nor where the record calls for it already', () => {
    const story = knownRug().given(begun('urine'));
    expect(story.refuses(begun('urine'))).toMatchObject({ code: 'flow-there-already' });
    const flooded: RugFact = {
      ...{ type: 'FindingNoted', finding: 'category 3 water', certainty: 'suspected', evidence: 'seen' },
    };
    expect(knownRug().given(flooded).refuses(begun('flood'))).toMatchObject({ code: 'flow-there-already' });
  });

  test('must be a known flow, at a mark on record, begun by somebody who washes', () => {
    const story = knownRug();
    expect(story.refuses(begun('ironing'))).toMatchObject({
      code: 'flow-unknown',
      facts: { flow: 'ironing' },
    });
    expect(story.refuses(begun('urine', { mark: 'm9' }))).toMatchObject({ code: 'stain-unknown' });
    const counter = { ...asWasher(story.now), person: { person: 'ines', roles: ['counter'] as const } };
    expect(story.refuses(begun('urine'), counter)).toMatchObject({ code: 'role-missing' });
  });
});

test('urine that was found and drawn nowhere calls for its flow, whose first step is to find the place', () => {
  const found: RugFact = { type: 'FindingNoted', finding: 'urine', certainty: 'suspected', evidence: 'seen' };
  expect(places(knownRug().given(found))).toEqual([['urine', undefined, undefined]]);
});
