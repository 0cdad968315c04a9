import { describe, expect, test } from 'vitest';
import { inventedPlan } from '../../test/support/inventedPlan.ts';
import {
  asOwner,
  coloursNamed,
  entriesOf,
  identified,
  lookedOver,
  measured,
  minutesLater,
  opened,
  RugStory,
  received,
  storyStart,
  weighed,
} from '../../test/support/rugStory.ts';
import type { Agent, PlanStep } from '../core/wash/index.ts';
import type { RugFact } from './facts/index.ts';
import { stepId } from './planFacts.ts';
import { carriedResidues, residuesIn } from './workEvents.ts';
import { firstSettings } from './workshopFacts.ts';

// Forbidden meetings: from memory of general chemistry (data/wash/mixtures.json); what clears: common practice.
const [firstStep] = inventedPlan.steps;
if (firstStep === undefined) throw new Error('the invented plan has steps');

/** A step that lays an agent at the stain m1. */
const lays = (order: number, agent: Agent, more: Partial<PlanStep> = {}): PlanStep => ({
  ...firstStep,
  ...{ order, kind: 'stain treatment', wet: true, agents: [agent], amounts: [], stain: 'm1' },
  ...more,
});
const started = (step: PlanStep): RugFact => ({ type: 'StepStarted', step: stepId(step), wets: step.wet });
const done = (step: PlanStep): RugFact => ({ type: 'StepDone', step: stepId(step) });
const agreed = (...steps: readonly PlanStep[]): RugFact => ({
  ...{ type: 'PlanAgreed', rulebook: '2026-1', method: 'flow wash', fingerprint: 'f'.repeat(64) },
  plan: { ...inventedPlan, steps: steps.map((step) => ({ ...step })) },
});
const stain: RugFact = {
  ...{ type: 'MarkRecorded', mark: 'm1', word: 'stain', side: 'face', shape: 'point', stain: 'tannin' },
  ...{ pointsMm: [{ xMm: 400, yMm: 900 }], grade: 1, activity: 'stable', photos: [] },
} as const satisfies RugFact;
const known = [opened, received, measured, weighed, lookedOver, identified, coloursNamed, stain];
const homeAgain: readonly RugFact[] = [
  { type: 'RugReturned', to: 'Almqvist', papers: [], notice: 'none' } as unknown as RugFact,
  { ...received, visit: 'v2', tag: '42' } as RugFact,
];
const atSupply: RugFact = {
  ...{ type: 'RinseMeasured', mark: 'm1', conductivityUsPerCm: 410, supplyConductivityUsPerCm: 400 },
  ...{ ph: 7.3, supplyPh: 7.4, foam: 'none' },
} as const satisfies RugFact;

/** What happened, as it stands in the record; nobody judges it again. */
const told = (...facts: readonly RugFact[]): RugStory => {
  const all = [...known, ...facts];
  return new RugStory(entriesOf(all), minutesLater(storyStart, all.length));
};
const hazardOf = (story: RugStory, fact: RugFact) => {
  const problem = story.refuses(fact);
  return problem?.code === 'residue-forbidden' ? problem.facts.hazard : null;
};

