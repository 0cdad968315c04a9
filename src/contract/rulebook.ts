import * as z from 'zod/mini';
import { line, passage } from '../dossier/facts/shape.ts';
import type { PlanChange } from '../dossier/planChange.ts';
import type { NotedRuleChange } from '../dossier/workshopFacts.ts';

/** A value in place of the delivered one; null takes the change back. */
export const rulePreviewRequest = z.strictObject({ address: line, value: z.unknown() });
export type RulePreviewRequest = z.infer<typeof rulePreviewRequest>;

export const ruleChangeRequest = z.strictObject({ address: line, value: z.unknown(), why: passage });
export type RuleChangeRequest = z.infer<typeof ruleChangeRequest>;

/** Every change of the rulebook, oldest first, with the name of who made it. */
export interface RulebookAnswer {
  readonly version: string;
  readonly history: readonly (NotedRuleChange & { readonly byName: string })[];
}

/** A rug in the house whose plan a change would move. */
export interface AffectedRug extends PlanChange {
  readonly rug: string;
  readonly number: number;
  readonly title: string;
  readonly tag: string | null;
}

export interface RulePreviewAnswer {
  /** How many rugs in the house were planned anew. */
  readonly looked: number;
  readonly affected: readonly AffectedRug[];
}
