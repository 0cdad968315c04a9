import { describe, expect, test } from 'vitest';
import {
  entriesOf,
  identified,
  lookedOver,
  measured,
  opened,
  received,
  storyStart,
  weighed,
} from '../../test/support/rugStory.ts';
import { dryingPlaceOf } from './dryingPlace.ts';
import { dryingRugOf, plannedDryingRug } from './dryingRug.ts';
import { standingOf } from './evolve.ts';
import type { RugFact } from './facts/index.ts';

const known: readonly RugFact[] = [opened, received, measured, weighed, lookedOver, identified];
const wetted: RugFact = { type: 'StepStarted', step: '4-wet-out', wets: true };
const hung: RugFact = {
  ...{ type: 'DryingStarted', posture: 'flat on mesh', place: 'Drying room, Mesh 1' },
  ...{ room: 'attic', spot: 'mesh-1', extraction: 'centrifuge' },
};
const told = (...facts: readonly RugFact[]) => standingOf(entriesOf([...known, ...facts]));
const rugOf = (...facts: readonly RugFact[]) => {
  const rug = dryingRugOf(told(...facts), 'r1');
  if (rug?.ok !== true) throw new Error('it dries nowhere');
  return rug.value;
};

describe('a rug in the drying room, as its dossier tells of it', () => {
  test('where it lies, since when it is wet, and how the water was taken out', () => {
    expect(rugOf(wetted, hung)).toMatchObject({
      ...{ room: 'attic', spot: 'mesh-1', extraction: 'centrifuge', ovenDryFrom: 'weighed' },
      ...{ wettedAt: '2026-03-02T08:06:00.000Z', hungAt: '2026-03-02T08:07:00.000Z' },
      postures: [{ posture: 'mesh' }],
    });
  });

  test('moved and turned, it keeps the hour it was first hung and the order of its postures', () => {
    const rug = rugOf(
      wetted,
      hung,
      { type: 'RugTurned', posture: 'face down flat' },
      { type: 'DryingStarted', posture: 'hung', place: 'Drying room, Pole 1', room: 'attic', spot: 'pole-1' },
    );
    expect(rug.hungAt).toBe('2026-03-02T08:07:00.000Z');
    expect(rug.postures.map(({ posture }) => posture)).toEqual(['mesh', 'floor', 'hung']);
    expect(rug).toMatchObject({ spot: 'pole-1', extraction: 'centrifuge' });
  });

  test('a meter counts against the latest dry reference, and a reading from before the pole does not count', () => {
    const reading = (how: Partial<Extract<RugFact, { type: 'DryingReading' }>>): RugFact => ({
      type: 'DryingReading',
      photos: [],
      ...how,
    });
    const { looks } = rugOf(
      wetted,
      hung,
      reading({ massKg: 11, happenedAt: storyStart }),
      reading({
        meterDryReference: 7,
        meter: [
          { reading: 12, at: 'middle' },
          { reading: 19, at: 'edge' },
        ],
      }),
      reading({ meter: [{ reading: 9, at: 'middle' }] }),
    );
    expect(looks.map(({ massKg, meterAboveDry }) => [massKg, meterAboveDry])).toEqual([
      [undefined, 12],
      [undefined, 2],
    ]);
  });

  test('accepted as dry, or wetted and hung nowhere yet, it is in no room', () => {
    expect(dryingPlaceOf(told(wetted, hung, { type: 'DryAccepted', standard: 'full' }))).toBeNull();
    expect(dryingPlaceOf(told(wetted))).toBeNull();
  });
});

describe('a rug before its wash', () => {
  test('without a plan it counts as soaked and on the floor, the slowest of both', () => {
    const rug = plannedDryingRug(told(), 'r1', null, storyStart, true);
    expect(rug).toMatchObject({ ok: true, value: { extraction: null, postures: [{ posture: 'floor' }] } });
  });

  test('without its size nothing can be forecast', () => {
    const unmeasured = standingOf(entriesOf([opened, received]));
    expect(plannedDryingRug(unmeasured, 'r1', null, storyStart, true)).toMatchObject({
      ok: false,
      problem: { code: 'size-not-measured' },
    });
  });

  test('nobody weighed it: its mass is as wide as its construction’s band', () => {
    const unweighed = standingOf(entriesOf(known.filter(({ type }) => type !== 'RugWeighed')));
    const rug = plannedDryingRug(unweighed, 'r1', null, storyStart, true);
    // Common practice, kg/m² of knotted pile: 2 to 6.5 (data/wash/shopFacts.json); the rug has 2 m².
    expect(rug).toMatchObject({
      ok: true,
      value: {
        ovenDryFrom: 'mass band',
        ovenDry: { least: expect.closeTo(4, 1), most: expect.closeTo(13, 1) },
      },
    });
  });
});
