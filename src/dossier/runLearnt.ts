import settings from '../../data/drying/room.json' with { type: 'json' };
import { dryForecast } from '../core/drying/index.ts';
import { dryingRugOf } from './dryingRug.ts';
import type { Entry } from './entry.ts';
import { standingOf, withdrawnIds } from './evolve.ts';
import type { RugEntry } from './facts/index.ts';
import type { RoomFactOf } from './roomFacts.ts';
import { roomScenario } from './roomScenario.ts';
import type { RoomStanding } from './roomStanding.ts';
import { latestVisit, type RugStanding } from './standing.ts';

export type RunLearnt = RoomFactOf<'RunLearnt'>;

/** How often a room's air must be read for a rug in it to teach anything [h]. */
export const { airEveryHours } = settings.learning;

/** The hour until which the room's air was read often enough, from the scenario's hour 0 on; null: it was not. */
function airKnownUntil(measured: readonly { readonly hour: number }[] = []): number | null {
  const [first] = measured;
  if (first === undefined || first.hour > airEveryHours) return null;
  const gap = measured.findIndex(({ hour }, i) => hour - (measured[i - 1]?.hour ?? hour) > airEveryHours);
  return measured.at(gap === -1 ? -1 : gap - 1)?.hour ?? null;
}

/** Where it dried from the first water to the end: null when that was not one room. */
function onlyRoomOf(standing: RugStanding): string | null {
  const visit = latestVisit(standing);
  const named = (visit?.dryingPlaces ?? []).map(({ room }) => room ?? null);
  const moved = (visit?.turnings ?? []).flatMap(({ room }) => room ?? []);
  const rooms = new Set([...named, ...moved]);
  const [room = null] = rooms;
  return rooms.size === 1 ? room : null;
}

/** A release, and the rug as it stood before it. */
export interface Released {
  /** Entry of the acceptance. */
  readonly entry: string;
  readonly when: string;
  /** The one room it dried in; null when it was moved between rooms, or hung in none that is set up. */
  readonly room: string | null;
  readonly standing: RugStanding;
}

/**
 * The last release of a rug's latest visit that was not withdrawn, with what was corrected since taken out.
 *
 * @param entries - the rug's stream, oldest first
 * @returns null when it was not released in this visit
 * @source none: rule of this project
 */
export function releasedOf(entries: readonly Entry[]): Released | null {
  const all = entries as readonly RugEntry[];
  const begins = all.findLastIndex(({ fact }) => fact.type === 'RugReceived');
  const withdrawn = withdrawnIds(entries);
  const accepted = all
    .slice(begins)
    .findLast(({ id, fact }) => fact.type === 'DryAccepted' && !withdrawn.has(id));
  if (accepted === undefined) return null;
  const before = all.filter(
    ({ revision, fact }) => revision < accepted.revision || fact.type === 'EntryWithdrawn',
  );
  const standing = standingOf(before);
  const when = accepted.fact.happenedAt ?? accepted.at;
  return { entry: accepted.id, when, room: onlyRoomOf(standing), standing };
}

/**
 * What a rug's readings taught of its room and its make, once it was accepted as dry. A rug of which anything
 * had to be assumed teaches nothing, nor do readings that contradict the model, nor hours in which nobody read
 * the air.
 *
 * @param released - the release
 * @param rug - the rug's id
 * @param room - the standing of the room it dried in
 * @returns null when it teaches nothing
 * @source none: quotient of two beliefs, evidenceOf of core/drying; bounds of data/drying/room.json, learning
 */
export function runLearnt({ standing, when }: Released, rug: string, room: RoomStanding): RunLearnt | null {
  const visit = latestVisit(standing);
  const told = dryingRugOf(standing, rug);
  if (visit === null || told?.ok !== true) return null;
  // By the first guess, not by what was learnt before: else a rug would count the less the more were dried.
  const built = roomScenario({ ...room, past: [] }, [told.value], when, 1);
  if (!built.ok || built.value.assumptions.some((one) => 'rug' in one)) return null;
  const { scenario } = built.value;
  const until = airKnownUntil(scenario.room.measured);
  const [hung] = scenario.rugs;
  const readings = (hung?.readings ?? []).filter(({ hour }) => until !== null && hour <= until);
  if (hung === undefined || until === null || readings.length === 0) return null;
  const answer = dryForecast({ ...scenario, hours: until, rugs: [{ ...hung, readings }] });
  const spread = answer.ok ? answer.value.rugs[0]?.spread : undefined;
  if (spread === undefined || spread.contradicted || spread.evidence === null) return null;
  const { g, resistance, criticalRegain } = spread.evidence;
  if (g === null && resistance === null && criticalRegain === null) return null;
  return {
    ...{ type: 'RunLearnt', rug, visit: visit.received.visit, construction: told.value.construction },
    ...{ g, resistance, criticalRegain, readings: readings.length },
  };
}
