import type { Asked } from '../dossier/rule/rule.ts';
import type { Actor, House } from './house.ts';
import { readShelf } from './shelf.ts';
import { readWorkshop } from './workshop.ts';

/** Who asks, at this moment, under the settings of this moment. */
export const askedBy = async (house: House, { person, roles }: Actor): Promise<Asked> => ({
  now: house.clock.now(),
  person: { person, roles },
  settings: (await readWorkshop(house)).settings,
  shelf: await readShelf(house),
});
