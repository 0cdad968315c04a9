import * as z from 'zod/mini';
import { separators, timeForms } from '../core/drying/index.ts';
import type { Entry } from './entry.ts';
import {
  type Frozen,
  fact,
  fractionOfOne,
  id,
  instant,
  lengthMm,
  line,
  massKg,
  passage,
  sha256,
} from './facts/shape.ts';

const between = (least: number, most: number) => z.number().check(z.gte(least), z.lte(most));
/** Air of rooms and of the day outside; a bath may be hotter, air is not. */
const airC = between(-40, 60);
const watts = between(1, 50_000);

const pole = z.strictObject({
  spot: id,
  name: line,
  lengthMm,
  /** What it carries, all wet rugs together; unknown is said so beside the load. */
  mostKg: z.optional(massKg),
  /** To the next pole: rugs over neighbouring poles need air between them. */
  toNextMm: z.optional(lengthMm),
});
const mesh = z.strictObject({ spot: id, name: line, lengthMm, widthMm: lengthMm });

const named = { machine: id, name: line };
const machine = z.discriminatedUnion('kind', [
  z.strictObject({
    ...named,
    kind: z.literal('dehumidifier'),
    works: z.enum(['refrigerant', 'desiccant']),
    /** A rating without its conditions says nothing: makers rate at very damp air. */
    litresPerDay: between(0.1, 2000),
    ratedC: between(5, 45),
    ratedRh: between(0.1, 1),
    watts: z.optional(watts),
  }),
  z.strictObject({
    ...named,
    kind: z.literal('fan'),
    /** Along the faces of the rugs it blows at. */
    airSpeedMPerS: between(0.1, 15),
    watts: z.optional(watts),
  }),
  z.strictObject({ ...named, kind: z.literal('heater'), watts, untilC: z.optional(between(5, 45)) }),
]);

const air = { airC: z.optional(airC), rh: z.optional(fractionOfOne) };
const airRow = z.strictObject({ at: instant, airC: z.optional(airC), rh: z.optional(fractionOfOne) });
export const airPlaces = ['room', 'outside'] as const;

const column = z.int().check(z.gte(0), z.lte(500));
/** How a logger writes its files, learnt once and kept. */
const mapping = z.strictObject({
  separator: z.enum(separators),
  decimal: z.enum(['.', ',']),
  skipLines: z.int().check(z.gte(0), z.lte(10_000)),
  columns: z.strictObject({
    time: column,
    clock: z.optional(column),
    temperature: column,
    humidity: column,
  }),
  timeForm: z.enum(timeForms),
  temperatureUnit: z.enum(['°C', '°F']),
  humidityUnit: z.enum(['%', 'of 1']),
});

/** What readings said of a number: its middle, and the spread of its logarithm. */
const evidence = z.nullable(
  z.strictObject({ likely: z.number().check(z.gt(0)), spread: z.number().check(z.gt(0)) }),
);

/** Every kind of fact a drying room's stream may hold, by type. */
export const roomFacts = {
  /** The whole room as it is from now on; recorded again when something in it changes. */
  RoomSetUp: fact('RoomSetUp', {
    name: line,
    volumeM3: between(5, 20_000),
    /** Along the faces of what hangs, when every fan stands still. */
    airSpeedMPerS: between(0, 10),
    /** With the windows shut, and with them open. */
    airChangesPerHour: between(0, 60),
    openAirChangesPerHour: between(0, 200),
    /** What the walls let through for each degree; absent: the room's temperature is taken as it is. */
    wallsWPerK: z.optional(between(1, 100_000)),
    poles: z.array(pole).check(z.maxLength(60)),
    meshes: z.array(mesh).check(z.maxLength(60)),
    machines: z.array(machine).check(z.maxLength(60)),
  }),
  MachineSwitched: fact('MachineSwitched', { machine: id, on: z.boolean() }),
  WindowSet: fact('WindowSet', { open: z.boolean() }),
  /** One look at a thermometer and hygrometer. */
  AirRead: fact('AirRead', { where: z.enum(airPlaces), ...air }),
  /** Many readings at once: a logger's file, or what a sensor sent. */
  AirLogged: fact('AirLogged', {
    where: z.enum(airPlaces),
    from: line,
    rows: z.array(airRow).check(z.minLength(1), z.maxLength(5000)),
  }),
  LoggerMapped: fact('LoggerMapped', { logger: line, where: z.enum(airPlaces), mapping }),
  /** A sensor may send readings. Of its token only the SHA-256 is anywhere. */
  SensorIssued: fact('SensorIssued', {
    sensor: id,
    name: line,
    where: z.enum(airPlaces),
    tokenHash: sha256,
  }),
  SensorRevoked: fact('SensorRevoked', { sensor: id, why: z.optional(passage) }),
  /**
   * What a rug's readings taught of this room and of its make, made by the server when the rug was accepted as
   * dry. The latest of a visit counts.
   */
  RunLearnt: fact('RunLearnt', {
    rug: id,
    visit: id,
    /** Null: it says nothing of its kind. */
    construction: z.nullable(line),
    g: evidence,
    resistance: evidence,
    criticalRegain: evidence,
    readings: z.int().check(z.gte(1)),
  }),
  /** No rug dries here any more: the room is gone from every choice, its record stays. */
  RoomClosed: fact('RoomClosed', { why: z.optional(passage) }),
  EntryWithdrawn: fact('EntryWithdrawn', { entry: id, reason: passage }),
};

export type RoomFactType = keyof typeof roomFacts;
export type RoomFactOf<Type extends RoomFactType> = Frozen<z.infer<(typeof roomFacts)[Type]>>;
export type RoomFact = { [Type in RoomFactType]: RoomFactOf<Type> }[RoomFactType];
export type RoomEntry = Entry<RoomFact>;
export type RoomMachine = RoomFactOf<'RoomSetUp'>['machines'][number];
