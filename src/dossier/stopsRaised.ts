import {
  type Band,
  clothWatch,
  isBleed,
  laidIn,
  lengthWatch,
  phBandOf,
  phWatch,
  type Rulebook,
  type RunOff,
  rescuePhBand,
  rinsePhBandOf,
  runOffWatch,
  type StopId,
  type StopLimits,
  stopNamed,
  stopWords,
  temperatureBandOf,
  temperatureWatch,
} from '../core/wash/index.ts';
import { benchGrade } from './benchGrades.ts';
import type { RugFact, RugFactOf } from './facts/index.ts';
import { agreedPlan, sizeOf, stepId } from './planFacts.ts';
import type { Asked } from './rule/rule.ts';
import { rulebookOf } from './rulebook.ts';
import { latestVisit, type RugStanding, type VisitStanding } from './standing.ts';
import { wetMinutesAreUsed } from './wetMinutes.ts';
import { isWet, wetClock } from './wetting.ts';
import type { WorkshopSettings } from './workshopFacts.ts';

/** Marks that are a new tear or split when they are found under work. */
const tears = ['tear', 'split', 'cut', 'hole', 'broken warps', 'broken wefts'];

/** Work on the wash floor: recording any of it after the wet minutes are over raises their stop. */
const floorWork = [
  'StepStarted',
  'StepDone',
  'BathMeasured',
  'RinseMeasured',
  'SpotTreated',
  'LengthChecked',
];

/** Whether a colour is being rescued, so that the rescue's band replaces the plan's. */
export const isRescuing = ({ stops }: VisitStanding): boolean =>
  stops.some(({ called, cleared }) => cleared === null && isBleed(called.condition));

/** Whether a colour was being rescued at an instant; the reading that showed it running was still the plan's. */
export const wasRescuing = ({ stops }: VisitStanding, when: string): boolean =>
  stops.some(
    ({ called, cleared }) =>
      isBleed(called.condition) && called.when < when && (cleared === null || cleared.when > when),
  );

/** What ran off before, oldest first, as long ago as it is. */
export const runOffsBefore = ({ baths, rinses }: VisitStanding, now: string) =>
  [...baths, ...rinses]
    .sort((a, b) => (a.when < b.when ? -1 : 1))
    .flatMap(({ runOff, when }) =>
      runOff === undefined
        ? []
        : [{ runOff: runOff as RunOff, minutesAgo: (Date.parse(now) - Date.parse(when)) / 60_000 }],
    );

type Measured = RugFactOf<'BathMeasured'> | RugFactOf<'RinseMeasured'>;

/** The bands a measured liquid keeps by the agreed plan; null where there is none. */
function bandsOf(
  standing: RugStanding,
  fact: Measured,
): { readonly ph: Band | null; readonly temperature: Band | null } {
  const plan = agreedPlan(standing);
  if (plan === null) return { ph: null, temperature: null };
  const step = plan.steps.find((one) => stepId(one) === fact.step);
  return {
    ph: fact.type === 'RinseMeasured' ? rinsePhBandOf(step, plan, fact.supplyPh) : phBandOf(step, plan),
    temperature: temperatureBandOf(step, plan),
  };
}

/** The band that what a flow lays keeps: the pH the rug is left with, as an acid rinse does. */
const layingBand = (standing: RugStanding): Band | null => {
  const band = agreedPlan(standing)?.bounds.finalPh ?? 'no liquid';
  return band === 'no liquid' ? null : band;
};

