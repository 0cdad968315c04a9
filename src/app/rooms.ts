import type {
  RoomAnswer,
  RoomEntriesRequest,
  RoomRecordAnswer,
  RoomRecordRequest,
  RoomRug,
  RoomsAnswer,
  SensorAnswer,
  SensorReadings,
  SensorRequest,
} from '../contract/rooms.ts';
import { dryingPlaceOf } from '../dossier/dryingPlace.ts';
import type { Entry, EntryDraft } from '../dossier/entry.ts';
import { standingOf } from '../dossier/evolve.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import { decideRoom, type RoomProblem } from '../dossier/roomDecide.ts';
import type { RoomFact } from '../dossier/roomFacts.ts';
import { roomRecord } from '../dossier/roomRecord.ts';
import type { RoomRow } from '../dossier/roomRow.ts';
import { type RoomStanding, roomStandingOf } from '../dossier/roomStanding.ts';
import type { RequestProblem } from '../text/httpWords.ts';
import type { RoomNotEmpty, SensorProblem } from '../text/roomWords.ts';
import { done, type Result, refused } from '../units/index.ts';
import { askedBy } from './asked.ts';
import type { Actor, House } from './house.ts';
import type { MovedOn } from './recordEntries.ts';
import { listRows, mostInHouse } from './rugs.ts';
import { readWorkshop } from './workshop.ts';

type Refusal =
  | RoomProblem
  | RoomNotEmpty
  | RequestProblem
  | MovedOn
  | Exclude<AppendProblem, { code: 'stream-moved-on' }>;

const mostRooms = 100;
const roomOf = (stream: string): string => stream.slice('room/'.length);

/** Every drying room, the first one first. */
export async function listRooms({ ledger }: House): Promise<RoomsAnswer> {
  const rows = await ledger.list({ kind: 'room', limit: mostRooms });
  const rooms = rows.map(({ stream, body }) => ({ room: roomOf(stream), body: body as RoomRow }));
  return { rooms: rooms.reverse() };
}

/** Hours of air that a room's page is told of; what came before is in the record. */
const hoursTold = 120;

const recent = (standing: RoomStanding, now: string): RoomStanding => {
  const from = new Date(Date.parse(now) - hoursTold * 3_600_000).toISOString();
  const since = ({ when }: { readonly when: string }) => when >= from;
  const room = standing.room.filter(since);
  const outside = standing.outside.filter(since);
  return {
    ...standing,
    // The newest reading is told however old it is, so that its age can be shown.
    room: room.length > 0 ? room : standing.room.slice(-1),
    outside: outside.length > 0 ? outside : standing.outside.slice(-1),
  };
};

/** Every rug that dries in the house now, with its whole stream. */
export async function dryingRugs(house: House): Promise<readonly RoomRug[]> {
  const rows = await listRows(house, { inHouse: true, limit: mostInHouse });
  const wet = rows.filter(({ body }) => body.wetSince !== null);
  const read = await Promise.all(
    wet.map(async (row) => ({ ...row, entries: await house.ledger.read(row.stream) })),
  );
  return read.flatMap((row) => {
    const place = dryingPlaceOf(standingOf(row.entries));
    return place === null ? [] : [{ ...row, room: place.room }];
  });
}

export async function readRoom(house: House, room: string): Promise<Result<RoomAnswer, RequestProblem>> {
  const entries = await house.ledger.read(`room/${room}`);
  if (entries.length === 0) return refused('room-unknown', { room });
  const now = house.clock.now();
  const drying = await dryingRugs(house);
  return done({
    ...{ room, standing: recent(roomStandingOf(entries), now), now },
    hanging: drying.filter((rug) => rug.room === room),
    elsewhere: drying.filter((rug) => rug.room === null).map(({ entries: _entries, ...row }) => row),
  });
}

/** Lines of a room's record told at a time. */
const linesTold = 40;

/** What was recorded of a room, newest first. */
export async function readRoomRecord(
  { ledger }: House,
  room: string,
  { part, before }: RoomRecordRequest,
): Promise<Result<RoomRecordAnswer, RequestProblem>> {
  const entries = await ledger.read(`room/${room}`);
  if (entries.length === 0) return refused('room-unknown', { room });
  return done(
    roomRecord(entries, part, before === undefined ? Number.POSITIVE_INFINITY : Number(before), linesTold),
  );
}

/** What still dries in a room keeps it open. */
async function notEmptyProblem(house: House, room: string): Promise<RoomNotEmpty | null> {
  const rugs = (await dryingRugs(house))
    .filter((rug) => rug.room === room)
    .map(({ body }) => `${body.tag ?? ''} ${body.title}`.trim());
  return rugs.length === 0 ? null : { code: 'room-not-empty', facts: { rugs } };
}

/** What a room's description replaces as a whole must be changed on the newest; everything else adds up. */
const replacesAll = (fact: RoomFact): boolean => fact.type === 'RoomSetUp';

