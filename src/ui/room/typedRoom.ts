import type { RoomFactOf, RoomMachine } from '../../dossier/index.ts';

type SetUp = RoomFactOf<'RoomSetUp'>;

/** A room while it is being described: what is not typed yet is null; everything in the units it is kept in. */
export interface TypedRoom {
  readonly name: string;
  readonly volumeM3: number | null;
  readonly airSpeedMPerS: number | null;
  readonly airChangesPerHour: number | null;
  readonly openAirChangesPerHour: number | null;
  readonly wallsWPerK: number | null;
  readonly poles: readonly {
    readonly spot: string;
    readonly name: string;
    readonly lengthMm: number | null;
    readonly mostKg: number | null;
    readonly toNextMm: number | null;
  }[];
  readonly meshes: readonly {
    readonly spot: string;
    readonly name: string;
    readonly lengthMm: number | null;
    readonly widthMm: number | null;
  }[];
  readonly machines: readonly RoomMachine[];
}

export const typedOf = (before: SetUp): TypedRoom => ({
  ...before,
  wallsWPerK: before.wallsWPerK ?? null,
  poles: before.poles.map((pole) => ({
    ...pole,
    ...{ mostKg: pole.mostKg ?? null, toNextMm: pole.toNextMm ?? null },
  })),
});

/** The fact, or null while a figure or a name is missing. */
export function factOf(typed: TypedRoom): SetUp | null {
  const { volumeM3, airSpeedMPerS, airChangesPerHour, openAirChangesPerHour, wallsWPerK, machines } = typed;
  const name = typed.name.trim();
  if (name === '' || volumeM3 === null || airSpeedMPerS === null) return null;
  if (airChangesPerHour === null || openAirChangesPerHour === null) return null;
  const poles = typed.poles.flatMap((pole) => {
    const { spot, lengthMm, mostKg, toNextMm } = pole;
    if (lengthMm === null || pole.name.trim() === '') return [];
    const known = {
      ...(mostKg === null ? {} : { mostKg }),
      ...(toNextMm === null ? {} : { toNextMm }),
    };
    return [{ spot, name: pole.name.trim(), lengthMm, ...known }];
  });
  const meshes = typed.meshes.flatMap((mesh) => {
    const { spot, lengthMm, widthMm } = mesh;
    return lengthMm === null || widthMm === null || mesh.name.trim() === ''
      ? []
      : [{ spot, name: mesh.name.trim(), lengthMm, widthMm }];
  });
  if (poles.length < typed.poles.length || meshes.length < typed.meshes.length) return null;
  return {
    ...{ type: 'RoomSetUp', name, volumeM3, airSpeedMPerS, airChangesPerHour, openAirChangesPerHour },
    ...(wallsWPerK === null ? {} : { wallsWPerK }),
    ...{ poles, meshes, machines },
  };
}
