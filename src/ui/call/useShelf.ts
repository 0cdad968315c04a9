import { useQuery, useQueryClient } from '@tanstack/react-query';
import type { ShelfAnswer } from '../../contract/index.ts';
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
