import type { Entry } from './entry.ts';
import type { RoomEntry, RoomFactOf, RoomFactType } from './roomFacts.ts';
import type { Signed } from './standing.ts';

type Noted<Type extends RoomFactType> = RoomFactOf<Type> & Signed;

/** The air at an instant, as somebody or something read it. */
export interface AirAt {
  readonly when: string;
  readonly airC?: number | undefined;
  readonly rh?: number | undefined;
  /** Name of the logger or sensor; absent for one read by a person. */
  readonly from?: string | undefined;
  readonly by: string;
  readonly entry: string;
}

export interface SensorStanding {
  readonly sensor: string;
  readonly name: string;
  readonly where: 'room' | 'outside';
  readonly tokenHash: string;
  readonly issuedAt: string;
  readonly revokedAt: string | null;
}

/** When a machine was switched, or the windows set. */
export interface Switched {
  readonly when: string;
  readonly by: string;
  readonly on: boolean;
}

/** What a past rug taught of this room and of its make. */
export type PastRun = Noted<'RunLearnt'>;

/** What a drying room's entries amount to now, withdrawn ones left out. */
export interface RoomStanding {
  readonly revision: number;
  readonly seal: string;
  readonly setUp: Noted<'RoomSetUp'> | null;
  /** When nothing dries here any more; a closing that was withdrawn leaves the room open. */
  readonly closed: Noted<'RoomClosed'> | null;
  /** By machine, oldest first. */
  readonly switches: Readonly<Record<string, readonly Switched[]>>;
  readonly windows: readonly Switched[];
  /** In order of time, whoever read them. */
  readonly room: readonly AirAt[];
  readonly outside: readonly AirAt[];
  readonly loggers: Readonly<Record<string, Noted<'LoggerMapped'>>>;
  /** The latest instant that came from each logger or sensor. */
  readonly lastFrom: Readonly<Record<string, string>>;
  readonly sensors: readonly SensorStanding[];
  /** What past rugs taught, one for each visit, oldest first. */
  readonly past: readonly PastRun[];
}

const emptyRoom: RoomStanding = {
  revision: 0,
  seal: '',
  setUp: null,
  closed: null,
  switches: {},
  windows: [],
  room: [],
  outside: [],
  loggers: {},
  lastFrom: {},
  sensors: [],
  past: [],
};

const byTime = <Item extends { readonly when: string }>(items: Item[]): readonly Item[] =>
  items.sort((a, b) => (a.when < b.when ? -1 : a.when > b.when ? 1 : 0));

/** Folding with lists that grow, since a room hears from its sensors every few minutes for years. */
interface Growing {
  setUp: Noted<'RoomSetUp'> | null;
  closed: Noted<'RoomClosed'> | null;
  readonly switches: Record<string, Switched[]>;
  readonly windows: Switched[];
  readonly air: { readonly room: AirAt[]; readonly outside: AirAt[] };
  readonly loggers: Record<string, Noted<'LoggerMapped'>>;
  readonly lastFrom: Record<string, string>;
  sensors: SensorStanding[];
  past: PastRun[];
}

/** What decides the air along the faces: a room's factor holds only as long as this is described the same. */
const airOf = ({ airSpeedMPerS, machines }: RoomFactOf<'RoomSetUp'>): string =>
  JSON.stringify([
    airSpeedMPerS,
    ...machines.flatMap((one) => (one.kind === 'fan' ? [one.airSpeedMPerS] : [])).sort((a, b) => a - b),
  ]);

/** A later lesson of the same visit replaces an earlier one, also when it was itself taken out. */
function forget(into: Growing, { rug, visit }: RoomFactOf<'RunLearnt'>): void {
  into.past = into.past.filter((run) => run.rug !== rug || run.visit !== visit);
}

