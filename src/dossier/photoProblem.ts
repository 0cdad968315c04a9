import type { Problem } from '../units/index.ts';

/** Why bytes that were handed in as a photograph are not kept as one. */
export type PhotoProblem =
  | Problem<'photograph-too-large', { readonly megabytes: number; readonly most: number }>
  | Problem<'photograph-too-many-pixels', { readonly megapixels: number; readonly most: number }>
  | Problem<'photograph-not-a-picture', { readonly claimed: string; readonly found: string }>
  | Problem<'photograph-damaged', { readonly reason: string }>;
