import { describe, expect, test } from 'vitest';
import { inventedPlan } from '../../test/support/inventedPlan.ts';
import { entriesOf, knownRug } from '../../test/support/rugStory.ts';
import { firstSettings, type RugFact, raisedStop, standingOf, stopSaid, stopsRaised } from './index.ts';

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

describe('a stop that a band raised tells what was read and the band that held then', () => {
  const calledBy = (fact: RugFact, given = entries) => {
    const standing = standingOf(given);
    return stopsRaised(standing, fact, asked).map((id) =>
      raisedStop(id, 's', { entry: 'e', fact, standing }),
    );
  };
  const said = (fact: RugFact, units: 'metric' | 'customary' = 'metric', given = entries) =>
    calledBy(fact, given).map((called) => stopSaid(called, units));
  const bath = (more: object): RugFact => ({ ...{ type: 'BathMeasured', photos: [] }, ...more });

  // The invented plan keeps its bath at pH 5 to 7.3; half a unit outside it is the delivered setting.
  test('in words after the condition', () => {
    expect(said(bath({ ph: 7.9 }))).toEqual(['pH is too far outside its band. pH 7.9; keep 5 to 7.3.']);
    expect(said(rinse(8.5, 7.9))).toEqual(['pH is too far outside its band. pH 8.5; keep 5 to 7.9.']);
  });

  test('in the degrees the workshop reads', () => {
    const mostC = inventedPlan.bounds.temperatureC;
    // 0 °C is 32 °F; 1 K is 1.8 °F: definition of the degree Fahrenheit.
    const [metric, customary] = (['metric', 'customary'] as const).map(
      (units) => said(bath({ temperatureC: 60 }), units)[0],
    );
    expect(metric).toContain(`60 °C; keep 0 to ${mostC} °C.`);
    expect(customary).toContain('140 °F; keep 32 to ');
  });

  test('that of the rescue while a colour runs, and what was recorded stays as it was', () => {
    const rescued = entriesOf([
      ...entries.map(({ fact }) => fact),
      { type: 'StopCalled', stop: 's9', condition: 'cloth grade' },
    ]);
    expect(said(bath({ ph: 3.4 }), 'metric', rescued)).toEqual([
      'pH is too far outside its band. pH 3.4; keep 4 to 4.5.',
    ]);
    expect(calledBy(bath({ ph: 7.9 }))).toMatchObject([
      { broke: { quantity: 'pH', read: 7.9, least: 5, most: 7.3 } },
    ]);
  });

  test('and one of before the figures were kept, or that no band raised, only its condition', () => {
    const old = { condition: 'pH is 0.5 outside its band.' };
    expect(stopSaid(old, 'metric')).toBe(old.condition);
    expect(said(bath({ runOff: 'strong colour' }))).toEqual(['The run-off gets more and more coloured.']);
  });
});
