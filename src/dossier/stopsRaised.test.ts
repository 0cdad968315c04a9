import { describe, expect, test } from 'vitest';
import { inventedPlan } from '../../test/support/inventedPlan.ts';
import { entriesOf, knownRug } from '../../test/support/rugStory.ts';
import { firstSettings, type RugFact, standingOf, stopsRaised } from './index.ts';

// Stop conditions are workshop settings of this project; no published source to check against.

const onRecord = {
  ...{ type: 'PlanAgreed', rulebook: 'r', fingerprint: 'f', method: 'flow wash', plan: inventedPlan },
} as unknown as RugFact;
const entries = entriesOf([...knownRug().entries.map(({ fact }) => fact), onRecord]);
const asked = { now: entries.at(-1)?.at ?? '', settings: firstSettings };
const raised = (fact: RugFact) => stopsRaised(standingOf(entries), fact, asked);
const rinse = (ph: number, supplyPh?: number): RugFact => ({
  ...{ type: 'RinseMeasured', ph },
  ...(supplyPh === undefined ? {} : { supplyPh }),
});

describe('a rinse comes to the supply’s pH, which is its end and no stop', () => {
  test('where the supply was read beside it, above the bath’s band of pH 5 to 7.3', () => {
    expect(raised({ type: 'BathMeasured', ph: 7.9, photos: [] })).toEqual(['pH off band']);
    expect(raised(rinse(7.9, 7.9))).toEqual([]);
    expect(raised(rinse(7.4, 7.9))).toEqual([]);
  });

  test('but half a unit beyond the supply it is, and nobody’s word for the supply is no supply', () => {
    expect(raised(rinse(8.5, 7.9))).toEqual(['pH off band']);
    expect(raised(rinse(7.9))).toEqual(['pH off band']);
  });

  test('and a supply more alkaline than a rinse is trusted with loosens nothing', () => {
    expect(raised(rinse(9.1, 9.1))).toEqual(['pH off band']);
  });
});

describe('acid that a flow lays is kept to the band the rug is left with', () => {
  const laid = (ph: number, more: object = {}): RugFact => ({
    ...{ type: 'FlowLogged', flow: 'browning', step: 'acid', mark: 'm1', ph, photos: [] },
    ...more,
  });
  test('half a unit below it is a stop', () => {
    const { finalPh } = inventedPlan.bounds;
    if (finalPh === 'no liquid') throw new Error('the invented plan has no final band');
    expect(raised(laid(finalPh.least))).toEqual([]);
    expect(raised(laid(finalPh.least - 0.5))).toEqual(['pH off band']);
  });
  test('what only reads the water of a place is none', () => {
    expect(raised(laid(9.5, { flow: 'urine', step: 'flush' }))).toEqual([]);
  });
});

test('a disinfectant with chlorine, or that nobody knows, on a rug that bears none stops the wash', () => {
  const disinfected = (choice: string): RugFact => ({
    ...{ type: 'FlowLogged', flow: 'flood', step: 'disinfect', choice, photos: [] },
  });
  expect(raised(disinfected('chlorine'))).toEqual(['wrong agent']);
  expect(raised(disinfected('not-known'))).toEqual(['wrong agent']);
  expect(raised(disinfected('mild'))).toEqual([]);
});
