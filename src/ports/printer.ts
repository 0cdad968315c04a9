import type { Paper } from '../papers/paper.ts';

/** Typesets a paper. */
export interface Printer {
  /** The paper as PDF bytes. */
  print(paper: Paper): Promise<Uint8Array>;
}
