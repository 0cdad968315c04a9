export { kindOf, statedName } from './agentKind.ts';
export * from './bathAcid.ts';
export * from './differential.ts';
export { dyeClassOf, rulingGrade } from './dyeVerdict.ts';
export * from './flows.ts';
export * from './limit.ts';
export * from './planFacts.ts';
export * from './planProblem.ts';
export { planWash, type Tightening, tightens } from './planWash.ts';
export { type ProductFitProblem, productFit } from './productFit.ts';
export * from './productFor.ts';
export { missingDyeTests, requiredDyeTests } from './requiredDyeTests.ts';
export * from './residue.ts';
export * from './rinseWatch.ts';
export {
  isOverridable,
  massBandOf,
  type Rulebook,
  rescueCards,
  rinsePaceOf,
  shippedRulebook,
} from './rulebook.ts';
export {
  judgeRuleChange,
  type RuleChange,
  type RuleProblem,
  rulebookWith,
  ruleEntryAt,
} from './ruleChange.ts';
export { ruleEntries } from './ruleEntry.ts';
export { allowedWords, type OwnMixture, type RuleForm } from './ruleForm.ts';
export { type RuleEntry, type RuleGroup, ruleGroups } from './ruleSpot.ts';
export type { RescueCard } from './ruleTables.ts';
export { unmeasuredCm2 } from './spotAmounts.ts';
export * from './spottingCards.ts';
export * from './stepBands.ts';
export * from './stepMix.ts';
export * from './stopWatch.ts';
export * from './washPlan.ts';
export { wasteWaterWords } from './wasteWater.ts';
