export * from './limit.ts';
export * from './planFacts.ts';
export * from './planProblem.ts';
export * from './washPlan.ts';
