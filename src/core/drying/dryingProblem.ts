import type { OutOfRange, Problem } from '../../units/index.ts';

/** Everything that makes a drying scenario one that cannot be reckoned. */
export type DryingProblem =
  | OutOfRange
  | Problem<'drying-room-empty', Readonly<Record<string, never>>>
  | Problem<'drying-air-missing', { readonly field: string }>
  | Problem<'drying-room-runs-away', { readonly hour: number; readonly airC: number }>
  | Problem<'rug-named-twice', { readonly rug: string }>
  | Problem<'fibre-shares-off', { readonly rug: string; readonly sum: number }>
  | Problem<
      'critical-regain-too-low',
      { readonly rug: string; readonly value: number; readonly least: number }
    >
  | Problem<'machine-rating-unstated', { readonly machine: number; readonly missing: 'ratedC' | 'ratedRh' }>
  | Problem<'logger-gap', { readonly fromHour: number; readonly toHour: number; readonly mostHours: number }>
  | Problem<'logger-clock-back', { readonly hour: number; readonly afterHour: number }>
  | Problem<
      'readings-out-of-order',
      { readonly rug: string; readonly hour: number; readonly afterHour: number }
    >
  | Problem<'turning-unsaid', { readonly rug: string; readonly hour: number }>
  | Problem<'reading-doubled', { readonly rug: string; readonly hour: number; readonly kind: string }>
  | Problem<
      'mass-below-bone-dry',
      { readonly rug: string; readonly massKg: number; readonly dryMassKg: number }
    >;
