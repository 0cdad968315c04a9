import type { RoomFactOf } from '../../src/dossier/index.ts';

/** An invented room: two poles, a mesh, a dehumidifier, a fan. */
export const inventedRoom: RoomFactOf<'RoomSetUp'> = {
  type: 'RoomSetUp',
  name: 'Drying room',
  volumeM3: 90,
  airSpeedMPerS: 0.2,
  airChangesPerHour: 0.4,
  openAirChangesPerHour: 6,
  poles: [
    { spot: 'pole-1', name: 'Pole 1', lengthMm: 4200, mostKg: 80, toNextMm: 900 },
    { spot: 'pole-2', name: 'Pole 2', lengthMm: 4200 },
  ],
  meshes: [{ spot: 'mesh-1', name: 'Mesh 1', lengthMm: 3500, widthMm: 2500 }],
  machines: [
    {
      ...{ kind: 'dehumidifier', machine: 'dry-1', name: 'Dehumidifier 1', works: 'refrigerant' },
      ...{ litresPerDay: 60, ratedC: 30, ratedRh: 0.8, watts: 900 },
    },
    { kind: 'fan', machine: 'fan-1', name: 'Fan 1', airSpeedMPerS: 1.5, watts: 120 },
  ],
};
