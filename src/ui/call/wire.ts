import type { ClientSummary, Colleague, RugListRow, StateAnswer } from '../../contract/index.ts';
import type { RugFact } from '../../dossier/facts/index.ts';

export type { ClientSummary, Colleague, RugListRow };
export type HouseState = StateAnswer;

/** Somebody who is signed in. */
export type Me = NonNullable<StateAnswer['signedIn']>;

/** A fact on its way into a rug's stream, with the id that makes sending it twice harmless. */
export interface RugDraft {
  readonly id: string;
  readonly fact: RugFact;
}
