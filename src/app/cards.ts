import {
  type CardOrderProblem,
  type CardPaper,
  cardPdf,
  drawCard,
  drawLooseCard,
} from '../core/card/index.ts';
import type { AppendProblem } from '../dossier/recordProblem.ts';
import type { WorkshopStanding } from '../dossier/workshopFacts.ts';
import { done, type Result } from '../units/index.ts';
import type { Actor, House } from './house.ts';
import { recordWorkshop } from './workshop.ts';

/** Keeps the length of a printed card's 100 mm bar; a later measurement takes the place of an earlier. */
export const measureCard = (
  house: House,
  actor: Actor,
  { serial, barMm }: { readonly serial: string; readonly barMm: number },
): Promise<Result<WorkshopStanding, AppendProblem>> =>
  recordWorkshop(house, actor.person, () => done([{ type: 'CardMeasured', serial, barMm }]));

/** The weave card to print, a rug's own or one for any rug. */
export function printCard(
  { codes }: House,
  order: {
    readonly serial: string;
    readonly tag: string | null;
    readonly paper: CardPaper;
    readonly form: 'window' | 'loose';
  },
): Result<Uint8Array, CardOrderProblem> {
  const drawn = (order.form === 'loose' ? drawLooseCard : drawCard)({
    serial: order.serial,
    tag: order.tag,
    draw: codes.draw,
  });
  return drawn.ok ? done(cardPdf(drawn.value, order.paper)) : drawn;
}
