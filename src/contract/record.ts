import * as z from 'zod/mini';
import { type ClientStanding, clientFacts } from '../dossier/clientFacts.ts';
import type { Entry } from '../dossier/entry.ts';
import { type RugFact, rugFacts } from '../dossier/facts/index.ts';
import { id, passage } from '../dossier/facts/shape.ts';
import type { NextStep } from '../dossier/nextStep.ts';
import type { RugRow } from '../dossier/rugRow.ts';

type OneOrMore<Shape> = [Shape, ...Shape[]];
type RugFactShape = (typeof rugFacts)[keyof typeof rugFacts];
type ClientFactShape = (typeof clientFacts)[keyof typeof clientFacts];

/** A forecast is made by the server from the record; nobody may bring one. */
const { DryingForecast: _forecast, ...told } = rugFacts;
const rugFact = z.discriminatedUnion('type', Object.values(told) as OneOrMore<RugFactShape>);
const clientFact = z.discriminatedUnion('type', Object.values(clientFacts) as OneOrMore<ClientFactShape>);
const revision = z.int().check(z.gte(0));

const rugDrafts = z.array(z.strictObject({ id, fact: rugFact })).check(z.minLength(1), z.maxLength(500));

export const recordRequest = z.strictObject({ expectedRevision: revision, drafts: rugDrafts });
export type RecordRequest = z.infer<typeof recordRequest>;

export const clientEntriesRequest = z.strictObject({
  expectedRevision: revision,
  drafts: z.array(z.strictObject({ id, fact: clientFact })).check(z.minLength(1), z.maxLength(100)),
});
export type ClientEntriesRequest = z.infer<typeof clientEntriesRequest>;

export const clientRequest = z.strictObject({ client: id, added: clientFacts.ClientAdded });
export type ClientRequest = z.infer<typeof clientRequest>;

export const eraseRequest = z.strictObject({ reason: passage });

/** Several rugs taken in at once: all of it is recorded, or nothing. */
export const consignmentRequest = z.strictObject({
  consignment: id,
  client: z.union([clientRequest, z.strictObject({ client: id })]),
  signature: z.optional(clientFacts.SignatureTaken),
  rugs: z.array(z.strictObject({ rug: id, drafts: rugDrafts })).check(z.minLength(1), z.maxLength(60)),
});
export type ConsignmentRequest = z.infer<typeof consignmentRequest>;

const wanted = z.optional(z.string().check(z.maxLength(300)));
export const rowsQuery = z.strictObject({
  find: wanted,
  tag: wanted,
  stage: wanted,
  place: wanted,
  client: wanted,
  consignment: wanted,
  inHouse: z.optional(z.enum(['true', 'false'])),
  limit: z.optional(z.string().check(z.regex(/^[1-9]\d{0,2}$/))),
  after: wanted,
});
export type RowsQuery = z.infer<typeof rowsQuery>;

/** One row of a list of rugs, with its client's name. */
export interface RugListRow {
  readonly stream: string;
  readonly rug: string;
  readonly tag: string | null;
  readonly client: string | null;
  /** Null where there is no client, or their data were erased. */
  readonly clientName: string | null;
  readonly consignment: string | null;
  readonly stage: string | null;
  readonly place: string | null;
  readonly dueAt: string | null;
  readonly inHouse: boolean;
  readonly body: RugRow;
}

export interface RowsAnswer {
  readonly rows: readonly RugListRow[];
}

/** A rug on Today: its row with what it waits for, most urgent first. */
export interface TodayRow extends RugListRow {
  readonly next: readonly NextStep[];
}

/** A stop that holds, wherever one is in the house. */
export interface OpenStop {
  readonly rug: string;
  readonly tag: string | null;
  readonly title: string;
  /** Id of the stop that was called, or the name of the one the clock holds. */
  readonly stop: string;
  /** Why it holds, with the reading and the band it broke where one raised it. */
  readonly condition: string;
  readonly since: string | null;
}

export interface StopsAnswer {
  readonly stops: readonly OpenStop[];
}

export interface TodayAnswer {
  readonly rows: readonly TodayRow[];
  /** The server's time, by which the urgencies were worked out. */
  readonly now: string;
}

export type ClientSummary =
  | ({ readonly client: string; readonly erased?: false } & Omit<
      Extract<ClientStanding, { readonly kind: 'known' }>,
      'kind' | 'signatures'
    >)
  | { readonly client: string; readonly erased: true };

export interface ClientsAnswer {
  readonly rows: readonly ClientSummary[];
}

export interface ClientAnswer {
  readonly client: string;
  readonly revision: number;
  readonly standing: ClientStanding;
  readonly rugs: readonly RugListRow[];
}

export interface RugAnswer {
  readonly rug: string;
  readonly entries: readonly Entry<RugFact>[];
  readonly client: ClientSummary | null;
}

export interface ConsignmentAnswer {
  readonly consignment: string;
  readonly rugs: readonly {
    readonly rug: string;
    readonly number: number;
    readonly entries: readonly Entry[];
  }[];
}

export interface PhotographAnswer {
  readonly photo: string;
  readonly widthPx: number;
  readonly heightPx: number;
  readonly mediaType: string;
  readonly bytes: number;
}

export interface PaperHashAnswer {
  readonly sha256: string;
}