/** Records facts of a room, each judged against the newest standing. */
export async function recordRoom(
  house: House,
  actor: Actor,
  room: string,
  {
    expectedRevision,
    drafts,
  }: Omit<RoomEntriesRequest, 'drafts'> & {
    readonly drafts: readonly { readonly id: string; readonly fact: RoomFact }[];
  },
): Promise<Result<readonly Entry[], Refusal>> {
  const stream = `room/${room}`;
  for (;;) {
    const entries = await house.ledger.read(stream);
    const asked = await askedBy(house, actor);
    const known = new Set(entries.map(({ id }) => id));
    const since = entries.filter(({ revision }) => revision > expectedRevision);
    const fresh = drafts.filter(({ id }) => !known.has(id));
    const isBehind = since.some(({ fact }) => replacesAll(fact as RoomFact));
    if (isBehind && fresh.some(({ fact }) => replacesAll(fact))) {
      const actualRevision = entries.length;
      return refused('stream-moved-on', { stream, expectedRevision, actualRevision, entries: since });
    }
    const isClosing = fresh.some(({ fact }) => fact.type === 'RoomClosed');
    const notEmpty = isClosing ? await notEmptyProblem(house, room) : null;
    if (notEmpty !== null) return { ok: false, problem: notEmpty };
    const ready: EntryDraft[] = [];
    const pending: Entry[] = [...entries];
    for (const { id, fact } of drafts) {
      const entry = { id, stream, at: asked.now, by: actor.person, version: 1, fact };
      ready.push(entry);
      if (known.has(id)) continue;
      const decided = decideRoom(pending, fact, asked);
      if (!decided.ok) return decided;
      pending.push({ ...entry, revision: pending.length + 1, seal: '' });
    }
    const appended = await house.ledger.append([{ stream, expectedRevision: entries.length, drafts: ready }]);
    if (appended.ok) return appended;
    if (appended.problem.code !== 'stream-moved-on') return { ok: false, problem: appended.problem };
  }
}

/** Lets a sensor send readings: its token is told once, and only the hash of it is kept. */
export async function issueSensor(
  house: House,
  actor: Actor,
  room: string,
  { name, where }: SensorRequest,
): Promise<Result<SensorAnswer, Refusal>> {
  const token = house.secrets.token();
  const sensor = house.ids.next();
  const fact = { type: 'SensorIssued', sensor, name, where, tokenHash: house.secrets.digest(token) } as const;
  const { revision } = await house.ledger.head(`room/${room}`);
  const drafts = [{ id: house.ids.next(), fact }];
  const recorded = await recordRoom(house, actor, room, { expectedRevision: revision, drafts });
  return recorded.ok ? done({ sensor, token }) : recorded;
}

/** So many posts of one sensor are taken in ten minutes: one every half minute. */
const mostPosts = 20;
const overMinutes = 10;
const posts = new WeakMap<House['ledger'], Map<string, readonly number[]>>();

/** Counts a post; the seconds until the next one is taken, or null when this one is. */
function waitOf({ ledger, clock }: House, sensor: string): number | null {
  const now = Date.parse(clock.now());
  const counted = posts.get(ledger) ?? new Map<string, readonly number[]>();
  posts.set(ledger, counted);
  const lately = (counted.get(sensor) ?? []).filter((at) => now - at < overMinutes * 60_000);
  const [oldest] = lately;
  if (oldest !== undefined && lately.length >= mostPosts) {
    return Math.ceil((oldest + overMinutes * 60_000 - now) / 1000);
  }
  counted.set(sensor, [...lately, now]);
  return null;
}

/** Records what a sensor sends, if its token opens this room. */
export async function takeReadings(
  house: House,
  room: string,
  token: string | null,
  readShape: () => Promise<Result<SensorReadings, RequestProblem>>,
): Promise<Result<{ readonly recorded: number }, Refusal | SensorProblem>> {
  if (token === null) return refused('sensor-token-missing', {});
  const standing = roomStandingOf(await house.ledger.read(`room/${room}`));
  const hash = house.secrets.digest(token);
  const sensor = standing.sensors.find(({ tokenHash }) => tokenHash === hash);
  if (sensor === undefined) return refused('sensor-token-wrong', { room });
  const { revokedAt, name, where } = sensor;
  if (revokedAt !== null) return refused('sensor-revoked', { sensor: name, revokedAt });
  const seconds = waitOf(house, sensor.sensor);
  if (seconds !== null)
    return refused('sensor-too-often', { sensor: name, most: mostPosts, overMinutes, seconds });
  const sent = await readShape();
  if (!sent.ok) return sent;
  const now = house.clock.now();
  const rows = sent.value.readings.map(({ at, temperatureC, humidity }) => ({
    at: at ?? now,
    ...(temperatureC === undefined ? {} : { airC: temperatureC }),
    ...(humidity === undefined ? {} : { rh: humidity }),
  }));
  // The device writes in the room's stream as a washer would, under its own name.
  const settings = (await readWorkshop(house)).settings;
  const asked = { now, person: { person: sensor.sensor, roles: ['washer'] as const }, settings };
  const fact: RoomFact = { type: 'AirLogged', where, from: name, rows };
  for (;;) {
    const entries = await house.ledger.read(`room/${room}`);
    const decided = decideRoom(entries, fact, asked);
    if (!decided.ok) return decided;
    const draft = {
      id: house.ids.next(),
      stream: `room/${room}`,
      at: now,
      by: sensor.sensor,
      version: 1,
      fact,
    };
    const append = { stream: `room/${room}`, expectedRevision: entries.length, drafts: [draft] };
    const appended = await house.ledger.append([append]);
    if (appended.ok) return done({ recorded: rows.length });
    if (appended.problem.code !== 'stream-moved-on') return { ok: false, problem: appended.problem };
  }
}
