import { describe, expect, test } from 'vitest';
import { measuredBlot } from '../../../../test/support/measuredBlot.ts';
import type { RequiredDyeTest } from '../../../core/wash/index.ts';
import { type Noted, nothingYet, type RugStanding } from '../../../dossier/index.ts';
import { blotsOf } from './blots.ts';

const at = (now: string) => ({ now, validDays: 30 });
const now = at('2026-11-26T10:00:00.000Z');
const signed = { entry: 'e', when: '2026-11-25T10:00:00.000Z', by: 'p' };
const asked = (more: Partial<RequiredDyeTest>): RequiredDyeTest => ({
  colour: 'red',
  name: 'Red',
  side: 'face',
  liquid: 'cold water',
  atUrinePlace: false,
  agents: ['water'],
  because: 'Every colour meets water first.',
  blocksWetWork: true,
  ...more,
});
const read = (more: Partial<Noted<'DyeTested'>>): Noted<'DyeTested'> => ({
  type: 'DyeTested',
  colour: 'red',
  side: 'face',
  liquid: 'cold water',
  reading: { kind: 'graded', by: 'eye', staining: '4-5', control: '5' },
  photos: [],
  ...signed,
  ...more,
});
const rug = (more: Partial<RugStanding>): RugStanding => ({
  ...nothingYet,
  colours: [{ colour: 'red', name: 'Red', kind: 'field colour', dyeClass: 'unknown', ...signed }],
  ...more,
});
const states = (standing: RugStanding, required: readonly RequiredDyeTest[], missing = required) =>
  blotsOf(standing, required, missing, now).flatMap(({ rows }) =>
    rows.map(({ liquid, blots }) => [liquid, ...blots.map((blot) => blot?.state.kind ?? null)]),
  );

describe('the matrix of dye tests', () => {
  test('shows the weakest liquid first, whatever order they are asked in', () => {
    const required = [asked({ liquid: 'planned bath' }), asked({ liquid: 'dry crock' }), asked({})];
    expect(states(rug({}), required).map(([liquid]) => liquid)).toEqual([
      'dry crock',
      'cold water',
      'planned bath',
    ]);
  });
  test('an untested colour is missing, a read one is read, and a place nobody asks for stays empty', () => {
    const required = [asked({}), asked({ side: 'back', liquid: 'planned bath' })];
    const standing = rug({ dyeTests: [read({})] });
    expect(states(standing, required, required.slice(1))).toEqual([
      ['cold water', 'read', null],
      ['planned bath', null, 'missing'],
    ]);
  });
  test('a blot that lies at the urine place does not show as lying elsewhere', () => {
    const required = [asked({}), asked({ atUrinePlace: true })];
    const lyingBlots = [
      {
        type: 'DyeTestStarted',
        colour: 'red',
        side: 'face',
        liquid: 'cold water',
        minutes: 10,
        atUrinePlace: true,
        ...signed,
      },
    ] as const;
    expect(states(rug({ lyingBlots }), required)).toEqual([['cold water', 'missing', 'lying']]);
  });
  test('a reading the plan asks for again says why, and a grade of 3 fails', () => {
    const reading = { kind: 'graded', by: 'eye', staining: '3', control: '5' } as const;
    const cell = (standing: RugStanding, missing: readonly RequiredDyeTest[], then: typeof now) =>
      blotsOf(standing, [asked({})], missing, then)[0]?.rows[0]?.blots[0]?.state;
    const made = rug({ dyeTests: [read({})] });
    expect(cell(made, [asked({})], now)).toMatchObject({ again: 'other conditions', fails: false });
    expect(cell(made, [asked({})], at('2027-01-25T10:00:00.000Z'))).toMatchObject({ again: 'too old' });
    expect(cell(rug({ dyeTests: [read({ reading })] }), [], now)).toMatchObject({ again: null, fails: true });
  });
  test('a measured blot shows the worst grade that is likelier than 5 %, and fails by it', () => {
    const reading = measuredBlot({ '2-3': 0.04, '3': 0.2, '3-4': 0.76 });
    const [measured] = blotsOf(rug({ dyeTests: [read({ reading })] }), [asked({})], [], now);
    expect(measured?.rows[0]?.blots[0]?.state).toMatchObject({ grade: '3', fails: true });
  });
});
