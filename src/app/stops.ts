import type { StopsAnswer } from '../contract/index.ts';
import { stopSaid } from '../dossier/index.ts';
import type { House } from './house.ts';
import { today } from './today.ts';

/** Every stop that holds in the house, called, read or by the clock; small, since every screen asks for it. */
export async function openStops(house: House): Promise<StopsAnswer> {
  const { rows } = await today(house);
  return {
    stops: rows.flatMap(({ rug, tag, body, next }) =>
      next.flatMap(({ deed, dueAt }) =>
        deed.code === 'resolve-stop'
          ? [
              {
                ...{ rug, tag, title: body.title, stop: deed.stop },
                ...{ condition: stopSaid(deed, deed.units), since: dueAt },
              },
            ]
          : [],
      ),
    ),
  };
}
