import { expect, test } from 'vitest';
import { paperContextOf } from '../../test/support/paperStory.ts';
import { type Told, wholeTold } from '../../test/support/paperTold.ts';
import type { RugFact } from '../dossier/index.ts';
import { makePaper, type PaperKind } from './index.ts';

const papers = ['return', 'care-sheet', 'final-inspection'] as const;
const cautionOn = (kind: PaperKind, told: readonly Told<RugFact>[]) => {
  const paper = makePaper(kind, paperContextOf({ told }));
  if (!paper.ok) throw new Error(`${kind} was refused: ${paper.problem.code}`);
  const notices = paper.value.parts.flatMap((part) => (part.kind === 'notice' ? [part] : []));
  return notices.find(({ title }) => title === 'Something may still be in it');
};
/** The whole story, with these facts just before the rug went home. */
const withLate = (...late: readonly RugFact[]): readonly Told<RugFact>[] => {
  const home = wholeTold.findIndex(([, fact]) => fact.type === 'RugReturned');
  const hour = wholeTold[home]?.[0] ?? 0;
  const told = late.map((fact): Told<RugFact> => [hour, fact]);
  return [...wholeTold.slice(0, home), ...told, ...wholeTold.slice(home)];
};
const spotted: RugFact = {
  ...{ type: 'SpotTreated', mark: 'm-wine', golden: 'tannin', agents: ['chelator'] },
  ...{ outcome: 'lighter', photos: [] },
} as const satisfies RugFact;
const atSupply = {
  ...{ type: 'RinseMeasured', conductivityUsPerCm: 410, supplyConductivityUsPerCm: 400 },
  ...{ ph: 7.3, supplyPh: 7.4, foam: 'none' },
} as const satisfies RugFact;
const atPlace: RugFact = { ...atSupply, mark: 'm-wine' };

// What clears an agent: common practice, no published source.
test.each(papers)(
  'what nobody has shown to be out stands on the %s in plain words, with its place',
  (kind) => {
    const caution = cautionOn(kind, withLate(spotted));
    expect(caution?.tone).toBe('caution');
    for (const place of ['chelator, mark 1', 'citric acid, whole rug', 'neutral detergent, whole rug'])
      expect(caution?.lines).toContain(`${place}: no reading has shown it to be rinsed out.`);
    expect(caution?.lines.at(-1)).toContain('tell whoever cleans it next');
  },
);

test.each(papers)('it is not on the %s once it was read twice at the supply, place by place', (kind) => {
  expect(cautionOn(kind, withLate(spotted, atSupply, atSupply, atPlace))).toBeDefined();
  expect(cautionOn(kind, withLate(spotted, atSupply, atSupply, atPlace, atPlace))).toBeUndefined();
});

test('a solvent is kept from flame, and what others used is said to be theirs', () => {
  const old: RugFact = { type: 'OldTreatmentTold', agents: ['acetone'], toldBy: 'the client' };
  const line = cautionOn('return', withLate(old))?.lines.find((one) => one.includes('acetone')) ?? '';
  expect(line).toContain('acetone, whole rug, used by others before it came');
  expect(line).toContain('away from flame and heat');
});

test('the papers of an earlier visit do not tell of what a later one laid', () => {
  const cleared = withLate(atSupply, atSupply);
  const again = cleared.flatMap(([hour, fact]): readonly Told<RugFact>[] =>
    fact.type === 'RugReceived' ? [[hour + 500, { ...fact, visit: 'visit-2', tag: '7' }]] : [],
  );
  const told: readonly Told<RugFact>[] = [...cleared, ...again, [501, spotted]];
  expect(cautionOn('return', told)).toBeDefined();
  const context = paperContextOf({ told });
  const [first] = context.rug.visits;
  if (first === undefined) throw new Error('the story has a first visit');
  const paper = makePaper('return', { ...context, visit: first });
  expect(JSON.stringify(paper)).not.toContain('Something may still be in it');
});
