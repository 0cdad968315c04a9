import type { NeighbourNotMeasured, RoomProblem, RoomScenarioProblem } from '../dossier/index.ts';
import type { Problem } from '../units/index.ts';
import type { blockedWords } from './blockedWords.ts';
import type { dossierWords } from './dossierWords.ts';
import type { WordsFor } from './words.ts';
import type { workWords } from './workWords.ts';

type None = Readonly<Record<never, never>>;

/** Refusals of what a sensor sends, before anything is looked at. */
export type SensorProblem =
  | Problem<'sensor-token-missing', None>
  | Problem<'sensor-token-wrong', { readonly room: string }>
  | Problem<
      'sensor-too-often',
      {
        readonly sensor: string;
        readonly most: number;
        readonly overMinutes: number;
        readonly seconds: number;
      }
    >;

/** A room in which something still dries is not closed. */
export type RoomNotEmpty = Problem<'room-not-empty', { readonly rugs: readonly string[] }>;

type Own = Exclude<
  RoomProblem | RoomScenarioProblem | NeighbourNotMeasured | RoomNotEmpty,
  { readonly code: keyof typeof blockedWords | keyof typeof dossierWords | keyof typeof workWords }
>;
const day = (at: string) => `${at.slice(0, 10)} ${at.slice(11, 16)} UTC`;

/** Problems of drying rooms and of the sensors in them. */
export const roomWords = {
  'room-not-set-up': () => ({
    happened: 'This drying room is not set up yet.',
    matters: 'Without its size, poles and machines nothing can be reckoned in it.',
    now: 'An owner describes the room first, on the drying room page.',
  }),
  'room-closed': ({ room, closedAt }) => ({
    happened: `${room === '' ? 'This drying room' : room} was closed on ${day(closedAt)}.`,
    matters: 'Nothing dries there any more: what is recorded of it would be in nobody’s forecast.',
    now: 'Choose another room. An owner opens this one again by withdrawing its closing, in the record on its page.',
  }),
  'room-not-empty': ({ rugs }) => ({
    happened: `Still wet in this room: ${rugs.join(', ')}.`,
    matters: 'A rug in a closed room would be in nobody’s forecast and nobody’s alarms.',
    now: 'Move each to another place, or accept it as dry; then close the room.',
  }),
  'room-air-unknown': ({ lastReadAt, mostHours }) => ({
    happened:
      lastReadAt === null
        ? 'Nobody has read the air of this room yet.'
        : `The air of this room was last read on ${day(lastReadAt)}.`,
    matters: `How much water the air takes hangs first of all on its temperature and humidity; a reading older than ${mostHours} h says nothing of now.`,
    now: 'Read thermometer and hygrometer among the rugs and record both.',
  }),
  'neighbour-not-measured': ({ rugs }) => ({
    happened: `In this room hangs, wet and not measured: ${rugs.join('; ')}.`,
    matters:
      'What hangs there already delays this rug by the water it gives to the air, and without a size nobody can reckon that water: a forecast would be too early.',
    now: 'Measure length and width of each where it hangs, then forecast again.',
  }),
  'room-part-named-twice': ({ what, name }) => ({
    happened: `Two ${what === 'place' ? 'poles or meshes' : 'machines'} are called ${name}.`,
    matters: 'A rug or a switch could be recorded for the wrong one.',
    now: 'Give each a name of its own.',
  }),
  'machine-unknown': ({ machine }) => ({
    happened: `There is no machine ${machine} in this room.`,
    matters: 'Switching it would change no forecast.',
    now: 'Open the room again and choose from its list.',
  }),
  'sensor-unknown': ({ sensor }) => ({
    happened: `There is no sensor ${sensor} in this room.`,
    matters: 'Nothing was taken away.',
    now: 'Open the list of sensors again and choose from it.',
  }),
  'sensor-revoked': ({ sensor, revokedAt }) => ({
    happened: `The token of ${sensor} was revoked on ${day(revokedAt)}.`,
    matters: 'Nothing it sends is recorded any more.',
    now: 'An owner gives it a new token on the drying room page.',
  }),
  'air-rows-empty': ({ row, at }) => ({
    happened: `Reading ${row} of ${day(at)} holds neither a temperature nor a humidity.`,
    matters: 'Nothing of what was sent was recorded, so that it can be sent again whole.',
    now: 'Give temperatureC in °C, humidity as a fraction between 0 and 1, or both.',
  }),
  'sensor-token-missing': () => ({
    happened: 'No token came with the readings.',
    matters: 'Anybody could otherwise write into the room’s record.',
    now: 'Send the header “Authorization: Bearer” and the token that was shown when the sensor was added.',
  }),
  'sensor-token-wrong': ({ room }) => ({
    happened: `The token opens no sensor of room ${room}.`,
    matters: 'Nothing was recorded.',
    now: 'Check the room in the address and the token; an owner can make a new one on the drying room page.',
  }),
  'sensor-too-often': ({ sensor, most, overMinutes, seconds }) => ({
    happened: `${sensor} sent more than ${most} times in ${overMinutes} minutes.`,
    matters: 'A room’s air changes in minutes; more would fill the record and tell nothing.',
    now: `Wait ${seconds} s. Send several readings together, each with its time.`,
  }),
} satisfies WordsFor<Own | SensorProblem>;
