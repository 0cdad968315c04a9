import table from '../../../data/wash/stopConditions.json' with { type: 'json' };
import { type RescueCard, rescueCards, stopNamed, type WashPlan } from '../../core/wash/index.ts';

/** What to do about a stop; with an acid-sensitive colour the card without acid. */
export function rescueCard(
  condition: string,
  plan: WashPlan | null,
): Pick<RescueCard, 'title' | 'do' | 'never' | 'source'> {
  const id = stopNamed(condition);
  const name = table.rows.find((row) => row.id === id)?.rescue ?? 'finish now';
  const card = rescueCards[name];
  if (card === undefined) throw new Error(`no rescue card ${name} in data/wash/stopConditions.json`);
  const sensitive = plan?.dyes.some(({ traits }) => traits.includes('acid sensitive')) ?? true;
  return { ...card, do: sensitive ? (card.doAcidSensitive ?? card.do) : card.do };
}

/** Every stop that may be called, in words. */
export const everyStop: readonly string[] = table.rows.map(({ when }) => when);
