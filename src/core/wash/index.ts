export { dyeClassOf } from './dyeVerdict.ts';
export * from './limit.ts';
export * from './planFacts.ts';
export * from './planProblem.ts';
export { planWash, type Tightening, tightens } from './planWash.ts';
export { missingDyeTests, requiredDyeTests } from './requiredDyeTests.ts';
export {
  dyeTestSettings,
  isOverridable,
  massBandOf,
  type RescueCard,
  rescueCards,
  rulebookVersion,
  ruleRows,
} from './rulebook.ts';
export * from './washPlan.ts';
