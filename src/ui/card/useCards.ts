import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { CardMeasurement, CardsAnswer } from '../../contract/cards.ts';
import { asked, call, problemOf } from '../call/index.ts';

const key = ['cards'];
const none: CardsAnswer = { cards: [] };

/** Every printed weave card whose bar was measured, and how to keep one more. */
export function useCards() {
  const cache = useQueryClient();
  const { data, error, isPending } = useQuery({
    queryKey: key,
    queryFn: () => asked(call<CardsAnswer>('/api/cards')),
  });
  const { cards } = data ?? none;
  return {
    cards,
    /** By serial [mm]. */
    bars: Object.fromEntries(cards.map(({ serial, barMm }) => [serial, barMm])),
    isLoading: isPending,
    problem: problemOf(error),
    measure: async (measurement: CardMeasurement) => {
      const answer = await call<CardsAnswer>('/api/cards', { method: 'POST', body: measurement });
      if (answer.ok) cache.setQueryData(key, answer.value);
      return answer;
    },
  };
}
