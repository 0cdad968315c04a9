import { useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { RoomAnswer, RoomsAnswer } from '../../contract/index.ts';
import type { RoomFact } from '../../dossier/index.ts';
import { newId } from '../kit/newId.ts';
import { asked, problemOf } from './asked.ts';
import { type Answered, call } from './call.ts';

/** Every drying room of the house, the first one first. */
export function useRooms() {
  const query = useQuery({
    queryKey: ['rooms', 'list'],
    queryFn: () => asked(call<RoomsAnswer>('/api/rooms')),
  });
  return { rooms: query.data?.rooms ?? [], isLoading: query.isPending, problem: problemOf(query.error) };
}

/** A drying room with what hangs in it, kept current while others write; null while none is chosen. */
export function useRoom(room: string | null) {
  const query = useQuery({
    queryKey: ['rooms', room],
    queryFn: () => asked(call<RoomAnswer>(`/api/rooms/${encodeURIComponent(room ?? '')}`)),
    enabled: room !== null,
  });
  return { answer: query.data ?? null, isLoading: query.isPending, problem: problemOf(query.error) };
}

/** Records facts of a room; a try whose outcome is not known is made again under the same ids. */
export function useRecordRoom(room: string) {
  const cache = useQueryClient();
  const [isBusy, setBusy] = useState(false);
  const tried = useRef(new Map<string, readonly { readonly id: string; readonly fact: RoomFact }[]>());
  const record = async (facts: readonly RoomFact[]): Promise<Answered<unknown>> => {
    const said = JSON.stringify(facts);
    const drafts = tried.current.get(said) ?? facts.map((fact) => ({ id: newId(), fact }));
    tried.current.set(said, drafts);
    setBusy(true);
    const known = cache.getQueryData<RoomAnswer>(['rooms', room]);
    const answer = await call(`/api/rooms/${encodeURIComponent(room)}/entries`, {
      method: 'POST',
      body: { expectedRevision: known?.standing.revision ?? 0, drafts },
    });
    if (answer.ok || answer.problem.status >= 400) tried.current.delete(said);
    if (answer.ok) await cache.invalidateQueries({ queryKey: ['rooms'] });
    setBusy(false);
    return answer;
  };
  return { record, isBusy };
}
