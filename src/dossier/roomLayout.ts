import settings from '../../data/drying/room.json' with { type: 'json' };
import { shippedRulebook } from '../core/wash/index.ts';
import type { DryingRug } from './dryingRug.ts';
import type { RoomFactOf } from './roomFacts.ts';

type SetUp = RoomFactOf<'RoomSetUp'>;

/** A rug in its place: along a pole over which it is folded once, or flat on a mesh. */
export interface PlacedRug {
  readonly rug: DryingRug;
  /** From the left end to its edge; where nobody measured, where there is room for it. */
  readonly fromMm: number;
  readonly isMeasured: boolean;
  readonly alongMm: number;
  /** Longest free drop of a hung rug; how deep it lies on a mesh. */
  readonly acrossMm: number;
  readonly wetKg: number;
  /** What its warps carry, for each metre of width [kg/m]; null on a mesh. */
  readonly warpKgPerM: number | null;
  /** Heavier, wet, than one person may lift. */
  readonly isTeamLift: boolean;
}

/** What is free between one rug and the next; negative where they overlap. */
export interface SpotGap {
  readonly fromMm: number;
  readonly gapMm: number;
  /** By both neighbours' measured places. */
  readonly isMeasured: boolean;
  /** Tags of the neighbours. */
  readonly between: readonly [string, string];
}

export type PlaceWarning =
  | { readonly code: 'pole-overloaded'; readonly loadKg: number; readonly mostKg: number }
  | { readonly code: 'pole-strength-unknown'; readonly loadKg: number }
  | {
      readonly code: 'too-close';
      readonly gapMm: number;
      readonly leastMm: number;
      /** Where both were measured: which. */
      readonly between?: readonly [string, string];
    }
  | { readonly code: 'overlaps'; readonly byMm: number; readonly between: readonly [string, string] }
  | { readonly code: 'past-the-end'; readonly byMm: number; readonly tag: string }
  | { readonly code: 'does-not-fit'; readonly neededMm: number; readonly lengthMm: number }
  | { readonly code: 'poles-too-close'; readonly gapMm: number; readonly leastMm: number };

/** A pole or a mesh with what hangs or lies there, from left to right. */
export interface RoomPlace {
  readonly spot: string;
  readonly name: string;
  readonly kind: 'pole' | 'mesh';
  readonly lengthMm: number;
  readonly widthMm: number | null;
  readonly rugs: readonly PlacedRug[];
  readonly gaps: readonly SpotGap[];
  readonly loadKg: number;
  readonly warnings: readonly PlaceWarning[];
}

interface Stretch {
  readonly fromMm: number;
  readonly alongMm: number;
}
const endOf = ({ fromMm, alongMm }: Stretch): number => fromMm + alongMm;
const byPlace = (a: Stretch, b: Stretch): number => a.fromMm - b.fromMm;

/** The longest stretch that nothing measured or drawn covers. */
function longestFree(taken: readonly Stretch[], lengthMm: number): Stretch {
  let [reached, best] = [0, { fromMm: 0, alongMm: 0 }];
  for (const one of [...taken].sort(byPlace).concat({ fromMm: lengthMm, alongMm: 0 })) {
    if (one.fromMm - reached > best.alongMm) best = { fromMm: reached, alongMm: one.fromMm - reached };
    reached = Math.max(reached, endOf(one));
  }
  return best;
}

