export * from './clientFacts.ts';
export * from './entry.ts';
export * from './evolve.ts';
export { finishingWorks } from './facts/closing.ts';
export { dryStandards, postures } from './facts/drying.ts';
export * from './facts/index.ts';
export { rugShapes, scopes } from './facts/intake.ts';
export * from './standing.ts';
export * from './workshopFacts.ts';
