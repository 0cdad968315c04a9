import type { ShelfUse, ShelfUsesAnswer } from '../contract/index.ts';
import { productFor } from '../core/wash/index.ts';
import { standingOf } from '../dossier/evolve.ts';
import { agreedPlan, planOf, stepId } from '../dossier/planFacts.ts';
import type { RugRow } from '../dossier/rugRow.ts';
import { mixingPlaceOf } from '../dossier/shelf.ts';
import { presentVisit } from '../dossier/standing.ts';
import type { House } from './house.ts';
import { mostInHouse } from './rugs.ts';
import { readShelf } from './shelf.ts';
import { readWorkshop } from './workshop.ts';

/**
 * The rugs in the house whose plan would be mixed from a product: what its removal leaves without.
 *
 * @param agent - id of the product on the shelf
 */
export async function shelfUses(house: House, agent: string): Promise<ShelfUsesAnswer> {
  const { ledger, clock } = house;
  const now = clock.now();
  const place = mixingPlaceOf(await readShelf(house), now);
  const { settings } = await readWorkshop(house);
  const uses: ShelfUse[] = [];
  for (const { stream, body } of await ledger.list({ kind: 'rug', inHouse: true, limit: mostInHouse })) {
    const standing = standingOf(await ledger.read(stream));
    const visit = presentVisit(standing);
    const current = planOf(standing, settings, now);
    const plan = agreedPlan(standing) ?? (current.ok ? current.value : null);
    if (visit === null || plan === null) continue;
    const done = visit.steps.filter((one) => one.done !== null).map(({ step }) => step);
    const needed = plan.steps.filter((one) => !done.includes(stepId(one))).flatMap(({ agents }) => agents);
    const as = [...new Set(needed)].filter((one) => {
      const found = productFor(one, place);
      return found.ok && found.value.product.id === agent;
    });
    const { number, title } = body as RugRow;
    if (as.length > 0) uses.push({ rug: stream.slice('rug/'.length), number, title, as });
  }
  return { uses };
}