/** From the left end, for each rug in the order given: as measured, the others where there is room. */
function placesAlong(
  rugs: readonly { readonly rug: DryingRug; readonly alongMm: number }[],
  lengthMm: number,
): readonly number[] {
  const measured = rugs.map(({ rug: { position }, alongMm }) =>
    position === null ? null : position.from === 'left' ? position.mm : lengthMm - position.mm - alongMm,
  );
  if (measured.every((fromMm) => fromMm === null)) {
    const used = rugs.reduce((sum, { alongMm }) => sum + alongMm, 0);
    const share = Math.max(0, lengthMm - used) / (rugs.length + 1);
    let next = share;
    return rugs.map(({ alongMm }) => {
      const fromMm = next;
      next += alongMm + share;
      return fromMm;
    });
  }
  const taken: Stretch[] = rugs.flatMap(({ alongMm }, at) => {
    const fromMm = measured[at] ?? null;
    return fromMm === null ? [] : [{ fromMm, alongMm }];
  });
  return rugs.map(({ alongMm }, at) => {
    const known = measured[at] ?? null;
    if (known !== null) return known;
    const free = longestFree(taken, lengthMm);
    const fromMm = free.fromMm + Math.max(0, free.alongMm - alongMm) / 2;
    taken.push({ fromMm, alongMm });
    return fromMm;
  });
}

const gapsOf = (placed: readonly PlacedRug[]): readonly SpotGap[] =>
  placed.slice(1).flatMap((next, at): readonly SpotGap[] => {
    const before = placed[at];
    if (before === undefined) return [];
    return [
      {
        fromMm: endOf(before),
        gapMm: next.fromMm - endOf(before),
        isMeasured: before.isMeasured && next.isMeasured,
        between: [before.rug.tag, next.rug.tag],
      },
    ];
  });

/** Whether rugs fit, as far as it is measured where they are; else whether they could. */
function fitWarnings(
  placed: readonly PlacedRug[],
  gaps: readonly SpotGap[],
  lengthMm: number,
  leastMm: number,
): readonly PlaceWarning[] {
  const used = placed.reduce((sum, { alongMm }) => sum + alongMm, 0);
  const outside = placed.flatMap((one): readonly PlaceWarning[] => {
    const byMm = Math.max(-one.fromMm, endOf(one) - lengthMm);
    return one.isMeasured && byMm > 0 ? [{ code: 'past-the-end', byMm, tag: one.rug.tag }] : [];
  });
  const known = gaps.filter(({ isMeasured }) => isMeasured);
  const near = known.flatMap(({ gapMm, between }): readonly PlaceWarning[] => {
    if (gapMm < 0) return [{ code: 'overlaps', byMm: -gapMm, between }];
    return gapMm < leastMm ? [{ code: 'too-close', gapMm, leastMm, between }] : [];
  });
  if (used > lengthMm) return [...outside, ...near, { code: 'does-not-fit', neededMm: used, lengthMm }];
  // Rugs at the ends of a pole may touch nothing; the room between them is what dries their edges.
  const drawn = gaps.filter(({ isMeasured }) => !isMeasured);
  const shared = known.length === 0 ? [(lengthMm - used) / Math.max(1, placed.length - 1)] : [];
  const gapMm = Math.min(
    ...(known.length === 0 && drawn.length > 0 ? shared : drawn.map((gap) => gap.gapMm)),
  );
  const close = gapMm < leastMm;
  return [...outside, ...near, ...(close ? [{ code: 'too-close', gapMm, leastMm } as const] : [])];
}

function loadWarnings(
  pole: SetUp['poles'][number],
  placed: readonly PlacedRug[],
  loadKg: number,
): readonly PlaceWarning[] {
  const { least } = settings.gapMm;
  if (placed.length === 0) return [];
  const warnings: PlaceWarning[] = [];
  if (pole.mostKg === undefined) warnings.push({ code: 'pole-strength-unknown', loadKg });
  else if (loadKg > pole.mostKg) warnings.push({ code: 'pole-overloaded', loadKg, mostKg: pole.mostKg });
  if (pole.toNextMm !== undefined && pole.toNextMm < least) {
    warnings.push({ code: 'poles-too-close', gapMm: pole.toNextMm, leastMm: least });
  }
  return warnings;
}

