import settings from '../../data/drying/room.json' with { type: 'json' };
import type { DryingProblem } from '../core/drying/index.ts';
import { type Hanging, hangingOf, plannedDryingRug } from '../dossier/dryingRug.ts';
import type { Entry } from '../dossier/entry.ts';
import { standingOf } from '../dossier/evolve.ts';
import type { RugFact } from '../dossier/facts/index.ts';
import { planOf } from '../dossier/planFacts.ts';
import {
  type NeighbourNotMeasured,
  type RoomScenarioProblem,
  roomScenario,
} from '../dossier/roomScenario.ts';
import { roomStandingOf } from '../dossier/roomStanding.ts';
import { done, type Result, refused } from '../units/index.ts';
import { askedBy } from './asked.ts';
import type { FactProblem } from './decideDrafts.ts';
import type { Actor, House } from './house.ts';
import { recordEntries } from './recordEntries.ts';
import { dryingRugs } from './rooms.ts';

type RecordRefusal = Extract<Awaited<ReturnType<typeof recordEntries>>, { readonly ok: false }>['problem'];

/** What hangs in a room now, as a forecast is told of it, and the rugs whose water nobody can reckon. */
export async function hangingAsTold(house: House, room: string): Promise<Hanging> {
  const here = (await dryingRugs(house)).filter((rug) => rug.room === room);
  return hangingOf(here.map(({ rug, entries }) => ({ rug, standing: standingOf(entries) })));
}

/** Hours in whole, upwards: a promise is never made on the minutes of a forecast. */
const wholeHours = (hours: number | null | undefined): number | null =>
  hours === null || hours === undefined ? null : Math.ceil(hours);

/**
 * Works out when a rug would be dry if its wash began now, with what hangs in a room already, and keeps it as
 * a fact of the rug with everything it was made from.
 */
export async function forecastDrying(
  house: House,
  actor: Actor,
  rug: string,
  room: string,
): Promise<
  Result<
    readonly Entry[],
    RecordRefusal | FactProblem | RoomScenarioProblem | NeighbourNotMeasured | DryingProblem
  >
> {
  const [entries, roomEntries] = await Promise.all([
    house.ledger.read(`rug/${rug}`),
    house.ledger.read(`room/${room}`),
  ]);
  if (entries.length === 0) return refused('rug-unknown', { rug });
  if (roomEntries.length === 0) return refused('room-unknown', { room });
  const { now, settings: workshop } = await askedBy(house, actor);
  const [standing, inside] = [standingOf(entries), roomStandingOf(roomEntries)];
  if (inside.closed !== null) {
    return refused('room-closed', { room: inside.setUp?.name ?? '', closedAt: inside.closed.when });
  }
  const plan = planOf(standing, workshop, now);
  const hasMesh = (inside.setUp?.meshes.length ?? 0) > 0;
  const told = plannedDryingRug(standing, rug, plan.ok ? plan.value.bounds : null, now, hasMesh);
  if (!told.ok) return told;
  const here = await hangingAsTold(house, room);
  // Its neighbours' water delays it: one that nobody can reckon leaves no forecast to wet a rug by.
  const unreckoned = here.unmeasured.map(({ tag, title }) => `${tag} ${title}`);
  if (unreckoned.length > 0) return refused('neighbour-not-measured', { rugs: unreckoned });
  const hanging = here.rugs.filter((one) => one.rug !== rug);
  const { lookHours: lookedHours, quantile: share } = settings.forecast;
  const built = roomScenario(inside, [...hanging, told.value], now, lookedHours);
  if (!built.ok) return built;
  const { scenario } = built.value;
  const answer = await house.forecaster.forecast(scenario);
  if (!answer.ok) return answer;
  const found = answer.value.rugs.find(({ id }) => id === rug);
  const before = (Date.parse(told.value.hungAt) - Date.parse(told.value.wettedAt)) / 3_600_000;
  const fromWetting = (hours: number | null | undefined) =>
    wholeHours(hours === null || hours === undefined ? null : hours + before);
  const fact: RugFact = {
    type: 'DryingForecast',
    room,
    hours: fromWetting(found?.spread?.interval80[1]),
    medianHours: fromWetting(found?.hoursToTarget),
    share,
    lookedHours,
    among: hanging.map((one) => one.rug),
    // As it is sent over the wire: what is undefined is not there.
    scenario: JSON.parse(JSON.stringify(scenario)) as Readonly<Record<string, unknown>>,
  };
  const drafts = [{ id: house.ids.next(), fact }] as never;
  const recorded = await recordEntries(house, actor, rug, { expectedRevision: entries.length, drafts });
  return recorded.ok ? done(recorded.value) : recorded;
}
