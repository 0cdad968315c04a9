import type { Estimate } from '../core/air/index.ts';
import type { Extraction, Posture, Touch } from '../core/drying/index.ts';
import { type FibreShares, massBandOf, shippedRulebook, type WashPlan } from '../core/wash/index.ts';
import { done, type Result, refused } from '../units/index.ts';
import { dryingPlaceOf, type SpotPosition } from './dryingPlace.ts';
import { blendOf, ovenDryMassOf } from './dryStandard.ts';
import type { postures } from './facts/drying.ts';
import { agreedPlan, type SizeNotMeasured, sizeOf, soundClaim } from './planFacts.ts';
import { latestVisit, type RugStanding, type VisitStanding } from './standing.ts';
import { wetNowSince } from './wetting.ts';

const { shop } = shippedRulebook;

/** One look at a drying rug, as far as a forecast can use it. */
export interface DryingLook {
  readonly when: string;
  readonly massKg?: number | undefined;
  readonly pocketRh?: number | undefined;
  /** Highest point of the meter less its dry reference. */
  readonly meterAboveDry?: number | undefined;
  readonly touch?: Touch | undefined;
}

/** What a forecast is told of a rug: from its dossier alone. */
export interface DryingRug {
  readonly rug: string;
  readonly title: string;
  readonly tag: string;
  readonly widthMm: number;
  readonly lengthMm: number;
  readonly areaM2: number;
  readonly ovenDry: Estimate;
  readonly ovenDryFrom: 'weighed' | 'mass band';
  readonly fibres: FibreShares;
  /** Null while nobody named it soundly. */
  readonly construction: string | null;
  /** Null before it is hung. */
  readonly room: string | null;
  readonly spot: string | null;
  /** Where along its pole or mesh; null: nobody measured. */
  readonly position: SpotPosition | null;
  readonly place: string | null;
  readonly wettedAt: string;
  readonly hungAt: string;
  readonly extraction: Extraction | null;
  /** Whether heat was on where it was put, as somebody said; null: nobody did. */
  readonly heated: boolean | null;
  /** How it lay or hung from when on; at least one. */
  readonly postures: readonly { readonly when: string; readonly posture: Posture }[];
  readonly looks: readonly DryingLook[];
  /** The warmest air its plan allows [°C]; null without a plan. */
  readonly airAtMostC: number | null;
}

const postureOf: { readonly [P in (typeof postures)[number]]: Posture } = {
  hung: 'hung',
  'flat on mesh': 'mesh',
  'flat on floor': 'floor',
  // Face down on a cloth, one face gives off water.
  'face down flat': 'floor',
};

/** Cloths leave about as much water as dripping off does. */
const extractionOf: { readonly [E in WashPlan['bounds']['extraction']]: Extraction } = {
  centrifuge: 'centrifuge',
  'squeegee and vacuum': 'squeegee and vacuum',
  'vacuum under a screen': 'drained',
  'blot with cloths': 'drained',
};

/** Oven-dry mass by what its construction weighs per area, where nobody weighed the rug before the water. */
function massByArea(standing: RugStanding, areaM2: number): Estimate {
  const construction = soundClaim(standing, 'construction')?.construction ?? 'unknown';
  const band = massBandOf(construction) ?? shop.massKgPerM2.unknown;
  const likely = Math.sqrt(band.least * band.most);
  return { likely: likely * areaM2, least: band.least * areaM2, most: band.most * areaM2 };
}

const looksOf = (visit: VisitStanding, from: string): readonly DryingLook[] => {
  let reference: number | undefined;
  const inOrder = [...visit.readings].sort((a, b) => (a.when < b.when ? -1 : 1));
  return inOrder.flatMap(({ when, massKg, pocketRh, meter, meterDryReference, touch }) => {
    reference = meterDryReference ?? reference;
    if (when < from) return [];
    const highest = meter === undefined ? undefined : Math.max(...meter.map(({ reading }) => reading));
    const meterAboveDry = highest === undefined || reference === undefined ? undefined : highest - reference;
    return [{ when, massKg, pocketRh, meterAboveDry, touch }];
  });
};

function commonOf(standing: RugStanding, visit: VisitStanding, rug: string, areaM2: number) {
  const weighed = ovenDryMassOf(standing, visit);
  const fibres = blendOf(standing);
  return {
    rug,
    title: standing.opened?.title ?? '',
    tag: visit.received.tag,
    areaM2,
    ovenDry: weighed ?? massByArea(standing, areaM2),
    ovenDryFrom: weighed === null ? ('mass band' as const) : ('weighed' as const),
    construction: soundClaim(standing, 'construction')?.construction ?? null,
    fibres: Object.keys(fibres).length === 0 ? ({ unknown: 1 } as const) : fibres,
    airAtMostC: agreedPlan(standing)?.bounds.dryingTemperatureC ?? null,
  };
}