/** The longer side lies along the longer side of the mesh. */
const lyingOn =
  (mesh: SetUp['meshes'][number]) =>
  ({ widthMm, lengthMm }: DryingRug) => {
    const [short, long] = [Math.min(widthMm, lengthMm), Math.max(widthMm, lengthMm)];
    const isAcross = short <= mesh.lengthMm && long <= mesh.widthMm;
    return isAcross ? { alongMm: short, acrossMm: long } : { alongMm: long, acrossMm: short };
  };

/**
 * What hangs and lies where in a room, and what to warn of.
 *
 * @param setUp - the room
 * @param rugs - what dries in it
 * @param wetKgOf - what a rug weighs now, water and all [kg]
 * @returns each pole and mesh with its rugs from left to right, and the rugs whose place nobody named
 * @source none: workshop setting, 10 to 15 cm between rugs; loads are mass by length, common practice;
 *   the lifting filter of the shop's facts (data/wash/shopFacts.json)
 */
export function roomLayout(
  setUp: SetUp,
  rugs: readonly DryingRug[],
  wetKgOf: (rug: DryingRug) => number,
): { readonly places: readonly RoomPlace[]; readonly elsewhere: readonly DryingRug[] } {
  const placedOn = (
    spot: string,
    lengthMm: number,
    sizeOf: (rug: DryingRug) => { readonly alongMm: number; readonly acrossMm: number },
    hangs: boolean,
  ) => {
    const here = rugs.filter((rug) => rug.spot === spot).sort((a, b) => (a.hungAt < b.hungAt ? -1 : 1));
    const sized = here.map((rug) => ({ rug, ...sizeOf(rug) }));
    const from = placesAlong(sized, lengthMm);
    const placed = sized.map(({ rug, alongMm, acrossMm }, at): PlacedRug => {
      const wetKg = wetKgOf(rug);
      return {
        ...{ rug, alongMm, acrossMm, wetKg, fromMm: from[at] ?? 0, isMeasured: rug.position !== null },
        warpKgPerM: hangs ? ((wetKg / rug.areaM2) * acrossMm) / 1000 : null,
        isTeamLift: wetKg > shippedRulebook.shop.liftingLimitKg,
      };
    });
    placed.sort(byPlace);
    const loadKg = placed.reduce((sum, { wetKg }) => sum + wetKg, 0);
    return { placed, gaps: gapsOf(placed), loadKg };
  };
  const poles = setUp.poles.map((pole): RoomPlace => {
    const { spot, name, lengthMm } = pole;
    const size = (rug: DryingRug) => ({ alongMm: rug.widthMm, acrossMm: rug.lengthMm / 2 });
    const { placed, gaps, loadKg } = placedOn(spot, lengthMm, size, true);
    const warnings = [
      ...fitWarnings(placed, gaps, lengthMm, settings.gapMm.least),
      ...loadWarnings(pole, placed, loadKg),
    ];
    return { ...{ spot, name, kind: 'pole', lengthMm, widthMm: null }, rugs: placed, gaps, loadKg, warnings };
  });
  const meshes = setUp.meshes.map((mesh): RoomPlace => {
    const { spot, name, lengthMm, widthMm } = mesh;
    const { placed, gaps, loadKg } = placedOn(spot, lengthMm, lyingOn(mesh), false);
    const deepest = Math.max(0, ...placed.map(({ acrossMm }) => acrossMm));
    const warnings: readonly PlaceWarning[] = [
      ...fitWarnings(placed, gaps, lengthMm, 0),
      ...(deepest > widthMm ? [{ code: 'does-not-fit', neededMm: deepest, lengthMm: widthMm } as const] : []),
    ];
    return { ...{ spot, name, kind: 'mesh', lengthMm, widthMm }, rugs: placed, gaps, loadKg, warnings };
  });
  const places = [...poles, ...meshes];
  const known = new Set(places.map(({ spot }) => spot));
  return { places, elsewhere: rugs.filter(({ spot }) => spot === null || !known.has(spot)) };
}
