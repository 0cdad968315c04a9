import type { RoomFactOf } from '../../dossier/index.ts';

/** The workshop's drying room: everything in it is invented. */
export const demoRoom = 'larkfield-drying-room';

export const demoRoomSetUp: RoomFactOf<'RoomSetUp'> = {
  type: 'RoomSetUp',
  name: 'Drying room',
  volumeM3: 110,
  airSpeedMPerS: 0.2,
  airChangesPerHour: 0.4,
  openAirChangesPerHour: 5,
  poles: [
    { spot: 'pole-1', name: 'Pole 1', lengthMm: 4500, mostKg: 70, toNextMm: 900 },
    { spot: 'pole-2', name: 'Pole 2', lengthMm: 4500, mostKg: 70, toNextMm: 900 },
    { spot: 'pole-3', name: 'Pole 3', lengthMm: 3000 },
  ],
  meshes: [
    { spot: 'mesh-1', name: 'Mesh 1', lengthMm: 3600, widthMm: 2600 },
    { spot: 'mesh-2', name: 'Mesh 2', lengthMm: 3600, widthMm: 2600 },
    { spot: 'mesh-3', name: 'Mesh 3', lengthMm: 2200, widthMm: 2000 },
  ],
  machines: [
    {
      ...{ kind: 'dehumidifier', machine: 'dry-1', name: 'Dehumidifier, grey', works: 'refrigerant' },
      ...{ litresPerDay: 80, ratedC: 30, ratedRh: 0.8, watts: 1100 },
    },
    {
      ...{ kind: 'dehumidifier', machine: 'dry-2', name: 'Dehumidifier, blue', works: 'refrigerant' },
      ...{ litresPerDay: 80, ratedC: 30, ratedRh: 0.8, watts: 1100 },
    },
    { kind: 'fan', machine: 'fan-1', name: 'Long fan', airSpeedMPerS: 1.2, watts: 180 },
  ],
};

/** Hours before the demo opens at which something was switched. The blue machine tripped its breaker. */
export const demoSwitches = [
  { hoursAgo: 900, machine: 'dry-1', on: true },
  { hoursAgo: 900, machine: 'dry-2', on: true },
  { hoursAgo: 900, machine: 'fan-1', on: true },
  { hoursAgo: 3.1, machine: 'dry-2', on: false },
] as const;

/** The probe sends what it kept every four hours, a reading each half hour. */
export const probePosts = {
  name: 'Probe by the poles',
  everyHours: 4,
  fromHoursAgo: 196,
  untilHoursAgo: 0.4,
} as const;

/** Air as the probe read it so many hours before the opening. */
export const probeAir = (hoursAgo: number) => ({
  temperatureC: Number((28.5 + 0.4 * Math.sin(hoursAgo / 3)).toFixed(1)),
  humidity: Number((hoursAgo > 3 ? 0.35 + 0.02 * Math.sin(hoursAgo / 2) : 0.57 - 0.07 * hoursAgo).toFixed(3)),
});

export const outsideRead: RoomFactOf<'AirRead'> = { type: 'AirRead', where: 'outside', airC: 7.5, rh: 0.82 };
