import { describe, expect, test } from 'vitest';
import {
  decide,
  evolve,
  firstSettings,
  nothingYet,
  type RugFact,
  type RugStanding,
  rugFacts,
} from '../../dossier/index.ts';
import type { Mark } from '../condition/index.ts';
import { blankIntake, type Intake, type RugIntake } from './intake.ts';
import { faultsOf } from './intakeChecks.ts';
import { areaM2, isUnusualMass, lifeIn, rugFactsOf, usualMassKg } from './intakeFacts.ts';

const today = '2026-11-25';
const asked = {
  now: '2026-11-25T09:00:00.000Z',
  person: { person: 'p1', roles: ['counter'] as const },
  settings: firstSettings,
};

let next = 0;
const empty = blankIntake(() => `id-${next++}`);

const mark = (part: Partial<Mark>): Mark => ({
  type: 'MarkRecorded',
  mark: 'm1',
  word: 'stain',
  side: 'face',
  shape: 'point',
  pointsMm: [{ xMm: 500, yMm: 500 }],
  grade: 2,
  activity: 'stable',
  photos: [],
  ...part,
});

const full = (part: Partial<RugIntake> = {}): Intake => ({
  ...empty,
  client: { kind: 'found', client: 'c1', name: 'Anselm Quill' },
  rugs: empty.rugs.map((rug) => ({
    ...rug,
    title: 'Red runner',
    tag: '41',
    lengthsMm: [3010, 3000, 3005],
    widthsMm: [1000, 1005, 1000],
    fringeStartMm: 60,
    massKg: 9.6,
    airRhPercent: 55,
    airC: 19,
    reason: 'Clean it.',
    survey: { sides: 'face and back', light: 'daylight', limits: '' },
    marks: [mark({})],
    ...part,
  })),
});

const factsOf = (intake: Intake): readonly RugFact[] => intake.rugs.flatMap((rug) => rugFactsOf(intake, rug));

/** Asks the record for each fact in turn, as the server does. */
const recorded = (facts: readonly RugFact[]): RugStanding =>
  facts.reduce((standing, fact, index) => {
    const decided = decide(standing, fact, asked);
    if (!decided.ok) throw new Error(`${fact.type}: ${decided.problem.code}`);
    return evolve(standing, {
      id: `e${index}`,
      stream: 'rug/r1',
      revision: index + 1,
      at: asked.now,
      by: 'p1',
      version: 1,
      fact,
      seal: '',
    });
  }, nothingYet);

describe('what is recorded at the door', () => {
  test('a complete intake is taken by the rules of the record, fact by fact', () => {
    const standing = recorded(factsOf(full()));
    expect(standing.visits).toHaveLength(1);
    expect(standing.marks).toHaveLength(1);
    expect(standing.weighings[0]?.airRh).toBe(0.55);
    expect(standing.surveys).toHaveLength(1);
  });

  test('every fact has the shape the record asks for', () => {
    for (const fact of factsOf(full())) expect(rugFacts[fact.type].safeParse(fact).success).toBe(true);
  });

  test('a rug that has been here before gets a new visit, not a new dossier', () => {
    const known = full({ known: { number: 7, title: 'Red runner' } });
    expect(factsOf(known).map(({ type }) => type)).not.toContain('DossierOpened');
  });

  test('weighed later means no mass, whatever stands in the field', () => {
    expect(factsOf(full({ weighsLater: true })).map(({ type }) => type)).not.toContain('RugWeighed');
  });

  test('without a signature the reason stands in the dossier', () => {
    const standing = recorded(factsOf({ ...full(), unsigned: 'came by carrier' }));
    expect(standing.notes[0]?.note).toContain('came by carrier');
    expect(standing.visits[0]?.received.signature).toBeUndefined();
  });

  test('a living insect puts the rug into quarantine as it is taken in', () => {
    const standing = recorded(factsOf(full({ marks: [mark({ word: 'live insect', grade: 4 })] })));
    expect(standing.quarantine?.why).toBe('moth or beetle');
  });

  test('moth grazing counts as alive until somebody calls it stable', () => {
    expect(lifeIn([mark({ word: 'moth grazing', activity: 'unknown' })])).toBe('moth or beetle');
    expect(lifeIn([mark({ word: 'moth grazing', activity: 'stable' })])).toBeNull();
  });

  test('a round rug has the area of its circle', () => {
    const [rug] = full({ shape: 'round', lengthsMm: [2000, 2000, 2000], widthsMm: [2000, 2000, 2000] }).rugs;
    expect(rug === undefined ? null : areaM2(rug)).toBeCloseTo(Math.PI, 9);
  });

  test('ten times the mass asks to be confirmed, a usual one does not', () => {
    const [usual] = full().rugs;
    const [slip] = full({ massKg: 96 }).rugs;
    if (usual === undefined || slip === undefined) throw new Error('no rug');
    expect(isUnusualMass(usual)).toBe(false);
    expect(isUnusualMass(slip)).toBe(true);
    expect(usualMassKg(slip)?.most).toBeLessThan(96);
    expect(faultsOf(full({ massKg: 96 }), 'mass', slip, today)).toHaveProperty('unusual');
    expect(faultsOf(full(), 'mass', { ...slip, confirmedUnusual: true }, today)).toEqual({});
  });
});

describe('what keeps a step open', () => {
  const [blank] = empty.rugs;
  const [whole] = full().rugs;
  if (blank === undefined || whole === undefined) throw new Error('no rug');

  test('an empty intake names the client, the rug, the sizes, the mass, the wish, the look and the signature', () => {
    const open = (['client', 'rug', 'size', 'mass', 'terms', 'marks', 'sign'] as const).filter(
      (step) => Object.keys(faultsOf(empty, step, blank, today)).length > 0,
    );
    expect(open).toHaveLength(7);
  });

  test('a full one leaves only the signature open', () => {
    for (const step of ['client', 'visit', 'rug', 'size', 'mass', 'terms', 'pictures', 'marks'] as const) {
      expect(faultsOf(full(), step, whole, today)).toEqual({});
    }
    expect(faultsOf(full(), 'sign', whole, today)).toHaveProperty('signature');
    expect(faultsOf({ ...full(), unsigned: 'came by carrier' }, 'sign', whole, today)).toEqual({});
  });

  test.each([
    ['a tag with a blank', { tag: '4 1' }, 'rug', 'tag'],
    ['a tag that is too long', { tag: '1234567890123' }, 'rug', 'tag'],
    ['a length slipped by ten', { lengthsMm: [3000, 300, 3000] }, 'size', 'lengths'],
    ['a promise for yesterday', { promisedFor: '2026-11-24' }, 'terms', 'promised'],
  ] as const)('%s is named', (_name, part, step, field) => {
    const intake = full(part);
    const [rug] = intake.rugs;
    expect(rug === undefined ? {} : faultsOf(intake, step, rug, today)).toHaveProperty(field);
  });

  test('a promise for today is a promise', () => {
    expect(faultsOf(full(), 'terms', { ...whole, promisedFor: today }, today)).toEqual({});
  });

  test('an irregular rug may differ as much as it likes', () => {
    const odd = { ...whole, shape: 'irregular' as const, lengthsMm: [3000, 1500, 3000] };
    expect(faultsOf(full(), 'size', odd, today)).toEqual({});
  });

  test('two rugs of one receipt cannot share a tag', () => {
    const intake = full();
    const two = { ...intake, rugs: [whole, { ...whole, rug: 'other' }] };
    const [first] = two.rugs;
    expect(first === undefined ? {} : faultsOf(two, 'rug', first, today)).toHaveProperty('tag');
  });
});
