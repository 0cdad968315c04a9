import type { RugFactOf, RugFactType } from '../facts/index.ts';
import type { RugProblem } from '../rugProblem.ts';
import type { ShelfStanding } from '../shelf.ts';
import type { RugStanding } from '../standing.ts';
import type { Role, WorkshopSettings } from '../workshopFacts.ts';

/** Who asks, when, and under which settings. */
export interface Asked {
  readonly now: string;
  readonly person: { readonly person: string; readonly roles: readonly Role[] };
  readonly settings: WorkshopSettings;
  /** What stands on the shelf; absent: nothing that a step could have been mixed from. */
  readonly shelf?: ShelfStanding;
}

export type Rule<Type extends RugFactType> = (
  standing: RugStanding,
  fact: RugFactOf<Type>,
  asked: Asked,
) => RugProblem | null;

/** Rules by type of fact; a fact without one may always be recorded during a visit. */
export type Rules = { readonly [Type in RugFactType]?: Rule<Type> };

/** Refuses whoever holds none of the roles. */
export const needsRole = (asked: Asked, type: RugFactType, ...needs: readonly Role[]): RugProblem | null =>
  needs.some((role) => asked.person.roles.includes(role))
    ? null
    : { code: 'role-missing', facts: { needs, type } };

/** Whether a reading says nothing but its own circumstances. */
export const noValues = (fact: Readonly<Record<string, unknown>>, ...besides: readonly string[]): boolean =>
  Object.entries(fact).every(
    ([key, value]) =>
      ['type', 'happenedAt', ...besides].includes(key) ||
      value === undefined ||
      (Array.isArray(value) && value.length === 0),
  );
