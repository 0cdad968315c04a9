export { makePaper } from './makePaper.ts';
export type { Paper, PaperPart } from './paper.ts';
export type { ConsignedRug, PaperContext, PaperWords, RefusalWords } from './paperContext.ts';
export { type PaperKind, paperKinds } from './paperKinds.ts';
export type { PaperHasNoGround, PaperNotPrinted } from './paperProblem.ts';