function take(into: Growing, { id: entry, at, by, fact }: RoomEntry): void {
  const when = fact.happenedAt ?? at;
  const signed: Signed = { entry, when, by };
  switch (fact.type) {
    case 'RoomSetUp':
      if (into.setUp !== null && airOf(into.setUp) !== airOf(fact)) {
        into.past = into.past.map((run) => ({ ...run, g: null }));
      }
      into.setUp = { ...fact, ...signed };
      break;
    case 'MachineSwitched': {
      const known = into.switches[fact.machine] ?? [];
      known.push({ when, by, on: fact.on });
      into.switches[fact.machine] = known;
      break;
    }
    case 'WindowSet':
      into.windows.push({ when, by, on: fact.open });
      break;
    case 'AirRead':
      into.air[fact.where].push({ airC: fact.airC, rh: fact.rh, ...signed });
      break;
    case 'AirLogged':
      for (const row of fact.rows) {
        const { at: rowAt, airC, rh } = row;
        into.air[fact.where].push({ airC, rh, when: rowAt, from: fact.from, by, entry });
        if (rowAt > (into.lastFrom[fact.from] ?? '')) into.lastFrom[fact.from] = rowAt;
      }
      break;
    case 'LoggerMapped':
      into.loggers[fact.logger] = { ...fact, ...signed };
      break;
    case 'SensorIssued': {
      const { sensor, name, where, tokenHash } = fact;
      into.sensors.push({ sensor, name, where, tokenHash, issuedAt: when, revokedAt: null });
      break;
    }
    case 'SensorRevoked':
      into.sensors = into.sensors.map((one) =>
        one.sensor === fact.sensor ? { ...one, revokedAt: when } : one,
      );
      break;
    case 'RunLearnt':
      forget(into, fact);
      into.past.push({ ...fact, ...signed });
      break;
    case 'RoomClosed':
      into.closed = { ...fact, ...signed };
      break;
    case 'EntryWithdrawn':
      break;
  }
}

/**
 * What a room's entries amount to: the fold over all that are not withdrawn.
 *
 * @param entries - the whole stream, oldest first
 * @source none: rule of this project
 */
export function roomStandingOf(entries: readonly Entry[]): RoomStanding {
  const all = entries as readonly RoomEntry[];
  const withdrawn = new Set(all.flatMap(({ fact }) => (fact.type === 'EntryWithdrawn' ? [fact.entry] : [])));
  const into: Growing = {
    setUp: null,
    closed: null,
    switches: {},
    windows: [],
    air: { room: [], outside: [] },
    loggers: {},
    lastFrom: {},
    sensors: [],
    past: [],
  };
  for (const entry of all) {
    if (!withdrawn.has(entry.id)) take(into, entry);
    else if (entry.fact.type === 'RunLearnt') forget(into, entry.fact);
  }
  const last = all.at(-1);
  return {
    ...emptyRoom,
    setUp: into.setUp,
    closed: into.closed,
    switches: Object.fromEntries(Object.entries(into.switches).map(([key, list]) => [key, byTime(list)])),
    windows: byTime(into.windows),
    room: byTime(into.air.room),
    outside: byTime(into.air.outside),
    loggers: into.loggers,
    lastFrom: into.lastFrom,
    sensors: into.sensors,
    past: into.past,
    ...(last === undefined ? {} : { revision: last.revision, seal: last.seal }),
  };
}

/** Whether a machine runs: one nobody ever switched on counts as standing still. */
export const runs = ({ switches }: RoomStanding, machine: string): boolean =>
  switches[machine]?.at(-1)?.on ?? false;

/** Whether the windows are open; shut until somebody says otherwise. */
export const windowsOpen = ({ windows }: RoomStanding): boolean => windows.at(-1)?.on ?? false;

/** Whether a room is heated by its own heaters, as far as its record can tell. */
export type RoomHeat =
  | { readonly heat: 'on'; readonly by: readonly string[] }
  | { readonly heat: 'off'; readonly by: readonly string[] }
  /** No heater is on its record: warm pipes or a stove may be all the same. */
  | { readonly heat: 'unknown' };

/**
 * Whether heat is on in a room.
 *
 * @param room - the room's standing
 * @returns on or off by the switches of its heaters, with their names; unknown where it has none
 * @source none: rule of this project
 */
export function roomHeatOf(room: RoomStanding): RoomHeat {
  const heaters = (room.setUp?.machines ?? []).filter(({ kind }) => kind === 'heater');
  const on = heaters.filter(({ machine }) => runs(room, machine));
  if (heaters.length === 0) return { heat: 'unknown' };
  return on.length > 0
    ? { heat: 'on', by: on.map(({ name }) => name) }
    : { heat: 'off', by: heaters.map(({ name }) => name) };
}