function ofLiquid(
  standing: RugStanding,
  visit: VisitStanding,
  fact: Measured,
  now: string,
  limits: StopLimits,
): readonly StopId[] {
  const { ph, temperatureC, whiteClothGrade, clothOn, runOff } = fact;
  const bands = bandsOf(standing, fact);
  // On its way down a rescue bath is above its band for a while; only too much acid is a stop of its own.
  const isTooAcid = ph !== undefined && ph < rescuePhBand.least;
  const isOffBand = ph !== undefined && bands.ph !== null && phWatch(ph, bands.ph, limits) === 'stop';
  const found: readonly (readonly [StopId, boolean])[] = [
    ['pH off band', isRescuing(visit) ? isTooAcid : isOffBand],
    [
      'temperature off',
      temperatureC !== undefined &&
        bands.temperature !== null &&
        temperatureWatch(temperatureC, bands.temperature, limits) === 'stop',
    ],
    [
      'cloth grade',
      whiteClothGrade !== undefined && clothWatch(whiteClothGrade, benchGrade(standing, clothOn)) === 'stop',
    ],
    [
      'run-off colour',
      runOff !== undefined && runOffWatch(runOff, runOffsBefore(visit, now), limits) === 'stop',
    ],
  ];
  return found.flatMap(([id, stops]) => (stops ? [id] : []));
}

/**
 * What a flow lays on the rug is among what the rug bears, and where it is acid it keeps the pH the rug is left
 * with, as an acid rinse does.
 */
function ofFlow(
  standing: RugStanding,
  { flow, step, choice, ph }: RugFactOf<'FlowLogged'>,
  { flows, stops }: Rulebook,
): readonly StopId[] {
  const known = flows.find(({ id }) => id === flow)?.steps.find(({ id }) => id === step);
  const bounds = agreedPlan(standing)?.bounds;
  if (bounds === undefined) return [];
  const { forbiddenAgents, finalPh } = bounds;
  const isWrong = laidIn(known, choice).some((agent) => forbiddenAgents.includes(agent));
  const isKept = known?.lays !== undefined && ph !== undefined && finalPh !== 'no liquid';
  const isOff = isKept && phWatch(ph, finalPh, stops) === 'stop';
  return [...(isWrong ? (['wrong agent'] as const) : []), ...(isOff ? (['pH off band'] as const) : [])];
}

function ofSize(
  standing: RugStanding,
  { lengthMm, widthMm }: RugFactOf<'LengthChecked'>,
  limits: StopLimits,
): readonly StopId[] {
  const intake = sizeOf(standing, 'intake');
  if (intake === null) return [];
  const off =
    (lengthMm !== undefined && lengthWatch(lengthMm, intake.lengthMm, limits) === 'stop') ||
    (widthMm !== undefined && lengthWatch(widthMm, intake.widthMm, limits) === 'stop');
  return off ? ['length change'] : [];
}

function shown(
  standing: RugStanding,
  visit: VisitStanding,
  fact: RugFact,
  now: string,
  book: Rulebook,
): readonly StopId[] {
  const limits = book.stops;
  switch (fact.type) {
    case 'BathMeasured':
    case 'RinseMeasured':
      return ofLiquid(standing, visit, fact, now, limits);
    case 'LengthChecked':
      return ofSize(standing, fact, limits);
    case 'FlowLogged':
      return ofFlow(standing, fact, book);
    case 'SpotTreated':
      return fact.outcome === 'harm' ? ['spot harm'] : [];
    case 'MarkRecorded':
      return fact.foundDuringWork === true && tears.includes(fact.word) && isWet(visit) ? ['new tear'] : [];
    default:
      return [];
  }
}

/**
 * The stops a fact raises by itself, none of them open already: readings off their band, a tear, a length that
 * changed, a spotter that did harm, and wet minutes that had run out when it was recorded.
 *
 * @param standing - the rug's standing before the fact
 * @param fact - the fact about to be recorded
 * @param asked - instant of recording, and the settings whose rulebook holds
 * @returns ids of data/wash/stopConditions.json
 * @source workshop-setting (data/wash/stopConditions.json)
 */
