import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Agent, agents, type PlanFacts } from './planFacts.ts';
import { type NextLiquid, residueBlock, residuesOf, type WorkEvent } from './residue.ts';
import { shippedRulebook } from './rulebook.ts';

// Forbidden meetings: rules of this project, from memory of general chemistry (data/wash/mixtures.json).
const rug: PlanFacts = {
  route: 'rug in use',
  areaM2: 4,
  pile: { wool: 1 },
  foundation: { warp: 'cotton', weft: 'cotton' },
};
const bounds = { forbiddenPairs: [] } as const;
const limits = shippedRulebook.residues;
const good: WorkEvent = { kind: 'rinse read', where: 'm1', isAtSupply: true };
const laid = (agent: Agent, where: string | null = 'm1', ph?: number): WorkEvent => ({
  ...{ kind: 'laid', where, agents: [agent] },
  ...(ph === undefined ? {} : { ph }),
});
const blocks = (events: readonly WorkEvent[], next: NextLiquid, facts = rug) =>
  residueBlock(facts, residuesOf(events, limits), next, bounds);
const peroxide: NextLiquid = { what: 'peroxide', agents: ['hydrogen peroxide'], ph: { least: 6, most: 7.5 } };
const reducer: NextLiquid = { what: 'reducer', agents: ['metabisulfite'], ph: { least: 4.5, most: 6 } };

describe('what is still in the rug', () => {
  test('peroxide is not laid where a reducer may still be, and the card says how to clear it', () => {
    const block = blocks([laid('metabisulfite')], peroxide);
    expect(block?.hazard).toBe('violent heat');
    expect(block?.clear.join(' ')).toContain('two readings in a row');
  });
  test('water through it is no proof; two readings in a row at the supply are', () => {
    const rinsed: WorkEvent = { kind: 'rinsed', where: 'm1', freshLPerKg: 100 };
    expect(blocks([laid('metabisulfite'), rinsed, rinsed, good], peroxide)).not.toBeNull();
    const bad: WorkEvent = { ...good, isAtSupply: false };
    expect(blocks([laid('metabisulfite'), good, bad, good], peroxide)).not.toBeNull();
    expect(blocks([laid('metabisulfite'), good, good], peroxide)).toBeNull();
  });
  // Perfect mixing, (r/(r+w))ⁿ: by hand 2/(2+10) = 0.1667; its square 0.0278.
  test('the estimate of what is left falls with each fill', () => {
    const fill: WorkEvent = { kind: 'rinsed', where: null, freshLPerKg: 10 };
    expect(residuesOf([laid('citric acid', null), fill], limits)[0]?.left).toBeCloseTo(0.1667, 4);
    expect(residuesOf([laid('citric acid', null), fill, fill], limits)[0]?.left).toBeCloseTo(0.0278, 4);
  });
  test('a reading of the whole rug does not clear a small place', () => {
    const whole: WorkEvent = { ...good, where: null };
    expect(blocks([laid('metabisulfite'), whole, whole], peroxide)).not.toBeNull();
  });
  test('a sulfite meets an acid of unknown pH as if it were below 4, and one read at 5 with air', () => {
    expect(blocks([laid('citric acid')], reducer)?.rule).toBe('R24');
    expect(blocks([laid('citric acid', 'm1', 3.5)], reducer)?.rule).toBe('R24');
    expect(blocks([laid('citric acid', 'm1', 5)], reducer)).toBeNull();
  });
  test('peroxide on wool does not meet alkali of unknown pH', () => {
    expect(blocks([laid('ammonia')], peroxide)?.hazard).toBe('the fibre is destroyed');
    expect(blocks([laid('ammonia', 'm1', 8.5)], peroxide)).toBeNull();
    expect(blocks([laid('chelator')], peroxide)?.hazard).toBe('the fibre is destroyed');
    // A hydrocarbon has no pH at all.
    expect(blocks([laid('dry solvent')], peroxide)).toBeNull();
  });
  test('peroxide is not laid on a rug with a rust stain, nor with one that nobody knows', () => {
    const held = [laid('hydrogen peroxide')];
    for (const kind of ['rust', 'unknown'] as const) {
      const facts = { ...rug, stains: [{ id: 's', class: kind }] };
      expect(blocks(held, peroxide, facts)).not.toBeNull();
    }
  });
  test('solvent in the rug forbids heat until it is aired, and rinsing does not take it out', () => {
    const heat: NextLiquid = { what: 'heated drying', agents: [], isHeatedDrying: true };
    expect(blocks([laid('dry solvent'), good, good], heat)).not.toBeNull();
    expect(blocks([laid('dry solvent'), { kind: 'aired', where: 'm1' }], heat)).toBeNull();
    expect(blocks([laid('dry solvent')], { ...heat, isHeatedDrying: false })).toBeNull();
  });
});

const place = fc.constantFrom(null, 'm1', 'm2');
const event: fc.Arbitrary<WorkEvent> = fc.oneof(
  fc.record({
    kind: fc.constant('laid' as const),
    where: place,
    agents: fc.array(fc.constantFrom(...agents), { minLength: 1, maxLength: 2 }),
  }),
  fc.record({
    kind: fc.constant('rinsed' as const),
    where: place,
    freshLPerKg: fc.double({ min: 0, max: 50, noNaN: true }),
  }),
  fc.constant({ kind: 'extracted' as const }),
  fc.record({ kind: fc.constant('rinse read' as const), where: place, isAtSupply: fc.boolean() }),
  fc.record({ kind: fc.constant('aired' as const), where: place }),
);
const next: fc.Arbitrary<NextLiquid> = fc.record({
  what: fc.constant('next'),
  agents: fc.array(fc.constantFrom(...agents), { maxLength: 2 }),
  isHeatedDrying: fc.boolean(),
});

describe('laws of the residues', () => {
  test('laying one more thing on the rug, anywhere in the sequence, never unblocks a mixture', () => {
    fc.assert(
      fc.property(fc.array(event, { maxLength: 12 }), event, fc.nat(12), next, (events, more, at, liquid) => {
        fc.pre(more.kind === 'laid' && blocks(events, liquid) !== null);
        const longer = [...events.slice(0, at), more, ...events.slice(at)];
        expect(blocks(longer, liquid)).not.toBeNull();
      }),
      { numRuns: 300 },
    );
  });
  test('a verified rinse clears only what water takes out, and only at its own place', () => {
    fc.assert(
      fc.property(fc.array(event, { maxLength: 12 }), place, (events, where) => {
        const before = residuesOf(events, limits);
        const read: WorkEvent = { kind: 'rinse read', where, isAtSupply: true };
        const left = residuesOf([...events, read, read], limits);
        const stays = before.filter((one) => one.where !== where || one.clears === 'airing');
        expect(left).toEqual(stays);
      }),
      { numRuns: 300 },
    );
  });
});
