import type { RoomFact, RoomFactOf, RoomFactType } from '../dossier/index.ts';
import { measureWords, type UnitSystem } from '../units/index.ts';

/** What an entry of a room says: the act, and the words under it. */
export interface RoomFactTold {
  readonly did: string;
  readonly words?: string;
}

/** How machines, sensors and instants are named where the words are shown. */
export interface RoomFactNames {
  readonly machine: (machine: string) => string;
  readonly sensor: (sensor: string) => string;
  readonly at: (instant: string) => string;
  readonly units: UnitSystem;
}

type Tellers = {
  readonly [Type in RoomFactType]: (
    fact: RoomFactOf<Type>,
    names: RoomFactNames,
    rows: number,
  ) => RoomFactTold;
};

const where = (place: 'room' | 'outside') => (place === 'room' ? 'in the room' : 'outside');

function airWords(
  { airC, rh }: { readonly airC?: number | undefined; readonly rh?: number | undefined },
  units: UnitSystem,
): string {
  const parts = [
    airC === undefined ? '' : measureWords('temperature', airC, units),
    rh === undefined ? '' : `${Math.round(rh * 100)} % RH`,
  ];
  return parts.filter((part) => part !== '').join(', ');
}

const tellers: Tellers = {
  RoomSetUp: ({ name, poles, meshes, machines, volumeM3 }, { units }) => ({
    did: `described the room: ${name}`,
    words: `${measureWords('volume', volumeM3, units)}, poles: ${poles.length}, meshes: ${meshes.length}, machines: ${machines.length}`,
  }),
  MachineSwitched: ({ machine, on }, names) => ({
    did: `switched ${names.machine(machine)} ${on ? 'on' : 'off'}`,
  }),
  WindowSet: ({ open }) => ({ did: open ? 'opened the windows' : 'shut the windows' }),
  AirRead: (fact, { units }) => ({
    did: `read the air ${where(fact.where)}: ${airWords(fact, units)}`,
  }),
  AirLogged: ({ where: place, from, rows: [first, ...rest] }, { units, at }, rows) => {
    const last = rest.at(-1);
    if (first === undefined) return { did: `read ${from} ${where(place)}` };
    const [one, end] = [first, last].map((row) =>
      row === undefined ? '' : `${airWords(row, units)} (${at(row.at)})`,
    );
    return rows > 1
      ? { did: `took in ${rows} readings of ${from}, ${where(place)}`, words: `${one} to ${end}` }
      : { did: `read ${from} ${where(place)}: ${airWords(first, units)}`, words: at(first.at) };
  },
  LoggerMapped: ({ logger, where: place }) => ({
    did: `said what the columns of ${logger} hold`,
    words: where(place),
  }),
  SensorIssued: ({ name, where: place }) => ({ did: `gave ${name} a token`, words: where(place) }),
  SensorRevoked: ({ sensor, why }, names) => ({
    did: `took the token of ${names.sensor(sensor)} away`,
    ...(why === undefined ? {} : { words: why }),
  }),
  RunLearnt: ({ construction, readings }) => ({
    did: 'accepted a rug as dry, and its readings taught this room',
    words: `${construction ?? 'make unknown'}, readings: ${readings}`,
  }),
  RoomClosed: ({ why }) => ({ did: 'closed the room', ...(why === undefined ? {} : { words: why }) }),
  EntryWithdrawn: ({ reason }) => ({ did: 'withdrew an entry', words: reason }),
};

/**
 * What an entry of a room says.
 *
 * @param fact - of the entry
 * @param names - of what it only knows by id
 * @param rows - how many readings it holds, where only the first and last are at hand
 */
export const roomFactWords = (fact: RoomFact, names: RoomFactNames, rows: number | null): RoomFactTold =>
  (tellers[fact.type] as (fact: RoomFact, names: RoomFactNames, rows: number) => RoomFactTold)(
    fact,
    names,
    rows ?? 1,
  );
