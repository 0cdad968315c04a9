import { Hono } from 'hono';
import { measureCard, printCard } from '../app/cards.ts';
import type { House } from '../app/house.ts';
import { readWorkshop } from '../app/workshop.ts';
import { type CardsAnswer, cardMeasurement } from '../contract/index.ts';
import type { WorkshopStanding } from '../dossier/workshopFacts.ts';
import { answerOf, jsonAnswer, pdfAnswer, problemAnswer } from './answers.ts';
import type { Guarded } from './guard.ts';
import { readJsonBody } from './readBody.ts';

const cardsIn = ({ cards }: WorkshopStanding): CardsAnswer => ({ cards: Object.values(cards) });

/** Weave cards: the sheets to print, and the measured bars that make their scale sure. */
export function cardRoutes(house: House) {
  const routes = new Hono<Guarded>();

  routes.get('/cards', async () => jsonAnswer(cardsIn(await readWorkshop(house))));

  routes.post('/cards', async (route) => {
    const request = await readJsonBody(route.req.raw, cardMeasurement);
    return request.ok
      ? answerOf(await measureCard(house, route.get('actor'), request.value), cardsIn)
      : problemAnswer(request.problem);
  });

  routes.get('/cards/:file', async (route) => {
    const { settings } = await readWorkshop(house);
    const { tag, paper, form } = route.req.query();
    const serial = route.req.param('file').replace(/\.pdf$/, '');
    const printed = printCard(house, {
      serial,
      // Codes hold capital letters only; a tag means the same either way.
      tag: tag === undefined || tag === '' ? null : tag.toUpperCase(),
      form: form === 'loose' ? 'loose' : 'window',
      paper: paper === 'a4' || paper === 'letter' ? paper : settings.paper,
    });
    return printed.ok
      ? pdfAnswer(new Uint8Array(printed.value), `weave-card-${serial}`)
      : problemAnswer(printed.problem);
  });
  return routes;
}
