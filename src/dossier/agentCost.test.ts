import { expect, test } from 'vitest';
import { inventedPlan } from '../../test/support/inventedPlan.ts';
import type { PlanStep } from '../core/wash/index.ts';
import { agentCost } from './agentCost.ts';
import { emptyShelf, type ShelvedAgent } from './shelf.ts';

const soap: ShelvedAgent = {
  ...{ agent: 's1', name: 'Meadow wool wash', serves: ['neutral detergent'], unit: 'mL', hazards: [] },
  ...{ parts: [{ kind: 'surfactant', value: 25, unit: '% w/w' }], densityGPerMl: 1 },
  ...{ lots: [{ lot: 'M-7', amount: 4000 }], removed: null },
  ...{ price: { amountMinor: 4000, currency: 'EUR' }, pack: 5000 },
};
const [anyStep] = inventedPlan.steps;
if (anyStep === undefined) throw new Error('the invented plan has steps');
const { targetPh: _ph, ...step } = anyStep;
const wash: PlanStep = {
  ...step,
  agents: ['neutral detergent'],
  amounts: [
    { agent: 'detergent concentrate', least: 50, most: 125, unit: 'g', source: 'workshop-setting' },
    { agent: 'water, at most 28 °C', least: 10, most: 10, unit: 'L', source: 'workshop-setting' },
  ],
};
const shelf = (...agents: readonly ShelvedAgent[]) => ({ ...emptyShelf, agents });

test('agents cost what they take of a pack, from the least to the most', () => {
  // 50 to 125 mL of a pack of 5 L at 40.00: 0.40 to 1.00.
  expect(agentCost([wash], shelf(soap), '2026-11-25')).toEqual({
    costs: [{ currency: 'EUR', leastMinor: 40, mostMinor: 100 }],
    unknown: [],
  });
});

test('a part of a cent counts as a whole one, and two steps add up', () => {
  const dear = { ...soap, price: { amountMinor: 4001, currency: 'EUR' } };
  expect(agentCost([wash, wash], shelf(dear), '2026-11-25').costs).toEqual([
    { currency: 'EUR', leastMinor: 81, mostMinor: 201 },
  ]);
});

test('an agent without a price, or without a product, is named and never counted as free', () => {
  const { price: _price, ...unpriced } = soap;
  expect(agentCost([wash], shelf(unpriced), '2026-11-25')).toEqual({
    costs: [],
    unknown: ['Meadow wool wash'],
  });
  expect(agentCost([wash], emptyShelf, '2026-11-25').unknown).toEqual(['neutral detergent']);
});

test('what a step takes from the bath that was mixed before is not paid twice', () => {
  const { amounts: _amounts, ...again } = wash;
  const second = { ...again, amounts: [] };
  expect(agentCost([wash, second], shelf(soap), '2026-11-25')).toEqual(
    agentCost([wash], shelf(soap), '2026-11-25'),
  );
});
