import * as z from 'zod/mini';
import type { Entry } from '../dossier/entry.ts';
import { fractionOfOne, id, instant, line } from '../dossier/facts/shape.ts';
import type { RoomAlarm } from '../dossier/roomAlarms.ts';
import { airPlaces, roomFacts } from '../dossier/roomFacts.ts';
import { type RoomLine, roomRecordParts } from '../dossier/roomRecord.ts';
import type { RoomRow } from '../dossier/roomRow.ts';
import type { RoomStanding } from '../dossier/roomStanding.ts';
import type { RugListRow } from './record.ts';

type RoomFactShape = (typeof roomFacts)[keyof typeof roomFacts];
/** Tokens, and what a rug taught, are made by the server: nobody may bring their own. */
const { SensorIssued: _issued, RunLearnt: _learnt, ...asked } = roomFacts;
const roomFact = z.discriminatedUnion('type', Object.values(asked) as [RoomFactShape, ...RoomFactShape[]]);

export const roomEntriesRequest = z.strictObject({
  expectedRevision: z.int().check(z.gte(0)),
  drafts: z.array(z.strictObject({ id, fact: roomFact })).check(z.minLength(1), z.maxLength(100)),
});
export type RoomEntriesRequest = z.infer<typeof roomEntriesRequest>;

export const sensorRequest = z.strictObject({ name: line, where: z.enum(airPlaces) });
export type SensorRequest = z.infer<typeof sensorRequest>;

/** What a sensor sends. Without a time a reading is of now. */
const sensorReading = z.strictObject({
  at: z.optional(instant),
  temperatureC: z.optional(z.number().check(z.gte(-40), z.lte(60))),
  humidity: z.optional(fractionOfOne),
});
export const sensorReadings = z.strictObject({
  readings: z.array(sensorReading).check(z.minLength(1), z.maxLength(500)),
});
export type SensorReadings = z.infer<typeof sensorReadings>;

export interface RoomListRow {
  readonly room: string;
  readonly body: RoomRow;
}

export interface RoomsAnswer {
  readonly rooms: readonly RoomListRow[];
}

/** A rug that dries, in the room it is said to be in, with all that is recorded of it. */
export interface RoomRug extends RugListRow {
  readonly room: string | null;
  readonly entries: readonly Entry[];
}

export interface RoomAnswer {
  readonly room: string;
  readonly standing: RoomStanding;
  /** Those that hang or lie here, wet. */
  readonly hanging: readonly RoomRug[];
  /** Those that dry in no room that is named: their water is in nobody's forecast. */
  readonly elsewhere: readonly Omit<RoomRug, 'entries'>[];
  readonly now: string;
}

/** Which part of a room's record, from which revision back. */
export const roomRecordRequest = z.strictObject({
  part: z.enum(roomRecordParts),
  before: z.optional(z.string().check(z.regex(/^[1-9]\d{0,8}$/))),
});
export type RoomRecordRequest = z.infer<typeof roomRecordRequest>;

export interface RoomRecordAnswer {
  readonly lines: readonly RoomLine[];
  readonly more: boolean;
}

export interface SensorAnswer {
  readonly sensor: string;
  /** Shown once and kept nowhere. */
  readonly token: string;
}

export const forecastRequest = z.strictObject({ room: id });

/** What has to be said of one room, with the names of the rugs it speaks of. */
export interface RoomAlarmsTold {
  readonly room: string;
  readonly name: string;
  readonly alarms: readonly RoomAlarm[];
  readonly names: Readonly<Record<string, string>>;
  /** The instant of the forecast’s hour 0. */
  readonly zero: string;
}

export interface DryingAlarmsAnswer {
  readonly rooms: readonly RoomAlarmsTold[];
}
