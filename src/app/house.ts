import type { Role } from '../dossier/workshopFacts.ts';
import type { Accounts, Proof } from '../ports/accounts.ts';
import type { Archiver } from '../ports/archiver.ts';
import type { Clock } from '../ports/clock.ts';
import type { Codes } from '../ports/codes.ts';
import type { Forecaster } from '../ports/forecaster.ts';
import type { Ids } from '../ports/ids.ts';
import type { KeptPapers } from '../ports/keptPapers.ts';
import type { Ledger } from '../ports/ledger.ts';
import type { Photos } from '../ports/photos.ts';
import type { Printer } from '../ports/printer.ts';
import type { Secrets } from '../ports/secrets.ts';

/** Everything a use case may reach for. */
export interface House {
  readonly ledger: Ledger;
  readonly photos: Photos;
  readonly keptPapers: KeptPapers;
  readonly accounts: Accounts;
  readonly secrets: Secrets;
  readonly printer: Printer;
  readonly codes: Codes;
  readonly forecaster: Forecaster;
  readonly archiver: Archiver;
  readonly clock: Clock;
  readonly ids: Ids;
  /** IANA name of the workshop's time zone: papers are read by people at home. */
  readonly timeZone: string;
}

/** Who does something, with the roles they hold at this moment. */
export interface Actor {
  readonly person: string;
  readonly name: string;
  readonly roles: readonly Role[];
  readonly proof: Proof;
}
