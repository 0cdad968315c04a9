import fc from 'fast-check';
import { expect, test } from 'vitest';
import * as z from 'zod/mini';
import { entriesOf } from '../../test/support/rugStory.ts';
import { evolve, standingOf } from './evolve.ts';
import { type RugEntry, type RugFact, rugFacts } from './facts/index.ts';
import { nothingYet } from './standing.ts';

const colour = fc.constantFrom('red', 'blue');
const mark = fc.constantFrom('m1', 'm2', 'm3');
/** Facts in any order, sensible or not: folding judges nothing. */
const anyFact: fc.Arbitrary<RugFact> = fc.oneof(
  fc.record({ type: fc.constant('NoteAdded' as const), note: fc.string({ minLength: 1 }) }),
  fc.record({ type: fc.constant('RugMoved' as const), place: fc.constantFrom('shelf', 'floor') }),
  fc.record({
    type: fc.constant('RugReceived' as const),
    visit: fc.constantFrom('v1', 'v2'),
    consignment: fc.constant('c1'),
    client: fc.constant('a'),
    tag: fc.constantFrom('1', '2'),
    scope: fc.constant(['wash' as const]),
    route: fc.constant('rug in use' as const),
    reason: fc.constant('dust'),
    authority: fc.constant('owner' as const),
  }),
  fc.record({
    type: fc.constant('MarkRecorded' as const),
    mark,
    word: fc.constantFrom('hole', 'stain'),
    side: fc.constant('face' as const),
    shape: fc.constant('point' as const),
    pointsMm: fc.constant([{ xMm: 10, yMm: 10 }]),
    grade: fc.integer({ min: 0, max: 4 }),
    activity: fc.constant('stable' as const),
    photos: fc.constant([]),
  }),
  fc.record({
    type: fc.constant('ColoursNamed' as const),
    colours: colour.map((name) => [
      { colour: name, name, kind: 'field colour' as const, dyeClass: 'acid' as const },
    ]),
  }),
  fc.record({
    type: fc.constant('DyeTestStarted' as const),
    colour,
    side: fc.constant('face' as const),
    liquid: fc.constant('cold water' as const),
    minutes: fc.constant(10),
  }),
  fc.record({
    type: fc.constant('StepStarted' as const),
    step: fc.constantFrom('1-dusting', '2-wash'),
    wets: fc.boolean(),
  }),
  fc.record({ type: fc.constant('StepDone' as const), step: fc.constantFrom('1-dusting', '2-wash') }),
  fc.record({
    type: fc.constant('Quarantined' as const),
    why: fc.constant('mould' as const),
  }),
  fc.record({
    type: fc.constant('QuarantineReleased' as const),
    treatment: fc.constant('frozen'),
    inspected: fc.constant('clean'),
  }),
  fc.record({
    type: fc.constant('VisitDeclined' as const),
    reason: fc.constant('no'),
    wishOf: fc.constant('client' as const),
  }),
);

/** The head of a stream moves with every entry; what the entries say is the rest. */
const said = ({ revision: _revision, seal: _seal, ...rest }: ReturnType<typeof standingOf>) => rest;

test('folding the same entries twice gives the same standing, and never fails', () => {
  fc.assert(
    fc.property(fc.array(anyFact, { maxLength: 30 }), (facts) => {
      const entries = entriesOf(facts);
      expect(standingOf(entries)).toEqual(standingOf(entries));
      expect(entries.reduce<ReturnType<typeof standingOf>>(evolve, nothingYet)).toEqual(standingOf(entries));
    }),
  );
});

test('a withdrawal leaves the standing as if the entry had never been', () => {
  fc.assert(
    fc.property(fc.array(anyFact, { minLength: 1, maxLength: 25 }), fc.nat(), (facts, pick) => {
      const entries = entriesOf(facts);
      const target = entries[pick % entries.length];
      if (target === undefined) return;
      const withdrawal: RugEntry = {
        ...target,
        id: 'w1',
        revision: entries.length + 1,
        fact: { type: 'EntryWithdrawn', entry: target.id, reason: 'a slip' },
      };
      const without = entries.filter(({ id }) => id !== target.id);
      expect(said(standingOf([...entries, withdrawal]))).toEqual(said(standingOf(without)));
    }),
  );
});

test('a fact of a type nobody knows yet changes nothing but the head', () => {
  const [entry] = entriesOf([{ type: 'NoteAdded', note: 'x' }]);
  const strange = { ...entry, fact: { type: 'SomethingLater' } } as unknown as RugEntry;
  expect(said(evolve(nothingYet, strange))).toEqual(said(nothingYet));
});

test('no fact has a field of its own that the signature of its entry would cover', () => {
  const covered = ['entry', 'when', 'by'];
  for (const [type, shape] of Object.entries(rugFacts)) {
    // A withdrawal never reaches the standing, so it may name the entry it is about.
    if (type === 'EntryWithdrawn') continue;
    const forms = shape instanceof z.ZodMiniDiscriminatedUnion ? shape.def.options : [shape];
    const fields = forms.flatMap((form) => Object.keys(form.shape));
    expect(fields.length).toBeGreaterThan(0);
    expect(fields.filter((field) => covered.includes(field))).toEqual([]);
  }
});
