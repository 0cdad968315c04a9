import { describe, expect, test } from 'vitest';
import nameTable from '../../../data/chemistry/agentNames.json' with { type: 'json' };
import { chemicalAgents } from './acidTable.ts';
import { readAgentName } from './agentName.ts';

const read = (name: string): string => {
  const found = readAgentName(name);
  return found.ok ? found.value.agent.agent : found.problem.code;
};

describe('an agent is known by the names a chemist or a washer writes', () => {
  // Synonyms as in the CRC Handbook, sections 3 and 4, and in shops: common practice, no published source.
  test.each([
    ['citric acid monohydrate', 'citric acid, monohydrate'],
    ['Citric Acid (monohydrate)', 'citric acid, monohydrate'],
    ['citric acid.H2O', 'citric acid, monohydrate'],
    ['anhydrous citric acid', 'citric acid, anhydrous'],
    ['C6H8O7·H2O', 'citric acid, monohydrate'],
    ['sodium carbonate decahydrate', 'sodium carbonate, decahydrate'],
    ['Na2CO3.10H2O', 'sodium carbonate, decahydrate'],
    ['Na₂CO₃', 'sodium carbonate'],
    ['sodium carbonate anhydrous', 'sodium carbonate'],
    ['washing soda', 'sodium carbonate, decahydrate'],
    ['soda ash', 'sodium carbonate'],
    ['Baking soda', 'sodium bicarbonate'],
    ['sodium hydrogencarbonate', 'sodium bicarbonate'],
    ['white vinegar', 'acetic acid'],
    ['sulphuric acid', 'sulfuric acid'],
    ['sodium metabisulphite', 'sodium metabisulfite'],
    ['borax', 'borax, decahydrate'],
    ['sodium citrate dihydrate', 'trisodium citrate, dihydrate'],
    ['trisodium phosphate 12-hydrate', 'trisodium phosphate, dodecahydrate'],
    ['oxalic acid dihydrate', 'oxalic acid, dihydrate'],
  ])('%s', (name, agent) => {
    expect(read(name)).toBe(agent);
  });

  test('every name of the tables reads as the agent it stands for', () => {
    for (const { agent } of chemicalAgents) expect(read(agent)).toBe(agent);
    for (const { name, agent } of nameTable.rows) {
      const found = readAgentName(name, true);
      expect([name, found.ok ? found.value.agent.agent : found.problem]).toEqual([name, agent]);
    }
  });
});

describe('what a name leaves open is said', () => {
  test('vinegar is taken as 5 % unless its label says otherwise', () => {
    expect(readAgentName('white vinegar')).toMatchObject({ value: { strength: 0.05, assumed: 'strength' } });
    expect(readAgentName('white vinegar', true)).toMatchObject({ value: { assumed: null } });
  });
  test('a name without its water is taken dry and said to be; one that says so is not', () => {
    expect(readAgentName('sodium carbonate')).toMatchObject({ value: { assumed: 'hydrate' } });
    expect(readAgentName('sodium carbonate, anhydrous')).toMatchObject({ value: { assumed: null } });
    expect(readAgentName('acetic acid')).toMatchObject({ value: { assumed: null } });
  });
  test('a strength that stands in the name is the strength', () => {
    for (const [name, agent, strength] of [
      ['acetic acid 80 %', 'acetic acid', 0.8],
      ['3% hydrogen peroxide solution', 'hydrogen peroxide', 0.03],
      ['ammonia solution, 25 % w/w', 'ammonia', 0.25],
      ['white vinegar 6 %', 'acetic acid', 0.06],
    ] as const) {
      expect(readAgentName(name)).toMatchObject({ value: { agent: { agent }, strength, assumed: null } });
    }
    // Grams in 100 mL are no share of the mass.
    expect(read('acetic acid 5 % w/v')).toBe('agent-unknown');
  });
  test('bleach and ammonia water are refused without a strength', () => {
    expect(read('household bleach')).toBe('agent-strength-missing');
    expect(read('ammonium hydroxide')).toBe('agent-strength-missing');
  });
});

describe('a name nobody knows', () => {
  const nearTo = (name: string) => {
    const found = readAgentName(name);
    if (found.ok || found.problem.code !== 'agent-unknown') throw new Error(`${name} was read`);
    return found.problem.facts.near;
  };
  test.each([
    ['citrc acid', 'citric acid, anhydrous'],
    ['sodium carbonate trihydrate', 'sodium carbonate, decahydrate'],
    ['sodium metabisufite', 'sodium metabisulfite'],
    ['acetic', 'acetic acid'],
    ['phosphate', 'trisodium phosphate'],
  ])('%s is answered with names like it', (name, like) => {
    expect(nearTo(name)).toContain(like);
  });
  test('nothing like it is no guess', () => {
    expect(nearTo('moon dust')).toEqual([]);
  });
});
