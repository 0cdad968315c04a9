import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { ShelfAnswer, ShelfUsesAnswer } from '../../contract/index.ts';
import type { ShelfFact, ShelfStanding } from '../../dossier/index.ts';
import { newId } from '../kit/newId.ts';
import { asked, problemOf } from './asked.ts';
import { type Answered, call } from './call.ts';

/** What stands on the shelf, kept current; null until it is known. */
export function useShelf() {
  const { data, error } = useQuery({
    queryKey: ['shelf'],
    queryFn: () => asked(call<ShelfAnswer>('/api/shelf')),
  });
  return { standing: data?.standing ?? null, problem: problemOf(error) };
}

/** The rugs whose plans would be mixed from a product; null until it is known. */
export function useShelfUses(agent: string) {
  const { data } = useQuery({
    queryKey: ['shelf', agent, 'uses'],
    queryFn: () => asked(call<ShelfUsesAnswer>(`/api/shelf/${encodeURIComponent(agent)}/uses`)),
  });
  return data?.uses ?? null;
}

/** Records facts of the shelf. */
export function useShelfRecord() {
  const cache = useQueryClient();
  return async (...facts: readonly ShelfFact[]): Promise<Answered<ShelfStanding>> => {
    const drafts = facts.map((fact) => ({ id: newId(), fact }));
    const answer = await call<ShelfAnswer>('/api/shelf/entries', { method: 'POST', body: { drafts } });
    if (!answer.ok) return answer;
    cache.setQueryData(['shelf'], answer.value);
    return { ok: true, value: answer.value.standing };
  };
}
