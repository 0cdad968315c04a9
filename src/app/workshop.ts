import type { AppendProblem } from '../dossier/recordProblem.ts';
import { type WorkshopFact, type WorkshopStanding, workshopStanding } from '../dossier/workshopFacts.ts';
import type { Problem, Result } from '../units/index.ts';
import type { House } from './house.ts';

/** The workshop's settings and people as they are now. */
export const readWorkshop = async ({ ledger }: House): Promise<WorkshopStanding> =>
  workshopStanding(await ledger.read('workshop'));

/** Records facts of the workshop, judged again whenever somebody else was quicker. */
export async function recordWorkshop<P extends Problem>(
  house: House,
  by: string,
  judge: (standing: WorkshopStanding) => Result<readonly WorkshopFact[], P>,
): Promise<Result<WorkshopStanding, P | AppendProblem>> {
  const { ledger, clock, ids } = house;
  for (;;) {
    const entries = await ledger.read('workshop');
    const judged = judge(workshopStanding(entries));
    if (!judged.ok) return judged;
    const drafts = judged.value.map((fact) => ({
      ...{ id: ids.next(), stream: 'workshop', at: clock.now(), by, version: 1 },
      fact,
    }));
    const appended = await ledger.append([{ stream: 'workshop', expectedRevision: entries.length, drafts }]);
    if (appended.ok) return { ok: true, value: workshopStanding([...entries, ...appended.value]) };
    if (appended.problem.code !== 'stream-moved-on') return { ok: false, problem: appended.problem };
  }
}