/**
 * A rug that hangs or lies in a drying room, as a forecast is told of it.
 *
 * @param standing - the rug's standing
 * @param rug - its id
 * @returns null when it does not dry anywhere now
 * @refuses size-not-measured - the water it gives off goes with its area
 * @source none: rule of this project; posture and extraction by computation of data/drying/settings.json
 */
export function dryingRugOf(standing: RugStanding, rug: string): Result<DryingRug, SizeNotMeasured> | null {
  const place = dryingPlaceOf(standing);
  const visit = latestVisit(standing);
  const [begun] = visit?.dryingPlaces ?? [];
  if (place === null || visit === null || begun === undefined) return null;
  const size = sizeOf(standing);
  if (size === null) return refused('size-not-measured', {});
  const changes = [...visit.dryingPlaces, ...visit.turnings.filter(({ when }) => when >= begun.when)];
  const planned = agreedPlan(standing)?.bounds.extraction;
  return done({
    ...commonOf(standing, visit, rug, size.areaM2),
    ...{ widthMm: size.widthMm, lengthMm: size.lengthMm },
    ...place,
    place: standing.place,
    heated: visit.dryingPlaces.at(-1)?.heated ?? null,
    wettedAt: wetNowSince(visit) ?? begun.when,
    hungAt: begun.when,
    extraction:
      visit.dryingPlaces.findLast(({ extraction }) => extraction !== undefined)?.extraction ??
      (planned === undefined ? null : extractionOf[planned]),
    postures: changes
      .map(({ when, posture }) => ({ when, posture: postureOf[posture] }))
      .sort((a, b) => (a.when < b.when ? -1 : 1)),
    looks: looksOf(visit, begun.when),
  });
}

/** What dries in a room: as a forecast is told of it, and what no forecast can be told of. */
export interface Hanging {
  readonly rugs: readonly DryingRug[];
  /** Nobody measured these, so their water is unknown. */
  readonly unmeasured: readonly Pick<DryingRug, 'rug' | 'tag' | 'title'>[];
}

/**
 * Rugs of a room, those that nobody measured apart.
 *
 * @param standings - of the rugs that dry there
 * @source none: rule of this project
 */
export function hangingOf(
  standings: readonly { readonly rug: string; readonly standing: RugStanding }[],
): Hanging {
  const told = standings.map(({ rug, standing }) => ({ rug, standing, drying: dryingRugOf(standing, rug) }));
  return {
    rugs: told.flatMap(({ drying }) => (drying?.ok === true ? [drying.value] : [])),
    unmeasured: told.flatMap(({ rug, standing, drying }) =>
      drying?.ok === false
        ? [{ rug, tag: latestVisit(standing)?.received.tag ?? '', title: standing.opened?.title ?? '' }]
        : [],
    ),
  };
}

/** Minutes from first wetting to the pole, by the shop's slowest pace. */
const minutesBeforeHanging = (areaM2: number): number =>
  areaM2 * shop.washAndRinseMinPerM2.most + shop.extractionMin.most + 15;

const later = (instant: string, minutes: number) =>
  new Date(Date.parse(instant) + minutes * 60_000).toISOString();

/**
 * A rug as it would hang if its wash began now.
 *
 * @param standing - the rug's standing, not yet wetted
 * @param rug - its id
 * @param plan - the plan the record supports, for extraction and posture; null: the slowest of both
 * @param now - instant at which the wash begins
 * @param hasMesh - whether the room has a mesh to lie on
 * @refuses size-not-measured
 * @source none: pace of the wash by data/wash/shopFacts.json, air within 15 minutes of extraction
 */
export function plannedDryingRug(
  standing: RugStanding,
  rug: string,
  plan: WashPlan['bounds'] | null,
  now: string,
  hasMesh: boolean,
): Result<DryingRug, SizeNotMeasured> {
  const visit = latestVisit(standing);
  const size = sizeOf(standing);
  if (size === null || visit === null) return refused('size-not-measured', {});
  const hungAt = later(now, minutesBeforeHanging(size.areaM2));
  const flat = hasMesh ? 'mesh' : 'floor';
  const posture =
    plan === null
      ? 'floor'
      : ({ hung: 'hung', flat, 'flat, face down': 'floor' } as const)[plan.dryingPosture];
  return done({
    ...commonOf(standing, visit, rug, size.areaM2),
    ...{ widthMm: size.widthMm, lengthMm: size.lengthMm, room: null, spot: null },
    ...{ position: null, place: null, heated: null },
    ...{ wettedAt: now, hungAt, postures: [{ when: hungAt, posture }], looks: [] },
    extraction: plan === null ? null : extractionOf[plan.extraction],
    airAtMostC: plan?.dryingTemperatureC ?? null,
  });
}
