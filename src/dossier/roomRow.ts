import { type RoomStanding, runs, windowsOpen } from './roomStanding.ts';

/** What a list shows of a drying room. */
export interface RoomRow {
  readonly name: string;
  readonly poles: number;
  readonly meshes: number;
  readonly machinesOn: number;
  readonly machines: number;
  readonly windowsOpen: boolean;
  /** When it was closed; absent while it is in use. */
  readonly closedAt?: string;
}

/**
 * The row a list keeps for a room; null before it is set up.
 *
 * @source none: rule of this project
 */
export function roomRow(standing: RoomStanding): RoomRow | null {
  const { setUp } = standing;
  if (setUp === null) return null;
  return {
    name: setUp.name,
    poles: setUp.poles.length,
    meshes: setUp.meshes.length,
    machinesOn: setUp.machines.filter(({ machine }) => runs(standing, machine)).length,
    machines: setUp.machines.length,
    windowsOpen: windowsOpen(standing),
    ...(standing.closed === null ? {} : { closedAt: standing.closed.when }),
  };
}
