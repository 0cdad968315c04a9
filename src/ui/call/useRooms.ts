import { useInfiniteQuery, useQuery, useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import type { RoomAnswer, RoomRecordAnswer, RoomsAnswer } from '../../contract/index.ts';
import type { RoomFact, RoomRecordPart } from '../../dossier/index.ts';
import { newId } from '../kit/newId.ts';
import { asked, problemOf } from './asked.ts';
import { type Answered, call } from './call.ts';

/** Every drying room of the house, the first one first. */
export function useRooms() {
  const query = useQuery({
    queryKey: ['rooms', 'list'],
    queryFn: () => asked(call<RoomsAnswer>('/api/rooms')),
  });
  const all = query.data?.rooms ?? none;
  return {
    /** Those in use: a closed one is in no choice. */
    rooms: all.filter(({ body }) => body.closedAt === undefined),
    closed: all.filter(({ body }) => body.closedAt !== undefined),
    isLoading: query.isPending,
    problem: problemOf(query.error),
  };
}
const none: RoomsAnswer['rooms'] = [];

/** A drying room with what hangs in it, kept current while others write; null while none is chosen. */
export function useRoom(room: string | null) {
  const query = useQuery({
    queryKey: ['rooms', room],
    queryFn: () => asked(call<RoomAnswer>(`/api/rooms/${encodeURIComponent(room ?? '')}`)),
    enabled: room !== null,
  });
  return { answer: query.data ?? null, isLoading: query.isPending, problem: problemOf(query.error) };
}

/** Part of a room's record, newest first, as many pages back as were asked for. */
export function useRoomRecord(room: string, part: RoomRecordPart) {
  const query = useInfiniteQuery({
    queryKey: ['rooms', room, 'record', part],
    queryFn: ({ pageParam }) => {
      const before = pageParam === null ? '' : `&before=${pageParam}`;
      return asked(
        call<RoomRecordAnswer>(`/api/rooms/${encodeURIComponent(room)}/record?part=${part}${before}`),
      );
    },
    initialPageParam: null as number | null,
    getNextPageParam: ({ lines, more }) => (more ? (lines.at(-1)?.revision ?? null) : null),
  });
  return {
    lines: query.data?.pages.flatMap(({ lines }) => lines) ?? [],
    isLoading: query.isPending,
    more: query.hasNextPage ? () => void query.fetchNextPage() : null,
    problem: problemOf(query.error),
  };
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
