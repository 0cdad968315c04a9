import type { Entry } from '../../dossier/entry.ts';
import type { RugFact } from '../../dossier/facts/index.ts';
import type { Role, WorkshopSettings } from '../../dossier/workshopFacts.ts';

/** Somebody who works here. */
export interface Me {
  readonly person: string;
  readonly name: string;
  readonly roles: readonly Role[];
}

export interface Colleague extends Me {
  readonly hasPin: boolean;
  readonly left?: boolean;
}

export interface HouseState {
  /** False until the owner's account was made. */
  readonly setUp: boolean;
  readonly signedIn: Me | null;
  readonly people?: readonly Colleague[];
  readonly settings: WorkshopSettings;
}

/** One row of a list, as the server keeps it beside the entries. */
export interface ListRow<Body = unknown> {
  readonly stream: string;
  readonly tag: string | null;
  readonly client: string | null;
  readonly consignment: string | null;
  readonly stage: string | null;
  readonly place: string | null;
  readonly dueAt: string | null;
  readonly inHouse: boolean;
  readonly body: Body;
}

/** The client as a dossier shows them. */
export type RugClient =
  | {
      readonly client: string;
      readonly name: string;
      readonly phone?: string;
      readonly email?: string;
      readonly address?: string;
      readonly note?: string;
      readonly erased?: false;
    }
  | { readonly client: string; readonly erased: true };

export interface RugAnswer {
  readonly rug: string;
  readonly entries: readonly Entry[];
  readonly client: RugClient | null;
}

export interface RugDraft {
  readonly id: string;
  readonly fact: RugFact;
}
