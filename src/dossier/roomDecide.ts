import { done, type Problem, type Result } from '../units/index.ts';
import type { Entry } from './entry.ts';
import type { RoomEntry, RoomFact, RoomFactOf } from './roomFacts.ts';
import { type RoomStanding, roomStandingOf } from './roomStanding.ts';
import type { RugProblem } from './rugProblem.ts';
import type { Asked } from './rule/rule.ts';
import type { Role } from './workshopFacts.ts';

type Nothing = Readonly<Record<string, never>>;
type FromRug<Code extends RugProblem['code']> = Extract<RugProblem, { readonly code: Code }>;

export type RoomClosedProblem = Problem<'room-closed', { readonly room: string; readonly closedAt: string }>;

/** Everything the record may refuse for a drying room. */
export type RoomProblem =
  | FromRug<
      | 'role-missing'
      | 'in-the-future'
      | 'nothing-measured'
      | 'entry-unknown'
      | 'entry-withdrawn-already'
      | 'entry-not-withdrawable'
    >
  | Problem<'room-not-set-up', Nothing>
  | RoomClosedProblem
  | Problem<'room-part-named-twice', { readonly what: 'place' | 'machine'; readonly name: string }>
  | Problem<'machine-unknown', { readonly machine: string }>
  | Problem<'sensor-unknown', { readonly sensor: string }>
  | Problem<'sensor-revoked', { readonly sensor: string; readonly revokedAt: string }>
  | Problem<'air-rows-empty', { readonly row: number; readonly at: string }>;

/** A clock a little ahead of the server's is no lie. */
const clockSlackMs = 5 * 60_000;

const needs = (asked: Asked, type: RoomFact['type'], ...roles: readonly Role[]): RoomProblem | null =>
  roles.some((role) => asked.person.roles.includes(role))
    ? null
    : { code: 'role-missing', facts: { needs: roles, type } };

function timeProblem(fact: RoomFact, now: string): RoomProblem | null {
  const told = fact.type === 'AirLogged' ? fact.rows.map(({ at }) => at) : [];
  const latest = [fact.happenedAt ?? '', ...told].sort().at(-1) ?? '';
  return latest !== '' && Date.parse(latest) > Date.parse(now) + clockSlackMs
    ? { code: 'in-the-future', facts: { happenedAt: latest, now } }
    : null;
}

function setUpProblem({ poles, meshes, machines }: RoomFactOf<'RoomSetUp'>): RoomProblem | null {
  const twice = <Item extends { readonly name: string }>(
    items: readonly Item[],
    keyOf: (item: Item) => string,
  ) => items.find((item, index) => items.findIndex((other) => keyOf(other) === keyOf(item)) !== index);
  const places = [...poles, ...meshes];
  const place = twice(places, ({ spot }) => spot) ?? twice(places, ({ name }) => name);
  if (place !== undefined)
    return { code: 'room-part-named-twice', facts: { what: 'place', name: place.name } };
  const machine = twice(machines, (one) => one.machine) ?? twice(machines, ({ name }) => name);
  return machine === undefined
    ? null
    : { code: 'room-part-named-twice', facts: { what: 'machine', name: machine.name } };
}

function sensorProblem(standing: RoomStanding, sensor: string): RoomProblem | null {
  const known = standing.sensors.find((one) => one.sensor === sensor);
  if (known === undefined) return { code: 'sensor-unknown', facts: { sensor } };
  return known.revokedAt === null
    ? null
    : { code: 'sensor-revoked', facts: { sensor: known.name, revokedAt: known.revokedAt } };
}

/** A description is replaced by the next, a revoked token must stay revoked, and a withdrawal stands. */
export const staysForGood: readonly RoomFact['type'][] = [
  'RoomSetUp',
  'SensorIssued',
  'SensorRevoked',
  'EntryWithdrawn',
];

/** What a closed room still takes: its mistakes are put right, and its tokens taken away. */
const whenClosed: readonly RoomFact['type'][] = ['EntryWithdrawn', 'SensorRevoked'];

function withdrawalProblem(
  entries: readonly RoomEntry[],
  { entry }: RoomFactOf<'EntryWithdrawn'>,
  asked: Asked,
): RoomProblem | null {
  const target = entries.find(({ id }) => id === entry);
  if (target === undefined) return { code: 'entry-unknown', facts: { entry } };
  const again = entries.some(({ fact }) => fact.type === 'EntryWithdrawn' && fact.entry === entry);
  if (again) return { code: 'entry-withdrawn-already', facts: { entry } };
  const { type } = target.fact;
  if (staysForGood.includes(type)) {
    return { code: 'entry-not-withdrawable', facts: { entry, type } };
  }
  return type !== 'RoomClosed' && target.by === asked.person.person
    ? null
    : needs(asked, 'EntryWithdrawn', 'owner');
}

/**
 * Whether a fact of a drying room may be recorded.
 *
 * @param entries - the room's stream, oldest first
 * @param fact - the fact asked for, of a valid shape
 * @param asked - who asks, when, and the workshop's settings
 * @returns the fact to append
 * @refuses see RoomProblem - each with the facts its words need
 * @source none: rules of this project
 */
export function decideRoom(
  entries: readonly Entry[],
  fact: RoomFact,
  asked: Asked,
): Result<RoomFact, RoomProblem> {
  const standing = roomStandingOf(entries);
  const problem =
    timeProblem(fact, asked.now) ?? ruleOf(entries as readonly RoomEntry[], standing, fact, asked);
  return problem === null ? done(fact) : { ok: false, problem };
}

function ruleOf(
  entries: readonly RoomEntry[],
  standing: RoomStanding,
  fact: RoomFact,
  asked: Asked,
): RoomProblem | null {
  const { closed } = standing;
  if (closed !== null && !whenClosed.includes(fact.type)) {
    return { code: 'room-closed', facts: { room: standing.setUp?.name ?? '', closedAt: closed.when } };
  }
  if (fact.type === 'RoomSetUp') return needs(asked, fact.type, 'owner') ?? setUpProblem(fact);
  if (standing.setUp === null) return { code: 'room-not-set-up', facts: {} };
  switch (fact.type) {
    case 'RoomClosed':
    case 'SensorIssued':
      return needs(asked, fact.type, 'owner');
    case 'SensorRevoked':
      return needs(asked, fact.type, 'owner') ?? sensorProblem(standing, fact.sensor);
    case 'EntryWithdrawn':
      return withdrawalProblem(entries, fact, asked);
    case 'MachineSwitched':
      return (
        needs(asked, fact.type, 'owner', 'washer') ??
        (standing.setUp.machines.some(({ machine }) => machine === fact.machine)
          ? null
          : { code: 'machine-unknown', facts: { machine: fact.machine } })
      );
    case 'AirRead':
      return (
        needs(asked, fact.type, 'owner', 'washer') ??
        (fact.airC === undefined && fact.rh === undefined ? { code: 'nothing-measured', facts: {} } : null)
      );
    case 'AirLogged': {
      const empty = fact.rows.findIndex(({ airC, rh }) => airC === undefined && rh === undefined);
      const row = fact.rows[empty];
      return (
        needs(asked, fact.type, 'owner', 'washer') ??
        (row === undefined ? null : { code: 'air-rows-empty', facts: { row: empty + 1, at: row.at } })
      );
    }
    // The server alone makes these, of a release that was judged already.
    case 'RunLearnt':
      return null;
    case 'WindowSet':
    case 'LoggerMapped':
      return needs(asked, fact.type, 'owner', 'washer');
  }
}
