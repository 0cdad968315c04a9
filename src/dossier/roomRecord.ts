import type { Entry } from './entry.ts';
import { staysForGood } from './roomDecide.ts';
import type { RoomEntry, RoomFact } from './roomFacts.ts';

/** What people did in a room, and what its devices sent: the one would drown in the other. */
export const roomRecordParts = ['acts', 'sent'] as const;
export type RoomRecordPart = (typeof roomRecordParts)[number];

/** One entry of a room as its record shows it. */
export interface RoomLine {
  readonly entry: string;
  readonly revision: number;
  readonly at: string;
  readonly by: string;
  /** Of many readings only the first and the last; how many there are stands in `rows`. */
  readonly fact: RoomFact;
  readonly rows: number | null;
  /** Name of the sensor that wrote it; null: a person. */
  readonly sensor: string | null;
  readonly withdrawn: { readonly by: string; readonly at: string; readonly reason: string } | null;
  readonly isWithdrawable: boolean;
}

const shortened = (fact: RoomFact): RoomFact => {
  if (fact.type !== 'AirLogged') return fact;
  const [first] = fact.rows;
  const last = fact.rows.at(-1);
  const rows =
    first === undefined || last === undefined ? [] : fact.rows.length > 1 ? [first, last] : [first];
  return { ...fact, rows };
};

/**
 * The record of a room, newest first: who did what and when, and what was withdrawn and why.
 *
 * @param all - the whole stream, oldest first
 * @param part - what people did, or what sensors sent
 * @param before - only entries of an earlier revision
 * @param most - lines at a time
 * @returns the lines, and whether there are earlier ones
 * @source none: rule of this project
 */
export function roomRecord(
  all: readonly Entry[],
  part: RoomRecordPart,
  before: number,
  most: number,
): { readonly lines: readonly RoomLine[]; readonly more: boolean } {
  const entries = all as readonly RoomEntry[];
  const sensors = new Map(
    entries.flatMap(({ fact }) => (fact.type === 'SensorIssued' ? [[fact.sensor, fact.name] as const] : [])),
  );
  const withdrawals = new Map(
    entries.flatMap(({ fact, by, at }) =>
      fact.type === 'EntryWithdrawn' ? [[fact.entry, { by, at, reason: fact.reason }] as const] : [],
    ),
  );
  // A withdrawal is told beside what it takes back.
  const told = entries.filter(
    ({ fact, by, revision }) =>
      revision < before && fact.type !== 'EntryWithdrawn' && sensors.has(by) === (part === 'sent'),
  );
  const lines = told
    .slice(-most)
    .reverse()
    .map(({ id, revision, at, by, fact }): RoomLine => {
      const withdrawn = withdrawals.get(id) ?? null;
      return {
        ...{ entry: id, revision, at, by, withdrawn, fact: shortened(fact) },
        rows: fact.type === 'AirLogged' ? fact.rows.length : null,
        sensor: sensors.get(by) ?? null,
        isWithdrawable: withdrawn === null && !staysForGood.includes(fact.type),
      };
    });
  return { lines, more: told.length > lines.length };
}