describe('what a step left in the rug', () => {
  const acid = lays(1, 'citric acid');
  test('is as acid as its own bath was read, not as the water that rinses it', () => {
    const rinse: RugFact = { ...atSupply, step: stepId(acid) };
    const bath: RugFact = { type: 'BathMeasured', step: stepId(acid), ph: 3.6, photos: [] };
    const phOf = (...facts: readonly RugFact[]) =>
      residuesIn(told(agreed(acid), started(acid), ...facts).standing, firstSettings).map(({ ph }) => ph);
    expect(phOf(bath, rinse)).toEqual([3.6]);
    // Nobody read what was laid: unknown, which counts as the most dangerous.
    expect(phOf(rinse)).toEqual([undefined]);
  });
  test('at a spotter begun and not yet logged is there already, and gone once read clear twice', () => {
    const places = (...facts: readonly RugFact[]) =>
      residuesIn(told(agreed(acid), started(acid), ...facts).standing, firstSettings).map(
        ({ where }) => where,
      );
    expect(places()).toEqual(['m1']);
    expect(places(done(acid), atSupply, atSupply)).toEqual([]);
  });
  test('chlorine is never laid after an acid until two readings at the supply', () => {
    const chlorine = lays(2, 'hypochlorite');
    const since = (...facts: readonly RugFact[]) =>
      hazardOf(told(agreed(acid, chlorine), started(acid), done(acid), ...facts), started(chlorine));
    expect(since()).toBe('chlorine gas');
    expect(since(atSupply)).toBe('chlorine gas');
    expect(since(atSupply, { ...atSupply, foam: 'some' })).toBe('chlorine gas');
    expect(since(atSupply, atSupply)).toBeNull();
  });
  test('a flammable solvent forbids heat until it is aired; rinsing does not take it out', () => {
    const solvent = lays(1, 'flammable solvent', { wet: false, kind: 'pre-spot' });
    const dry: RugFact = { type: 'DryingStarted', posture: 'flat on mesh', place: 'mesh 1', heated: true };
    const since = (...facts: readonly RugFact[]) =>
      hazardOf(told(agreed(solvent), started(solvent), done(solvent), ...facts), dry);
    expect(since()).toBe('fire or explosion in the dryer');
    expect(since(atSupply, atSupply)).toBe('fire or explosion in the dryer');
    expect(since({ type: 'SpotAired', mark: 'm1', smell: 'some' })).toBe('fire or explosion in the dryer');
    expect(since({ type: 'SpotAired', mark: 'm1', smell: 'none' })).toBeNull();
  });
});

describe('a flow of its own', () => {
  const acid: RugFact = {
    ...{ type: 'FlowLogged', flow: 'browning', step: 'acid', mark: 'm1', ph: 4.8, photos: [] },
  } as const satisfies RugFact;
  test('leaves its acid in the rug at the pH it was read at', () => {
    expect(residuesIn(told(acid).standing, firstSettings)).toMatchObject([
      { agent: 'citric acid', where: 'm1', ph: 4.8 },
    ]);
    expect(residuesIn(told(acid, atSupply, atSupply).standing, firstSettings)).toEqual([]);
  });
  test('does not lay it where chlorine may still be', () => {
    const brown = { ...stain, stain: 'cellulosic browning' } as RugFact;
    const bleach: RugFact = {
      ...{ type: 'OldTreatmentTold', agents: ['hypochlorite'], mark: 'm1', toldBy: 'the client' },
    } as const satisfies RugFact;
    const look: RugFact = {
      ...{ type: 'FlowLogged', flow: 'browning', step: 'look', mark: 'm1', photos: ['a'.repeat(64)] },
    } as const satisfies RugFact;
    const bath = lays(1, 'neutral detergent', { kind: 'wash' });
    const wet = [brown, agreed(bath), started(bath), look];
    expect(hazardOf(told(...wet, bleach), acid)).toBe('chlorine gas');
    expect(told(...wet).refuses(acid)).toBeNull();
  });
});

describe('a disinfectant after a flood', () => {
  const laid = (choice?: string): RugFact => ({
    ...{ type: 'FlowLogged', flow: 'flood', step: 'disinfect', photos: [] },
    ...(choice === undefined ? {} : { choice }),
  });
  const acid = lays(1, 'citric acid', { kind: 'acid rinse' });
  const acidAfter = (...facts: readonly RugFact[]) => hazardOf(told(agreed(acid), ...facts), started(acid));
  const { mark: _mark, ...rinsed } = atSupply as Extract<RugFact, { type: 'RinseMeasured' }>;

  test('holds an acid back for the chlorine in it until two readings stand at the supply', () => {
    expect(acidAfter(laid('chlorine'))).toBe('chlorine gas');
    expect(acidAfter(laid('chlorine'), rinsed)).toBe('chlorine gas');
    expect(acidAfter(laid('chlorine'), rinsed, rinsed)).toBeNull();
    expect(acidAfter(laid('mild'))).toBeNull();
  });
  test('counts as chlorine where nobody knows, or said, what is in it', () => {
    expect(acidAfter(laid('not-known'))).toBe('chlorine gas');
    expect(acidAfter(laid())).toBe('chlorine gas');
    expect(acidAfter(laid('none'))).toBeNull();
  });
});

