import type { Grade } from '../../src/core/wash/index.ts';
import type { RugFactOf } from '../../src/dossier/index.ts';

type Measured = Extract<RugFactOf<'DyeTested'>['reading'], { readonly by: 'photograph' }>;

/** A square in 0 … 1 of a picture. */
const square = (x: number) => [
  { x, y: 0.4 },
  { x: x + 0.1, y: 0.4 },
  { x: x + 0.1, y: 0.5 },
  { x, y: 0.5 },
];

/**
 * A measured blot. By the formula of ISO 105-A04 a ΔE_GS of 8 rates 6.1 − 1.45 · ln 8 = 3.08, which is grade 3.
 */
export const measuredBlot = (
  probability: { readonly [G in Grade]?: number } = { '2-3': 0.02, '3': 0.86, '3-4': 0.12 },
  more: Partial<Measured> = {},
): Measured => ({
  kind: 'graded',
  by: 'photograph',
  staining: '3',
  gradeInterval: { lowest: '3', highest: '3-4' },
  probability,
  deltaE: 10.4,
  deltaEGS: 8,
  sigma: 0.6,
  clean: { L: 93, a: 0, b: 2 },
  dye: { L: 86, a: 7.5, b: 1 },
  card: 'K7Q4',
  pictures: 'one',
  places: { controls: [square(0.3)], sample: square(0.6) },
  notes: ['relative-colour'],
  algorithm: '1',
  ...more,
});
