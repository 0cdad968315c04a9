import fc from 'fast-check';
import { expect, test } from 'vitest';
import { entriesOf } from '../../test/support/rugStory.ts';
import type { RugFact } from '../dossier/index.ts';
import { listRowOf, rememberingListRowOf } from './listRow.ts';

const told: fc.Arbitrary<RugFact> = fc.oneof(
  fc.record({ type: fc.constant('RugMoved' as const), place: fc.constantFrom('shelf', 'floor', 'loft') }),
  fc.record({ type: fc.constant('NoteAdded' as const), note: fc.string({ minLength: 1 }) }),
  fc.record({
    type: fc.constant('EntryWithdrawn' as const),
    entry: fc.integer({ min: 2, max: 12 }).map((at) => `e${at}`),
    reason: fc.constant('a slip'),
  }),
  fc.record({ type: fc.constant('Quarantined' as const), why: fc.constant('mould' as const) }),
);

/** What a record can hold: a withdrawal names an entry before it. */
const possible = (facts: readonly RugFact[]): readonly RugFact[] =>
  facts.map((fact, index) =>
    fact.type === 'EntryWithdrawn' && Number(fact.entry.slice(1)) >= index + 2
      ? { type: 'NoteAdded', note: fact.reason }
      : fact,
  );

test('a row made by going on from the last fold equals the row of a fold from the start', () => {
  fc.assert(
    fc.property(
      fc.array(told, { maxLength: 20 }),
      fc.array(fc.integer({ min: 1, max: 4 })),
      (facts, steps) => {
        const entries = entriesOf([
          { type: 'DossierOpened', number: 7, title: 'Runner' },
          ...possible(facts),
        ]);
        const remembering = rememberingListRowOf();
        let seen = 0;
        for (const step of [...steps, entries.length]) {
          seen = Math.min(entries.length, seen + step);
          const now = entries.slice(0, seen);
          expect(remembering('rug/r1', now)).toEqual(listRowOf('rug/r1', now));
        }
      },
    ),
  );
});

test('another stream under the same name is folded from its own start', () => {
  const remembering = rememberingListRowOf();
  const first = entriesOf([{ type: 'DossierOpened', number: 1, title: 'One' }]);
  const other = first.map((entry) => ({
    ...entry,
    seal: 'another',
    fact: { type: 'DossierOpened', number: 2, title: 'Two' } as const,
  }));
  remembering('rug/r1', first);
  expect(remembering('rug/r1', other)).toEqual(listRowOf('rug/r1', other));
});
