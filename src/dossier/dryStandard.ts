import { type Estimate, equilibriumRegain, ovenDryMass } from '../core/air/index.ts';
import { fibresReckoned } from '../core/drying/index.ts';
import type { Fibre, FibreShares } from '../core/wash/index.ts';
import type { dryStandards } from './facts/drying.ts';
import { soundClaim } from './planFacts.ts';
import type { Noted, RugStanding, VisitStanding } from './standing.ts';
import { hoursBetween, wetSince } from './wetting.ts';

export type DryStandard = (typeof dryStandards)[number];

export type DryCriterionCode =
  | 'constant-mass'
  | 'confirmed-later'
  | 'meter-at-reference'
  | 'regain-at-room'
  | 'mass-not-above-intake'
  | 'pocket-humidity'
  | 'touch-smell-cloth';

/** What the readings show for a criterion; its words are in text/dryWords.ts. */
export type DryFound =
  | { readonly kind: 'not-measured' }
  | { readonly kind: 'weighings'; readonly count: number; readonly needed: number }
  | { readonly kind: 'spread'; readonly ratio: number }
  | { readonly kind: 'spread-or-spacing'; readonly ratio: number }
  | { readonly kind: 'room-humidity-unknown' }
  | { readonly kind: 'room-too-damp'; readonly mostRh: number }
  | { readonly kind: 'fifth-agrees' }
  | { readonly kind: 'pocket'; readonly rh: number }
  | { readonly kind: 'no-reference' }
  | { readonly kind: 'meter'; readonly highest: number; readonly reference: number }
  | { readonly kind: 'no-intake-mass' }
  | { readonly kind: 'water'; readonly ratio: Estimate; readonly limit: number }
  /** Weighed lighter than it can be without any water and with much soil gone: the scale, or another rug. */
  | { readonly kind: 'below-bone-dry'; readonly nowKg: number; readonly ovenDryKg: number }
  | { readonly kind: 'masses'; readonly nowKg: number; readonly intakeKg: number }
  | {
      readonly kind: 'senses';
      readonly touch: string | null;
      readonly smell: string | null;
      readonly cloth: string | null;
    };

/** One criterion of the dry standard, with what was found. */
export interface DryCriterion {
  readonly code: DryCriterionCode;
  readonly met: boolean;
  readonly found: DryFound;
}

type Reading = Noted<'DryingReading'>;
type Weighed = Reading & { readonly massKg: number };

/** Bounds of the standard; all are workshop settings, the constant mass after the idea of ISO 8543. */
export const dryBounds = {
  weighings: 4,
  hoursApart: 1,
  massWithin: 0.01,
  roomRhAtMost: 0.6,
  confirmedAfterHours: 12,
  pocketRhAtMost: 0.65,
  meterAboveReference: 2,
  soilLostAtMost: 0.1,
} as const;

/** Weighings an hour apart may be a few minutes early. */
const almostAnHour = 0.9;

const isWeighed = (reading: Reading): reading is Weighed => reading.massKg !== undefined;

/**
 * Fibre blend of the whole rug for its water: the pile's, with a third of the mass as foundation where
 * that is known; empty when the pile is not.
 *
 * @source none: share of the foundation is a workshop setting, common practice, no published source
 */
export function blendOf(standing: RugStanding): FibreShares {
  const pile = soundClaim(standing, 'pile')?.fibres;
  if (pile === undefined) return {};
  const foundation = [soundClaim(standing, 'warp')?.fibre, soundClaim(standing, 'weft')?.fibre];
  const known = foundation.filter((fibre) => fibre !== undefined);
  const share = known.length === 0 ? 0 : 1 / 3;
  const blend: Partial<Record<Fibre, number>> = {};
  for (const [fibre, part] of Object.entries(pile) as [Fibre, number][]) {
    blend[fibre] = part * (1 - share);
  }
  for (const fibre of known) blend[fibre] = (blend[fibre] ?? 0) + share / known.length;
  return blend;
}

/**
 * Water a dried rug keeps at rest at 65 % RH, the limit of the dry standard [kg/kg oven-dry]. A fibre nobody
 * named counts as the natural one that keeps least, as in the forecast.
 *
 * @source none: desorption regain of core/air; unknown fibre by core/drying
 */
export function waterAtRest(standing: RugStanding): number {
  const blend = blendOf(standing);
  const fibres = fibresReckoned({ fibres: Object.keys(blend).length === 0 ? { unknown: 1 } : blend });
  return equilibriumRegain(fibres, 0.65, 'from the wet side').likely;
}

