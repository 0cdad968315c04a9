import { describe, expect, test } from 'vitest';
import { bathPh, solutionOf } from '../chemistry/index.ts';
import { bathAcid as acidFor } from './bathAcid.ts';
import type { Agent } from './planFacts.ts';
import type { MixingPlace, StockedProduct } from './productFor.ts';
import type { Mixed } from './stepMix.ts';

const wash: Mixed = {
  agents: ['neutral detergent'],
  amounts: [
    { agent: 'detergent concentrate', least: 30, most: 80, unit: 'g', source: 'workshop-setting' },
    { agent: 'water, at most 22 °C', least: 16, most: 16, unit: 'L', source: 'workshop-setting' },
  ],
  targetPh: { least: 6, most: 7 },
  temperatureC: { least: 17, most: 22 },
};
const crystals: StockedProduct = {
  ...{ id: 'c1', name: 'Hearth crystals', serves: ['citric acid'], unit: 'g', removed: null },
  parts: [{ kind: 'acid', chemical: 'citric acid, anhydrous', strength: { value: 99.5, unit: '% w/w' } }],
  lots: [{ lot: 'K-2', amount: 5000, expires: '2027-06-30' }],
};
const vinegar: StockedProduct = {
  ...{
    id: 'v1',
    name: 'Pantry vinegar',
    serves: ['acetic acid'],
    unit: 'mL',
    densityGPerMl: 1,
    removed: null,
  },
  parts: [{ kind: 'acid', chemical: 'acetic acid', strength: { value: 6, unit: '% w/w' } }],
  lots: [{ lot: 'V-1', amount: 5000 }],
};
const hard = { on: '2026-09-01', alkalinityMgPerLCaCO3: 245, hardnessMgPerLCaCO3: 286, pH: 7.6 };
const place = (more: Partial<MixingPlace> = {}): MixingPlace => ({
  ...{ shelf: [crystals, vinegar], water: hard, today: '2026-11-25' },
  ...more,
});

const bathAcid = (step: Mixed, from: MixingPlace, ...forbiddenAgents: readonly Agent[]) =>
  acidFor(step, from, { forbiddenAgents });

describe('the acid of a neutral bath', () => {
  test('brings hard water to the middle of the band, by the charge balance of what is weighed', () => {
    const found = bathAcid(wash, place());
    expect(found).toMatchObject({ waterPh: 7.6, line: { agent: 'citric acid', lot: 'K-2' } });
    const solution = solutionOf({
      ...{ litres: 16, temperatureC: 22, alkalinityMgPerLCaCO3: 245, activity: 'davies', openToAir: false },
      add: [{ agent: 'citric acid, anhydrous', grams: (found?.line.amount?.computed ?? 0) * 0.995 }],
    });
    const ph = solution.ok ? bathPh(solution.value) : solution;
    expect(ph.ok && ph.value.pH).toBeCloseTo(6.5, 2);
  });

  test('is taken from what stands in date on the shelf', () => {
    const lots = [{ lot: 'K-1', amount: 400, expires: '2026-01-31' }];
    const found = bathAcid(wash, place({ shelf: [{ ...crystals, lots }, vinegar] }));
    expect(found?.line).toMatchObject({ agent: 'acetic acid', product: { name: 'Pantry vinegar' } });
  });

  test('is never one that this rug does not bear', () => {
    expect(bathAcid(wash, place(), 'citric acid')?.line.agent).toBe('acetic acid');
    expect(bathAcid(wash, place(), 'citric acid', 'acetic acid')).toBeNull();
  });

  test('is asked for as well where nobody read the water, or too long ago', () => {
    expect(bathAcid(wash, place({ water: null }))?.waterPh).toBeNull();
    const old = { ...hard, on: '2024-01-01', pH: 6.8 };
    expect(bathAcid(wash, place({ water: old }))?.waterPh).toBeNull();
  });

  test('is none where the water is mild, the bath sets its own pH, or nothing but water is laid', () => {
    expect(bathAcid(wash, place({ water: { ...hard, pH: 6.9 } }))).toBeNull();
    expect(bathAcid({ ...wash, agents: ['citric acid'] }, place())).toBeNull();
    expect(bathAcid({ ...wash, agents: ['water'] }, place())).toBeNull();
  });
});
