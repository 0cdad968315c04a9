import { describe, expect, test } from 'vitest';
import { inventedPlan } from '../../../test/support/inventedPlan.ts';
import { entriesOf, knownRug } from '../../../test/support/rugStory.ts';
import { grades, shippedRulebook } from '../../core/wash/index.ts';
import { type RugFact, standingOf } from '../../dossier/index.ts';
import { clothPlot, phPlot, runOffPlot, warmthPlot } from './bathPlots.ts';
import { wetVerdict } from './wetVerdict.ts';

// Limits of the wash floor are workshop settings of this project; no published source to check against.

const limits = shippedRulebook.stops;
const known = knownRug().entries.map(({ fact }) => fact);
const tested: RugFact = {
  ...{ type: 'DyeTested', colour: 'red', side: 'face', liquid: 'planned bath', photos: [] },
  reading: { kind: 'graded', by: 'eye', staining: '4', control: '5' },
};
const bath = (more: object): RugFact => ({ type: 'BathMeasured', photos: [], ...more }) as RugFact;
const runs: RugFact = { type: 'StopCalled', stop: 's1', condition: 'cloth grade' };

/** Told a minute apart. */
function told(...facts: readonly RugFact[]) {
  const standing = standingOf(entriesOf([...known, tested, ...facts]));
  const visit = standing.visits.at(-1);
  if (visit === undefined) throw new Error('no visit');
  return { standing, visit, plan: inventedPlan, step: undefined, limits };
}
const tones = (plot: ReturnType<typeof phPlot>) => plot?.readings.map(({ verdict }) => verdict.tone);

describe('a reading stands before the limits that held when it was taken', () => {
  test('a pH of the rescue is judged by the rescue’s band, those before and after it by the plan’s', () => {
    const rescue = bath({ ph: 4.2 });
    const cleared: RugFact = { type: 'StopCleared', stop: 's1', how: 'Rescued.' };
    const plot = phPlot(told(bath({ ph: 6.5 }), runs, rescue, cleared, bath({ ph: 4.2 })));
    expect(tones(plot)).toEqual(['ok', 'ok', 'stop']);
    expect(plot?.limits).toContain('0.5 outside it is a stop');
    expect(phPlot(told(runs, rescue))?.limits).toContain('never below 4');
  });

  test('a white cloth stops half a grade below the colour it was pressed on, and only there', () => {
    const plot = clothPlot(
      told().standing,
      told(bath({ whiteClothGrade: '4', clothOn: 'red' }), bath({ whiteClothGrade: '3-4', clothOn: 'red' }))
        .visit,
    );
    expect(tones(plot)).toEqual(['ok', 'stop']);
    const stop = plot?.readings[0]?.zones.find(({ tone }) => tone === 'stop');
    expect(stop?.until).toBeLessThan(grades.indexOf('4'));
    expect(stop?.until).toBeGreaterThan(grades.indexOf('3-4'));
  });

  test('run-off is judged beside what ran off before it, never beside what came later', () => {
    const plot = runOffPlot(
      told(bath({ runOff: 'clear' }), bath({ runOff: 'faint colour' }), bath({ runOff: 'soil' })).visit,
      limits,
    );
    expect(tones(plot)).toEqual(['ok', 'caution', 'ok']);
  });

  test('what was never read has no picture', () => {
    const nothing = told(bath({ ph: 6 }));
    expect([warmthPlot(nothing, String), clothPlot(nothing.standing, nothing.visit)]).toEqual([null, null]);
  });
});

describe('wet minutes beside what the rest of the plan takes', () => {
  test.each([
    [10, { least: 8, most: 15 }, 'ok', 'the rest fits'],
    [10, { least: 18, most: 25 }, 'caution', 'fits only if'],
    [10, { least: 26, most: 30 }, 'caution', '6 min too few'],
    [30, { least: 0, most: 0 }, 'stop', 'used up'],
  ] as const)('%d of 30 used and %o to come', (used, ahead, tone, words) => {
    const verdict = wetVerdict(used, 30, ahead);
    expect(verdict.tone).toBe(tone);
    expect(verdict.words).toContain(words);
  });
});
