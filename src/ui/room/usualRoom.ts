import type { RoomFactOf } from '../../dossier/index.ts';

/** A small room to begin the description with; nothing of it counts before an owner has recorded it. */
export const usualRoom: RoomFactOf<'RoomSetUp'> = {
  type: 'RoomSetUp',
  name: 'Drying room',
  volumeM3: 60,
  airSpeedMPerS: 0.2,
  airChangesPerHour: 0.5,
  openAirChangesPerHour: 5,
  poles: [{ spot: 'pole-1', name: 'Pole 1', lengthMm: 4000 }],
  meshes: [{ spot: 'mesh-1', name: 'Mesh 1', lengthMm: 3500, widthMm: 2500 }],
  machines: [],
};
