import table from '../../../data/wash/stopConditions.json' with { type: 'json' };
import type { WashPlan } from '../../core/wash/index.ts';

export interface RescueCard {
  readonly title: string;
  readonly do: readonly string[];
  readonly never: readonly string[];
  readonly source: string;
}

type CardName = keyof typeof table.rescueCards;
const isCard = (name: string): name is CardName => name in table.rescueCards;

/** Stops that are called by name although no reading shows them. */
export const otherStops = { 'A wrong agent was used.': 'wrong agent' } as const satisfies {
  readonly [condition: string]: CardName;
};

const cardName = (condition: string): CardName => {
  const row = table.rows.find(({ when, id }) => when === condition || id === condition);
  const other = Object.entries(otherStops).find(([words]) => words === condition)?.[1];
  const name = row?.rescue ?? other ?? 'finish now';
  return isCard(name) ? name : 'finish now';
};

/** What to do about a stop; with an acid-sensitive colour the card without acid. */
export function rescueCard(condition: string, plan: WashPlan | null): RescueCard {
  const card = table.rescueCards[cardName(condition)];
  const sensitive = plan?.dyes.some(({ traits }) => traits.includes('acid sensitive')) ?? true;
  const steps = 'doAcidSensitive' in card && sensitive ? card.doAcidSensitive : card.do;
  return { title: card.title, do: steps, never: card.never, source: card.source };
}

/** Whether a stop is a running colour, for which the bath keeps a band of its own. */
export const isBleed = (condition: string): boolean => cardName(condition) === 'bleed';

/** The words of a stop that a reading shows. */
export const stopNamed = (id: 'pH off band' | 'temperature off' | 'cloth grade' | 'run-off colour'): string =>
  table.rows.find((row) => row.id === id)?.when ?? id;

/** Every stop that may be called, in words. */
export const stopWords: readonly string[] = [
  ...table.rows.map(({ when }) => when),
  ...Object.keys(otherStops),
];