describe('what a rug went home with', () => {
  const reducer = lays(1, 'metabisulfite');
  const peroxide = lays(1, 'hydrogen peroxide');
  const back = (...facts: readonly RugFact[]) =>
    told(agreed(reducer), started(reducer), done(reducer), ...homeAgain, ...facts);
  const answer: RugFact = {
    ...{ type: 'ResidueAnswered', agent: 'metabisulfite', mark: 'm1', reason: 'Sulfite strip: none.' },
  } as const satisfies RugFact;
  test('is still in it at its next receipt and forbids what may not meet it', () => {
    const story = back();
    expect(carriedResidues(story.standing, firstSettings)).toMatchObject([
      { agent: 'metabisulfite', where: 'm1' },
    ]);
    const planned = back(agreed(peroxide));
    const problem = planned.refuses(started(peroxide));
    expect(problem?.code).toBe('residue-forbidden');
    expect(JSON.stringify(problem?.facts)).toContain('from before this visit');
    expect(JSON.stringify(problem?.facts)).toContain('with a reason');
  });
  test('is cleared by readings of this visit, or answered for by a person with a reason', () => {
    expect(carriedResidues(back(atSupply, atSupply).standing, firstSettings)).toEqual([]);
    const story = back();
    expect(story.refuses(answer)).toBeNull();
    expect(hazardOf(back(answer, agreed(peroxide)), started(peroxide))).toBeNull();
  });
  test('an answer for it clears nothing that this visit has laid since', () => {
    const again = back(agreed(reducer), started(reducer), done(reducer), answer);
    expect(carriedResidues(again.standing, firstSettings)).toEqual([]);
    expect(residuesIn(again.standing, firstSettings)).toMatchObject([
      { agent: 'metabisulfite', where: 'm1' },
    ]);
  });
  test('is not answered for at the counter, nor may what this visit laid be', () => {
    const atCounter = { ...asOwner(back().now), person: { person: 'ines', roles: ['counter'] as const } };
    expect(back().refuses(answer, atCounter)?.code).toBe('role-missing');
    const now = told(agreed(reducer), started(reducer), done(reducer));
    expect(now.refuses(answer)?.code).toBe('residue-not-carried');
  });
});

describe('what others used before the rug came', () => {
  const bleach: RugFact = {
    ...{ type: 'OldTreatmentTold', agents: ['hypochlorite'], mark: 'm1', toldBy: 'the client' },
  } as const satisfies RugFact;
  const acid = lays(1, 'citric acid');
  test('counts as still there, and forbids an acid', () => {
    const story = told(bleach, agreed(acid));
    expect(carriedResidues(story.standing, firstSettings)).toMatchObject([
      { agent: 'hypochlorite', byOthers: true },
    ]);
    expect(hazardOf(story, started(acid))).toBe('chlorine gas');
  });
  test('was there from the day it came in, whenever it is told: readings since then clear it', () => {
    expect(carriedResidues(told(atSupply, atSupply, bleach).standing, firstSettings)).toEqual([]);
    expect(carriedResidues(told(atSupply, bleach).standing, firstSettings)).toHaveLength(1);
  });
  test('is told of a stain on record, or of the whole rug', () => {
    expect(told().refuses({ ...bleach, mark: 'm9' })?.code).toBe('stain-unknown');
    const { mark: _where, ...whole } = bleach;
    expect(told().refuses(whole)).toBeNull();
  });
});