/** The last weighing of this visit before any water: dusting makes the rug lighter and is counted. */
const intakeWeighing = (standing: RugStanding, visit: VisitStanding) => {
  const wet = wetSince(visit);
  return standing.weighings.findLast(
    ({ when }) => when >= visit.received.when && (wet === null || when <= wet),
  );
};

/** Oven-dry mass from the intake weighing, or null when the rug was not weighed before it was wetted. */
export function ovenDryMassOf(standing: RugStanding, visit: VisitStanding): Estimate | null {
  const weighed = intakeWeighing(standing, visit);
  if (weighed === undefined) return null;
  return ovenDryMass(weighed.massKg, blendOf(standing), weighed.airRh ?? null, weighed.restedADay);
}

/** Water per oven-dry fibre at a mass, with its range [kg/kg]. */
export const moistureRatio = (massKg: number, ovenDry: Estimate): Estimate => ({
  likely: massKg / ovenDry.likely - 1,
  least: massKg / ovenDry.most - 1,
  most: massKg / ovenDry.least - 1,
});

const spreadOf = (readings: readonly Weighed[]) => {
  const masses = readings.map(({ massKg }) => massKg);
  return (Math.max(...masses) - Math.min(...masses)) / Math.min(...masses);
};

const agree = (one: Weighed, other: Weighed): boolean =>
  Math.abs(one.massKg / other.massKg - 1) <= dryBounds.massWithin;

/** The latest run of four weighings at least an hour apart, in a dry enough room, within one per cent. */
function constantRun(weighed: readonly Weighed[]): readonly Weighed[] | null {
  const inDryRoom = weighed.filter(({ airRh }) => airRh !== undefined && airRh <= dryBounds.roomRhAtMost);
  for (let last = inDryRoom.length - 1; last >= 0; last--) {
    const run: Weighed[] = [];
    for (const reading of inDryRoom.slice(0, last + 1).reverse()) {
      const next = run[0];
      if (next === undefined || hoursBetween(reading.when, next.when) >= almostAnHour) run.unshift(reading);
      if (run.length === dryBounds.weighings) break;
    }
    if (run.length === dryBounds.weighings && spreadOf(run) <= dryBounds.massWithin) return run;
  }
  return null;
}

function massFound(weighed: readonly Weighed[]): DryFound {
  const latest = weighed.slice(-dryBounds.weighings);
  if (latest.length < dryBounds.weighings) {
    return { kind: 'weighings', count: latest.length, needed: dryBounds.weighings };
  }
  if (latest.some(({ airRh }) => airRh === undefined)) return { kind: 'room-humidity-unknown' };
  const mostRh = Math.max(...latest.map(({ airRh }) => airRh ?? 1));
  if (mostRh > dryBounds.roomRhAtMost) return { kind: 'room-too-damp', mostRh };
  return { kind: 'spread-or-spacing', ratio: spreadOf(latest) };
}

function constantMass(weighed: readonly Weighed[]): DryCriterion {
  const run = constantRun(weighed);
  const end = run?.at(-1);
  const latest = weighed.at(-1);
  // A run that a later weighing left behind was a pause in the drying, or is the mass of another state.
  const met = end !== undefined && latest !== undefined && agree(latest, end);
  const found: DryFound =
    run === null || !met ? massFound(weighed) : { kind: 'spread', ratio: spreadOf(run) };
  return { code: 'constant-mass', met, found };
}

const latestPocket = (readings: readonly Reading[]) =>
  readings.findLast(({ pocketRh }) => pocketRh !== undefined)?.pocketRh;

function pocketHumidity(readings: readonly Reading[]): DryCriterion {
  const rh = latestPocket(readings);
  return {
    code: 'pocket-humidity',
    met: rh !== undefined && rh <= dryBounds.pocketRhAtMost,
    found: rh === undefined ? { kind: 'not-measured' } : { kind: 'pocket', rh },
  };
}

function confirmedLater(weighed: readonly Weighed[], readings: readonly Reading[]): DryCriterion {
  const latest = weighed.at(-1);
  const earlier = weighed.filter(
    ({ when }) => latest !== undefined && hoursBetween(when, latest.when) >= dryBounds.confirmedAfterHours,
  );
  const end = constantRun(earlier)?.at(-1);
  const fifth = latest !== undefined && end !== undefined && agree(latest, end);
  const pocket = pocketHumidity(readings);
  return {
    code: 'confirmed-later',
    met: fifth || pocket.met,
    found: fifth ? { kind: 'fifth-agrees' } : pocket.found,
  };
}

