import { issueSensor, recordRoom, takeReadings } from '../app/rooms.ts';
import type { RoomFact } from '../dossier/index.ts';
import {
  demoRoom,
  demoRoomSetUp,
  demoSwitches,
  outsideRead,
  probeAir,
  probePosts,
} from './story/dryingRoom.ts';
import { type Cast, type DemoStage, hoursBefore, must } from './tellDemo.ts';

interface RoomMoment {
  readonly hoursAgo: number;
  readonly tell: () => Promise<void>;
}

/** What happened in the drying room itself: its description, its switches, and what its probe sent. */
export function roomMoments({ house, setClock, opensAt }: DemoStage, cast: Cast): readonly RoomMoment[] {
  let token = '';
  const at = (hoursAgo: number, doing: () => Promise<void>): RoomMoment => ({
    hoursAgo,
    tell: async () => {
      setClock(hoursBefore(opensAt, hoursAgo));
      await doing();
    },
  });
  const record = async (by: keyof Cast, fact: RoomFact): Promise<void> => {
    const { revision } = await house.ledger.head(`room/${demoRoom}`);
    const drafts = [{ id: house.ids.next(), fact }];
    must(await recordRoom(house, cast[by], demoRoom, { expectedRevision: revision, drafts }));
  };
  const send = async (hoursAgo: number): Promise<void> => {
    const hours = Array.from(
      { length: probePosts.everyHours * 2 },
      (_, half) => hoursAgo + half / 2,
    ).reverse();
    const readings = hours.map((ago) => ({ at: hoursBefore(opensAt, ago), ...probeAir(ago) }));
    must(await takeReadings(house, demoRoom, token, async () => ({ ok: true, value: { readings } })));
  };
  const posts = Array.from(
    { length: Math.ceil((probePosts.fromHoursAgo - probePosts.untilHoursAgo) / probePosts.everyHours) },
    (_, post) => probePosts.untilHoursAgo + post * probePosts.everyHours,
  );
  return [
    at(1000, () => record('mirela', demoRoomSetUp)),
    at(990, async () => {
      const asked = { name: probePosts.name, where: 'room' } as const;
      ({ token } = must(await issueSensor(house, cast.mirela, demoRoom, asked)));
    }),
    ...demoSwitches.map(({ hoursAgo, machine, on }) =>
      at(hoursAgo, () => record('tobin', { type: 'MachineSwitched', machine, on })),
    ),
    ...posts.map((hoursAgo) => at(hoursAgo, () => send(hoursAgo))),
    at(2.2, () => record('tobin', outsideRead)),
  ];
}
