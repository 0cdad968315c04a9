import type { Paper } from '../papers/paper.ts';
import type { PaperNotPrinted } from '../papers/paperProblem.ts';
import type { Result } from '../units/index.ts';

/** Typesets a paper. */
export interface Printer {
  /** The paper as PDF bytes. The same paper with the same photographs gives the same bytes. */
  print(paper: Paper): Promise<Result<Uint8Array, PaperNotPrinted>>;
}