function meterAtReference(readings: readonly Reading[]): DryCriterion {
  const code = 'meter-at-reference';
  const latest = readings.findLast(({ meter }) => meter !== undefined)?.meter;
  const reference = readings.findLast((one) => one.meterDryReference !== undefined)?.meterDryReference;
  if (latest === undefined) return { code, met: false, found: { kind: 'not-measured' } };
  if (reference === undefined) return { code, met: false, found: { kind: 'no-reference' } };
  const highest = Math.max(...latest.map(({ reading }) => reading));
  const met = highest <= reference + dryBounds.meterAboveReference;
  return { code, met, found: { kind: 'meter', highest, reference } };
}

function regainAtRoom(
  standing: RugStanding,
  visit: VisitStanding,
  weighed: readonly Weighed[],
): DryCriterion {
  const code = 'regain-at-room';
  const ovenDry = ovenDryMassOf(standing, visit);
  const latest = weighed.at(-1);
  if (ovenDry === null) return { code, met: false, found: { kind: 'no-intake-mass' } };
  if (latest === undefined) return { code, met: false, found: { kind: 'not-measured' } };
  const ratio = moistureRatio(latest.massKg, ovenDry);
  const limit = waterAtRest(standing);
  if (ratio.most < -dryBounds.soilLostAtMost) {
    const found = { kind: 'below-bone-dry', nowKg: latest.massKg, ovenDryKg: ovenDry.likely } as const;
    return { code, met: false, found };
  }
  // As far as the dry mass is known: the lower end must reach the limit, the other criteria carry the rest.
  return { code, met: ratio.least <= limit, found: { kind: 'water', ratio, limit } };
}

function massNotAboveIntake(
  standing: RugStanding,
  visit: VisitStanding,
  weighed: readonly Weighed[],
): DryCriterion {
  const code = 'mass-not-above-intake';
  const intakeKg = intakeWeighing(standing, visit)?.massKg;
  const nowKg = weighed.at(-1)?.massKg;
  if (intakeKg === undefined) return { code, met: false, found: { kind: 'no-intake-mass' } };
  if (nowKg === undefined) return { code, met: false, found: { kind: 'not-measured' } };
  return { code, met: nowKg <= intakeKg, found: { kind: 'masses', nowKg, intakeKg } };
}

function touchSmellCloth(readings: readonly Reading[]): DryCriterion {
  const touch = readings.findLast((reading) => reading.touch !== undefined)?.touch ?? null;
  const smell = readings.findLast((reading) => reading.smell !== undefined)?.smell ?? null;
  const cloth = readings.findLast((reading) => reading.whiteCloth !== undefined)?.whiteCloth ?? null;
  return {
    code: 'touch-smell-cloth',
    met: touch === 'dry' && smell === 'none' && cloth === 'clean',
    found: { kind: 'senses', touch, smell, cloth },
  };
}

/**
 * The dry standard, criterion by criterion, for the readings of a visit. Touch alone never passes.
 *
 * @param standing - the rug's standing
 * @param visit - the visit whose readings count
 * @param standard - `full`, or a weaker one for a workshop without a scale or without a meter
 * @returns all criteria of that standard, each met or not, with what was found
 * @source none: workshop setting; constant mass after the idea of iso-8543, touch after morton-hearle
 */
export function dryCriteria(
  standing: RugStanding,
  visit: VisitStanding,
  standard: DryStandard,
): readonly DryCriterion[] {
  const readings = visit.readings
    .filter(({ when }) => when >= (visit.wettedAgainAt ?? ''))
    .sort((a, b) => (a.when < b.when ? -1 : 1));
  const weighed = readings.filter(isWeighed);
  const byMass = () => [
    constantMass(weighed),
    confirmedLater(weighed, readings),
    regainAtRoom(standing, visit, weighed),
    massNotAboveIntake(standing, visit, weighed),
  ];
  switch (standard) {
    case 'full':
      return [...byMass(), meterAtReference(readings), touchSmellCloth(readings)];
    case 'without meter':
      return [...byMass(), touchSmellCloth(readings)];
    case 'without scale':
      return [meterAtReference(readings), pocketHumidity(readings), touchSmellCloth(readings)];
  }
}