export function stopsRaised(
  standing: RugStanding,
  fact: RugFact,
  { now, settings }: Pick<Asked, 'now' | 'settings'>,
): readonly StopId[] {
  const visit = latestVisit(standing);
  if (visit === null) return [];
  const when = fact.happenedAt ?? now;
  const late = floorWork.includes(fact.type) && wetMinutesAreUsed(standing, when);
  const since = visit.wettedAgainAt ?? visit.firstWettedAt ?? '';
  const isOpen = (id: StopId) =>
    visit.stops.some(({ called, cleared }) => stopNamed(called.condition) === id && cleared === null);
  const wasCalled = visit.stops.some(
    ({ called }) => stopNamed(called.condition) === 'wet minutes used' && called.when >= since,
  );
  return [
    ...shown(standing, visit, fact, when, rulebookOf(settings)),
    ...(late && !wasCalled ? (['wet minutes used'] as const) : []),
  ].filter((id) => !isOpen(id));
}

/** A stop that the clock or a machine raises, with no entry of its own. */
export interface ClockStop {
  readonly condition: StopId;
  readonly since: string;
}

/**
 * Stops that hold now although nobody recorded anything: wet minutes used up, wet for 48 hours, a machine down
 * under a wet rug. Each holds until its cause has gone.
 *
 * @param standing - the rug's standing
 * @param settings - the workshop's settings, for machines that are down
 * @param now - instant
 * @source workshop-setting (data/wash/stopConditions.json); epa-mould-course for the hours
 */
export function clockStops(
  standing: RugStanding,
  { equipmentDown }: WorkshopSettings,
  now: string,
): readonly ClockStop[] {
  const visit = latestVisit(standing);
  if (visit === null || visit.end !== null) return [];
  const since = visit.wettedAgainAt ?? visit.firstWettedAt ?? now;
  const isCalled = visit.stops.some(
    ({ called, cleared }) => cleared === null && stopNamed(called.condition) === 'wet minutes used',
  );
  return [
    ...(wetMinutesAreUsed(standing, now) && !isCalled
      ? [{ condition: 'wet minutes used', since } as const]
      : []),
    ...(wetClock(visit, now)?.colour === 'red' ? [{ condition: 'wet hours', since } as const] : []),
    ...(isWet(visit) && equipmentDown.length > 0 ? [{ condition: 'machine down', since } as const] : []),
  ];
}

/** What was read, and the band it left. */
export type BrokenBand = NonNullable<RugFactOf<'StopCalled'>['broke']>;

/** The reading behind a stop and the band it broke; undefined for a stop that no band raises. */
function brokenBand(standing: RugStanding, fact: RugFact, id: StopId): BrokenBand | undefined {
  const visit = latestVisit(standing);
  const isMeasured = fact.type === 'BathMeasured' || fact.type === 'RinseMeasured';
  if (visit === null || !(isMeasured || fact.type === 'FlowLogged')) return undefined;
  if (id === 'pH off band' && fact.ph !== undefined) {
    const band = !isMeasured
      ? layingBand(standing)
      : isRescuing(visit)
        ? rescuePhBand
        : bandsOf(standing, fact).ph;
    return band === null ? undefined : { quantity: 'pH', read: fact.ph, least: band.least, most: band.most };
  }
  if (id === 'temperature off' && isMeasured && fact.temperatureC !== undefined) {
    const band = bandsOf(standing, fact).temperature;
    return band === null
      ? undefined
      : { quantity: 'temperature', read: fact.temperatureC, least: band.least, most: band.most };
  }
  return undefined;
}

/**
 * A raised stop as a fact, with the reading and the band it broke as they were then.
 *
 * @param id - the stop
 * @param stop - its own id in the record
 * @param source - the entry whose fact raised it, and the rug's standing before that entry
 * @source none: rule of this project
 */
export function raisedStop(
  id: StopId,
  stop: string,
  source: { readonly entry: string; readonly fact: RugFact; readonly standing: RugStanding },
): RugFactOf<'StopCalled'> {
  const broke = brokenBand(source.standing, source.fact, id);
  return {
    ...{ type: 'StopCalled', stop, condition: stopWords(id), raisedBy: source.entry },
    ...(broke === undefined ? {} : { broke }),
  };
}
