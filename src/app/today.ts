import type { TodayAnswer, TodayRow } from '../contract/index.ts';
import { standingOf } from '../dossier/evolve.ts';
import { byUrgency, type NextStep, nextStepsOf } from '../dossier/nextStep.ts';
import type { ShelfStanding } from '../dossier/shelf.ts';
import type { WorkshopSettings } from '../dossier/workshopFacts.ts';
import type { Ledger } from '../ports/ledger.ts';
import type { House } from './house.ts';
import { listRows, mostInHouse } from './rugs.ts';
import { readShelf } from './shelf.ts';
import { readWorkshop } from './workshop.ts';

type Worked = ReadonlyMap<string, { readonly key: string; readonly next: readonly NextStep[] }>;

/** What the last look worked out. Every tablet looks again whenever anything is recorded; most rugs have not moved. */
const lastLook = new WeakMap<Ledger, Worked>();

/** The same for as long as nothing a next step is made of has changed, minutes included. */
const keyOf = (seal: string, settings: WorkshopSettings, shelf: ShelfStanding, now: string): string =>
  `${seal} ${shelf.revision} ${now.slice(0, 16)} ${JSON.stringify(settings)}`;

/** Whose hands are needed where: every rug in the house with what it waits for, most urgent first. */
export async function today(house: House): Promise<TodayAnswer> {
  const { ledger, clock } = house;
  const now = clock.now();
  const { settings } = await readWorkshop(house);
  const shelf = await readShelf(house);
  const before = lastLook.get(ledger);
  const worked = new Map<string, { readonly key: string; readonly next: readonly NextStep[] }>();
  const rows: TodayRow[] = [];
  for (const row of await listRows(house, { inHouse: true, limit: mostInHouse })) {
    const { stream } = row;
    const key = keyOf((await ledger.head(stream)).seal, settings, shelf, now);
    const known = before?.get(stream);
    const next =
      known?.key === key
        ? known.next
        : nextStepsOf(standingOf(await ledger.read(stream)), settings, now, shelf);
    worked.set(stream, { key, next });
    rows.push({ ...row, next });
  }
  lastLook.set(ledger, worked);
  const steps = new Map(rows.flatMap((row) => row.next.slice(0, 1).map((step) => [step, row] as const)));
  const waiting = byUrgency([...steps.keys()]).flatMap((step) => steps.get(step) ?? []);
  return { now, rows: [...waiting, ...rows.filter(({ next }) => next.length === 0)] };
}
