import settings from '../../data/drying/room.json' with { type: 'json' };
import type { DryingRug } from './dryingRug.ts';
import type { RoomFactOf } from './roomFacts.ts';

type SetUp = RoomFactOf<'RoomSetUp'>;

/** A rug in its place: along a pole over which it is folded once, or flat on a mesh. */
export interface PlacedRug {
  readonly rug: DryingRug;
  readonly fromMm: number;
  readonly alongMm: number;
  /** Longest free drop of a hung rug; how deep it lies on a mesh. */
  readonly acrossMm: number;
  readonly wetKg: number;
  /** What its warps carry, for each metre of width [kg/m]; null on a mesh. */
  readonly warpKgPerM: number | null;
}

export type PlaceWarning =
  | { readonly code: 'pole-overloaded'; readonly loadKg: number; readonly mostKg: number }
  | { readonly code: 'pole-strength-unknown'; readonly loadKg: number }
  | { readonly code: 'too-close'; readonly gapMm: number; readonly leastMm: number }
  | { readonly code: 'does-not-fit'; readonly neededMm: number; readonly lengthMm: number }
  | { readonly code: 'poles-too-close'; readonly gapMm: number; readonly leastMm: number };

/** A pole or a mesh with what hangs or lies there. */
export interface RoomPlace {
  readonly spot: string;
  readonly name: string;
  readonly kind: 'pole' | 'mesh';
  readonly lengthMm: number;
  readonly widthMm: number | null;
  readonly rugs: readonly PlacedRug[];
  readonly loadKg: number;
  readonly warnings: readonly PlaceWarning[];
}

/** Rugs one after another with the same gap before, between and after them. */
function inARow(
  rugs: readonly DryingRug[],
  lengthMm: number,
  size: (rug: DryingRug) => { readonly alongMm: number; readonly acrossMm: number },
  wetKgOf: (rug: DryingRug) => number,
  hangs: boolean,
) {
  const used = rugs.reduce((sum, rug) => sum + size(rug).alongMm, 0);
  const share = Math.max(0, lengthMm - used) / (rugs.length + 1);
  // Rugs at the ends of a pole may touch nothing; the room between them is what dries their edges.
  const gapMm = rugs.length < 2 ? Number.POSITIVE_INFINITY : (lengthMm - used) / (rugs.length - 1);
  let fromMm = share;
  const placed = rugs.map((rug): PlacedRug => {
    const { alongMm, acrossMm } = size(rug);
    const wetKg = wetKgOf(rug);
    const at = { rug, fromMm, alongMm, acrossMm, wetKg };
    fromMm += alongMm + share;
    return { ...at, warpKgPerM: hangs ? ((wetKg / rug.areaM2) * acrossMm) / 1000 : null };
  });
  return { placed, used, gapMm };
}

function warningsOf(
  pole: SetUp['poles'][number],
  loadKg: number,
  { used, gapMm, count }: { readonly used: number; readonly gapMm: number; readonly count: number },
): readonly PlaceWarning[] {
  const { least } = settings.gapMm;
  if (count === 0) return [];
  const warnings: PlaceWarning[] = [];
  if (pole.mostKg === undefined) warnings.push({ code: 'pole-strength-unknown', loadKg });
  else if (loadKg > pole.mostKg) warnings.push({ code: 'pole-overloaded', loadKg, mostKg: pole.mostKg });
  if (used > pole.lengthMm) {
    warnings.push({ code: 'does-not-fit', neededMm: used, lengthMm: pole.lengthMm });
  } else if (gapMm < least) warnings.push({ code: 'too-close', gapMm, leastMm: least });
  if (pole.toNextMm !== undefined && pole.toNextMm < least) {
    warnings.push({ code: 'poles-too-close', gapMm: pole.toNextMm, leastMm: least });
  }
  return warnings;
}

/**
 * What hangs and lies where in a room, and what to warn of.
 *
 * @param setUp - the room
 * @param rugs - what dries in it
 * @param wetKgOf - what a rug weighs now, water and all [kg]
 * @returns each pole and mesh with its rugs, and the rugs whose place nobody named
 * @source none: workshop setting, 10 to 15 cm between rugs; loads are mass by length, common practice
 */
export function roomLayout(
  setUp: SetUp,
  rugs: readonly DryingRug[],
  wetKgOf: (rug: DryingRug) => number,
): { readonly places: readonly RoomPlace[]; readonly elsewhere: readonly DryingRug[] } {
  const at = (spot: string) =>
    rugs.filter((rug) => rug.spot === spot).sort((a, b) => (a.hungAt < b.hungAt ? -1 : 1));
  const sum = (placed: readonly PlacedRug[]) => placed.reduce((all, { wetKg }) => all + wetKg, 0);
  const poles = setUp.poles.map((pole): RoomPlace => {
    const size = (rug: DryingRug) => ({ alongMm: rug.widthMm, acrossMm: rug.lengthMm / 2 });
    const { placed, used, gapMm } = inARow(at(pole.spot), pole.lengthMm, size, wetKgOf, true);
    const loadKg = sum(placed);
    const warnings = warningsOf(pole, loadKg, { used, gapMm, count: placed.length });
    const { spot, name, lengthMm } = pole;
    return { spot, name, kind: 'pole', lengthMm, widthMm: null, rugs: placed, loadKg, warnings };
  });
  const meshes = setUp.meshes.map((mesh): RoomPlace => {
    // The longer side lies along the longer side of the mesh.
    const size = (rug: DryingRug) => {
      const [short, long] = [Math.min(rug.widthMm, rug.lengthMm), Math.max(rug.widthMm, rug.lengthMm)];
      const fits = short <= mesh.lengthMm && long <= mesh.widthMm;
      return fits ? { alongMm: short, acrossMm: long } : { alongMm: long, acrossMm: short };
    };
    const { placed, used } = inARow(at(mesh.spot), mesh.lengthMm, size, wetKgOf, false);
    const { spot, name, lengthMm, widthMm } = mesh;
    const deepest = Math.max(0, ...placed.map(({ acrossMm }) => acrossMm));
    const warnings: readonly PlaceWarning[] =
      used > lengthMm || deepest > widthMm
        ? [{ code: 'does-not-fit', neededMm: Math.max(used, deepest), lengthMm }]
        : [];
    return { spot, name, kind: 'mesh', lengthMm, widthMm, rugs: placed, loadKg: sum(placed), warnings };
  });
  const places = [...poles, ...meshes];
  const known = new Set(places.map(({ spot }) => spot));
  return { places, elsewhere: rugs.filter(({ spot }) => spot === null || !known.has(spot)) };
}
