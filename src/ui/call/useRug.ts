import { useQuery } from '@tanstack/react-query';
import { useMemo } from 'react';
import type { RugAnswer } from '../../contract/index.ts';
import { standingOf } from '../../dossier/evolve.ts';
import type { RugEntry } from '../../dossier/facts/index.ts';
import { nothingYet } from '../../dossier/standing.ts';
import { asked, problemOf } from './asked.ts';
import { call } from './call.ts';

const none: readonly RugEntry[] = [];

/** A rug's dossier, kept current while others write in it. `isLoading` until it has come once. */
export function useRug(rug: string) {
  const query = useQuery({
    queryKey: ['rug', rug],
    queryFn: () => asked(call<RugAnswer>(`/api/rugs/${encodeURIComponent(rug)}`)),
  });
  const entries = query.data?.entries ?? none;
  const standing = useMemo(() => (entries.length === 0 ? nothingYet : standingOf(entries)), [entries]);
  return {
    rug,
    entries,
    standing,
    client: query.data?.client ?? null,
    revision: standing.revision,
    isLoading: query.isPending,
    problem: problemOf(query.error),
  };
}
